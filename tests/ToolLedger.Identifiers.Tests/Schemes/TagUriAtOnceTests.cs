#if NET
using System;
using System.Text;
using FsCheck.Xunit;
using ToolLedger.Identifiers.Schemes;
using Xunit;

namespace ToolLedger.Identifiers.Tests.Schemes;

/// <summary>Tag URIs are coded at once where a codec can, and with care elsewhere: both ways give the same bits.</summary>
public sealed class TagUriAtOnceTests
{
    private const string Odd = "09.:%#-/AZaz_\u0000\u007F ";

    // Every scheme over its whole range, whole and damaged in one place: same answer, same bits, same length.
    [Property(MaxTest = 400)]
    public void Coding_at_once_and_with_care_give_the_same(ulong seed)
    {
        var draw = new SplitMix(seed);
        foreach (EpcScheme scheme in AnyFields.Schemes)
        {
            byte[] uri = Encoding.ASCII.GetBytes(AnyFields.TagUri(scheme, draw));
            Same(uri);
            Same(uri.AsSpan(0, draw.Below(uri.Length)));
            uri[12 + draw.Below(uri.Length - 12)] = (byte)Odd[draw.Below(Odd.Length)];
            Same(uri);
            Same(Encoding.ASCII.GetBytes(Encoding.ASCII.GetString(uri) + Odd[draw.Below(Odd.Length)]));
        }
    }

    // Otherwise the property above would compare the careful way with itself.
    [Theory]
    [InlineData("urn:epc:tag:sgtin-96:3.0614141.812345.6789")]
    [InlineData("urn:epc:tag:sgtin-198:3.0614141.712345.32a-B")]
    [InlineData("urn:epc:tag:sscc-96:3.0614141.1234567890")]
    [InlineData("urn:epc:tag:sgln-96:3.061414112345..5678")]
    [InlineData("urn:epc:tag:grai-96:3.0614141.12345.400")]
    [InlineData("urn:epc:tag:giai-96:3.0614141.5678")]
    [InlineData("urn:epc:tag:giai-96:0.061414.1234567890123456789")]
    [InlineData("urn:epc:tag:sgcn-96:3.4012345.67890.04711")]
    [InlineData("urn:epc:tag:cpi-96:3.0614141.5123456.123")]
    [InlineData("urn:epc:tag:adi-var:58.1BCDE.PART-1.SER1")]
    [InlineData("urn:epc:tag:adi-var:0.W81X9C..12")]
    public void The_usual_forms_are_coded_at_once(string uri)
    {
        byte[] text = Encoding.ASCII.GetBytes(uri);
        int body = uri.IndexOf(':', 12) + 1;
        EpcCodec codec = SchemeList.OfName(text.AsSpan(12), out _)!;
        int dot = uri.IndexOf('.', body);
        var words = new ulong[Bits.Words];
        Assert.True(codec.TryEncodeAtOnce(text, dot + 1, uint.Parse(uri.AsSpan(body, dot - body), provider: null), words, out int used));
        Assert.True(Epc.TryParse(Hex(words, used), out Epc epc));
        Assert.Equal(uri, epc.ToTagUri());
    }

    // What a scheme cannot hold, or its rules refuse, is never coded at once.
    [Theory]
    [InlineData("urn:epc:tag:sgtin-96:3.0614141.812345.06789")]
    [InlineData("urn:epc:tag:sgtin-96:3.0614141.812345.274877906944")]
    [InlineData("urn:epc:tag:sgtin-96:3.0614141.81234.6789")]
    [InlineData("urn:epc:tag:sgtin-96:3.0614141.812345.")]
    [InlineData("urn:epc:tag:sgtin-96:3.0614141.812345.1.2")]
    [InlineData("urn:epc:tag:sgtin-198:3.0614141.712345.123456789012345678901")]
    [InlineData("urn:epc:tag:giai-96:3.0614141.5678.1")]
    [InlineData("urn:epc:tag:giai-96:3.0614141.99999999999999999999")]
    [InlineData("urn:epc:tag:sscc-96:3.0614141.123456789")]
    [InlineData("urn:epc:tag:adi-var:58.1BCDI.PART-1.SER1")]
    [InlineData("urn:epc:tag:adi-var:58.1BCDE.PART.1.SER1")]
    [InlineData("urn:epc:tag:adi-var:58.1BCDE.PART-1.")]
    [InlineData("urn:epc:tag:adi-var:58.1BCDE.part.SER1")]
    [InlineData("urn:epc:tag:adi-var:64.1BCDE.PART.SER1")]
    public void What_breaks_a_rule_is_refused_by_both_ways(string uri)
    {
        byte[] text = Encoding.ASCII.GetBytes(uri);
        Assert.False(EpcFields.TryConvertTagUriToHex(text, new byte[200], out int written));
        Assert.Equal(0, written);
        Same(text);
    }

    private static void Same(ReadOnlySpan<byte> uri)
    {
        var words = new ulong[Bits.Words];
        var careful = new ulong[Bits.Words];
        IdentityBits bits = default;
        EpcFault fault = default;
        EpcFault carefulFault = default;
        bool expected = TagUri.TryRead(uri, ref bits, careful, out int carefulUsed, ref carefulFault);
        bool valid = TagUri.TryEncode(uri, words, out int used, ref fault);
        Assert.True(expected == valid, Encoding.ASCII.GetString(uri));
        Assert.Equal(carefulFault, fault);
        if (valid)
        {
            Assert.Equal(carefulUsed, used);
            Assert.Equal(careful, words);
        }
    }

    private static string Hex(ulong[] words, int used)
    {
        var digits = new byte[16 * Bits.Words];
        Assert.True(HexWords.TryWrite(words, used, digits, out int count));
        return Encoding.ASCII.GetString(digits, 0, count);
    }
}
#endif
