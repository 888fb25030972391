using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using Xunit;

namespace ToolLedger.Identifiers.Tests.Vectors;

/// <summary>Everything that must be refused, and the one rule that each input breaks.</summary>
public sealed class InvalidVectorTests
{
    private static readonly IReadOnlyList<IReadOnlyDictionary<string, string>> Rows = VectorFile.Read("invalid.tsv");

    [Fact]
    public void The_file_has_all_vectors() => Assert.Equal(143, Rows.Count);

    [Fact]
    public void Every_vector_breaks_the_rule_that_the_table_names() => ForEach.Row(Rows, row =>
    {
        EpcFault fault = FaultOf(row);
        Assert.Equal(InvalidVectorRules.ById[row["id"]], fault.Rule);
        Assert.NotEmpty(fault.ToString());
    });

    [Fact]
    public void The_table_names_a_rule_for_every_vector_and_no_other()
    {
        var ids = new HashSet<string>(Rows.Select(r => r["id"]), StringComparer.Ordinal);
        Assert.True(ids.SetEquals(InvalidVectorRules.ById.Keys));
    }

    [Fact]
    public void Bits_that_must_be_refused_stay_usable_as_a_raw_uri() => ForEach.Row(Rows.Where(r => string.Equals(r["input"], "hex", StringComparison.Ordinal)), row =>
    {
        Epc epc = Bits(row);
        Assert.StartsWith("urn:epc:raw:", epc.ToTagUri(), StringComparison.Ordinal);
        Assert.Equal(epc.ToTagUri(), epc.ToPureIdentityUri());
    });

    private static EpcFault FaultOf(IReadOnlyDictionary<string, string> row)
    {
        EpcFault fault;
        bool valid = row["input"] switch
        {
            "hex" => EpcFields.TryDecode(Bits(row), EpcDecoding.Lenient, out _, out fault),
            "tagUri" => EpcFields.TryParseTagUri(row["value"].AsSpan(), out _, out fault),
            _ => EpcIdentity.TryParseElementString(
                row["value"].AsSpan(), CompanyPrefixLength.FromDigits(7), EpcDecoding.Lenient, out _, out fault),
        };
        Assert.False(valid, "accepted: " + row["reason"]);
        return fault;
    }

    private static Epc Bits(IReadOnlyDictionary<string, string> row)
    {
        Epc padded = Epc.Parse(row["value"]);
        var bytes = new byte[padded.ByteCount];
        padded.TryWriteBytes(bytes, out _);

        // The file counts the bits of the whole coding; some vectors are cut short on purpose.
        int stated = int.Parse(row["bits"], CultureInfo.InvariantCulture);
        return Epc.FromBytes(bytes, Math.Min(stated, padded.BitCount));
    }
}
