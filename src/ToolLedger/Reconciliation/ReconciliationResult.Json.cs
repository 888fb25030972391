using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

public sealed partial class ReconciliationResult
{
    /// <summary>The schema a stored result names.</summary>
    public const string Schema = "toolledger/reconciliation-result/1";

    /// <summary>Writes the whole result as canonical JSON (RFC 8785): every conclusion, explanation and finding with its reasons, the persons, the digests of all inputs.</summary>
    /// <returns>The bytes; the same result gives the same bytes on any machine.</returns>
    public byte[] ToJson() => CanonicalJson.Canonicalize(RecordJson.Write(Write));

    private void Write(Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        writer.WriteString("schema"u8, Schema);
        writer.WriteString("kit"u8, Manifest.Id.Value);
        writer.WriteNumber("revision"u8, Manifest.Revision);
        writer.WriteString("asOf"u8, RecordTime.ToText(AsOf));
        writer.WriteString("state"u8, Words.Of(Kit.State));
        writer.WriteReasons("reasons", Kit.Reasons);
        writer.WriteString("holder"u8, Holder.ToString());
        writer.WriteStartArray("lines"u8);
        foreach (LineConclusion line in AllLines)
        {
            Write(writer, line);
        }

        writer.WriteEndArray();
        writer.WriteStartArray("notExpected"u8);
        foreach (LineNotExpected line in NotExpected)
        {
            writer.WriteStartObject();
            writer.WriteString("label"u8, line.Label);
            writer.WriteReasons("reasons", [line.Reason]);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        WriteFindings(writer);
        WriteReads(writer);
        writer.WriteTexts("persons", System.Linq.Enumerable.Select(Persons, static person => person.Value));
        writer.WriteStartArray("signatures"u8);
        foreach (Signature signature in Signatures)
        {
            writer.WriteStringValue(signature.ToString());
        }

        writer.WriteEndArray();
        WriteInputs(writer);
        writer.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter writer, LineConclusion line)
    {
        writer.WriteStartObject();
        writer.WriteString("label"u8, line.Label);
        writer.WriteString("description"u8, line.Line.Description);
        writer.WriteIfGiven("tool", line.Line.Tool?.Id.Value);
        writer.WriteString("state"u8, Words.Of(line.State));
        writer.WriteString("basis"u8, Words.Of(line.Basis));
        writer.WriteTexts("otherBases", System.Linq.Enumerable.Select(line.OtherBases, static basis => Words.Of(basis)));
        writer.WriteReasons("reasons", line.Reasons);
        if (line.Next is { } next)
        {
            writer.WriteReasons("next", [next.Reason]);
        }

        writer.WriteTime("oldestAt", line.Evidence.OldestAt);
        writer.WriteTime("sightedAt", line.Basis == AccountingBasis.Sighted ? line.Evidence.At : null);
        writer.WriteIfGiven("receipt", line.Evidence.Receipt?.Id.Value);
        writer.WriteIfGiven("calibration", line.Calibration?.State.ToString());
        writer.WriteFlag("difference", line.IsPositiveDifference);
        writer.WriteEndObject();
    }

    private void WriteFindings(Utf8JsonWriter writer)
    {
        writer.WriteStartArray("findings"u8);
        foreach (Finding finding in Findings)
        {
            writer.WriteStartObject();
            writer.WriteTexts("lines", finding.LineLabels);
            writer.WriteReasons("reasons", [finding.Reason]);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private void WriteReads(Utf8JsonWriter writer)
    {
        writer.WriteStartArray("reads"u8);
        foreach (ReadExplanation read in Reads)
        {
            writer.WriteStartObject();
            writer.WriteString("session"u8, read.Session.Value);
            writer.WriteString("tag"u8, read.Tag.ToString());
            writer.WriteString("kind"u8, Words.Of(read.Kind));
            writer.WriteReasons("reasons", [read.Reason]);
            writer.WriteNumber("count"u8, read.ReadCount);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private void WriteInputs(Utf8JsonWriter writer)
    {
        writer.WriteStartObject("inputs"u8);
        foreach (InputDigest input in Inputs)
        {
            writer.WriteString(input.Name, input.Digest.ToString());
        }

        writer.WriteEndObject();
        writer.WriteString("policy"u8, PolicyDigest.ToString());
        writer.WriteString("libraryVersion"u8, LibraryVersion);
    }
}
