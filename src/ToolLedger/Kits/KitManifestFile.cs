using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Records;

namespace ToolLedger.Kits;

/// <summary>A manifest as stored: {"schema", "kit", "revision", "title", "effectiveFrom", "signedBy", "lines"}.</summary>
internal sealed class KitManifestFile : JsonRecordFile
{
    public JsonText Kit { get; set; }

    public JsonNumber Revision { get; set; }

    public JsonText Title { get; set; }

    public JsonText EffectiveFrom { get; set; }

    public SignatureRecord? SignedBy { get; set; }

    public List<ManifestLineRecord?>? Lines { get; set => field = Note(value); }

    internal static KitManifestFile Of(KitManifest manifest) => new()
    {
        Schema = new JsonText(KitManifest.Schema),
        Kit = new JsonText(manifest.Id.Value),
        Revision = new JsonNumber(manifest.Revision),
        Title = new JsonText(manifest.Title),
        EffectiveFrom = new JsonText(RecordTime.ToText(manifest.EffectiveFrom)),
        SignedBy = SignatureRecord.Of(manifest.SignedBy),
        Lines = [.. manifest.Lines.Select(ManifestLineRecord.Of)],
    };

    /// <summary>Null and issues if a member is missing or wrong.</summary>
    internal ManifestContent? Read(RecordReader reader, ManifestReading reading)
    {
        reader.RefuseUnknown(this, "$");
        string? kit = reader.Text(Kit, "$", "kit", IdText.MaxLength);
        int? revision = reader.Int32(Revision, "$", "revision", 1, KitManifest.MaxRevision);
        string? title = reader.Text(Title, "$", "title", KitManifest.MaxTitleLength);
        if (EffectiveFrom.IsAbsent)
        {
            reader.Report("$", new Reason(ManifestRules.NoEffectiveTime));
        }

        DateTimeOffset? effectiveFrom = reader.OptionalTime(EffectiveFrom, "$", "effectiveFrom");
        if (SignedBy is null)
        {
            reader.Report("$.signedBy", new Reason(ManifestRules.NotSigned));
        }

        Signature? signedBy = SignedBy?.Read(reader, "$.signedBy");
        ManifestLine[] lines = ReadLines(reader, kit is null ? default : new KitId(kit), reading);
        return reader.Issues.Reported > 0 ? null : new ManifestContent
        {
            Id = new KitId(kit!),
            Revision = revision!.Value,
            Title = title!,
            EffectiveFrom = effectiveFrom!.Value,
            SignedBy = signedBy!,
            Lines = lines,
        };
    }

    private ManifestLine[] ReadLines(RecordReader reader, KitId kit, ManifestReading reading)
    {
        var check = new LineCheck(kit, reader.Issues) { IsOnePieceByDefault = reading.PiecesNotStatedMeansOne };
        var lines = new List<ManifestLine>();
        for (int i = 0; i < (Lines?.Count ?? 0); i++)
        {
            string place = LineCheck.PlaceOf(i);
            reader.LineNumber = null;
            if (reader.NotNull(Lines![i], place)?.Read(reader, check, place) is { } line)
            {
                lines.Add(line);
            }
        }

        reader.LineNumber = null;
        check.End();
        return ManifestContent.InOrder(lines);
    }
}
