using System;
using System.Collections.Generic;
using System.Globalization;
using Xunit;

namespace ToolLedger.Identifiers.Tests.Vectors;

/// <summary>Every published and computed vector of the schemes before TDS 2.0, in both directions.</summary>
public sealed class TagVectorTests
{
    private static readonly IReadOnlyList<IReadOnlyDictionary<string, string>> Rows = VectorFile.Read("tag.tsv");

    [Fact]
    public void The_file_has_all_vectors() => Assert.Equal(510, Rows.Count);

    [Fact]
    public void Hex_decodes_to_the_tag_uri() => ForAll(row =>
        Assert.Equal(row["tagUri"], Of(row).ToTagUri()));

    [Fact]
    public void Hex_decodes_to_the_pure_identity() => ForAll(row =>
        Assert.Equal(row["pureIdentity"], Of(row).ToPureIdentityUri()));

    [Fact]
    public void The_words_on_the_tag_decode_to_the_same_uri_and_pass_strict_decoding() => ForAll(row =>
    {
        Epc onTag = Epc.Parse(row["memoryHex"]);
        Assert.True(EpcFields.TryDecode(onTag, EpcDecoding.Strict, out EpcFields fields, out EpcFault fault), fault.ToString());
        Assert.Equal(row["tagUri"], fields.ToTagUri());
        Assert.Equal(onTag, Of(row).ToWholeWords());
    });

    [Fact]
    public void The_tag_uri_encodes_to_the_bits() => ForAll(row =>
    {
        Assert.True(EpcFields.TryParseTagUri(row["tagUri"].AsSpan(), out EpcFields fields, out EpcFault fault), fault.ToString());
        Assert.Equal(Of(row), fields.ToEpc());
        Assert.Equal(row["scheme"].Replace("-", string.Empty), fields.Scheme.ToString(), ignoreCase: true);
    });

    [Fact]
    public void The_pure_identity_encodes_to_the_bits() => ForAll(row =>
    {
        EpcFields decoded = EpcFields.Decode(Of(row));
        Assert.True(EpcIdentity.TryParseUri(row["pureIdentity"].AsSpan(), out EpcIdentity identity, out EpcFault fault), fault.ToString());
        Assert.Equal(decoded.Identity, identity);
        Assert.True(identity.TryEncode(decoded.Scheme, decoded.Filter, out Epc epc, out fault), fault.ToString());
        Assert.Equal(Of(row), epc);
    });

    [Fact]
    public void The_identity_writes_and_reads_its_gs1_views() => ForAll(row =>
    {
        EpcIdentity identity = EpcFields.Decode(Of(row)).Identity;
        Gs1Views.Check(row, identity);
    });

    private static Epc Of(IReadOnlyDictionary<string, string> row)
    {
        Epc padded = Epc.Parse(row["hex"]);
        var bytes = new byte[padded.ByteCount];
        Assert.True(padded.TryWriteBytes(bytes, out _));
        return Epc.FromBytes(bytes, int.Parse(row["bits"], CultureInfo.InvariantCulture));
    }

    private static void ForAll(Action<IReadOnlyDictionary<string, string>> check) => ForEach.Row(Rows, check);
}
