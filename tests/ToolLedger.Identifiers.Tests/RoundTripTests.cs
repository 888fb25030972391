using System;
using System.Security.Cryptography;
using System.Text;
using FsCheck;
using FsCheck.Xunit;
using ToolLedger.Identifiers.Gen2;
using Xunit;

namespace ToolLedger.Identifiers.Tests;

/// <summary>The laws of coding, for every scheme over its whole range.</summary>
public sealed class RoundTripTests
{
    // The outputs of one seeded corpus, on every target: the same bytes.
    private const string CorpusHash = "0B9CC8A5CFAA82A7916B498226CC353CA5CB098FC1910486AFC822DC75FB3751";

    [Property(MaxTest = 400)]
    public void Decode_of_encode_gives_the_fields_back(DoNotSize<ulong> seed)
    {
        foreach (EpcScheme scheme in AnyFields.Schemes)
        {
            string uri = AnyFields.TagUri(scheme, new SplitMix(seed.Item));
            Assert.True(EpcFields.TryParseTagUri(uri.AsSpan(), out EpcFields fields, out EpcFault fault), uri + ": " + fault);
            Assert.Equal(uri, fields.ToTagUri());
            Assert.Equal(scheme, fields.Scheme);
            Epc epc = fields.ToEpc();
            Assert.Equal(fields, EpcFields.Decode(epc));
            Assert.Equal(scheme, epc.Scheme);
            Assert.Equal(epc, EpcFields.Decode(epc).ToEpc());
            Assert.True(EpcFields.TryDecode(epc.ToWholeWords(), EpcDecoding.Strict, out EpcFields strict, out _));
            Assert.Equal(fields, strict);
        }
    }

    [Property(MaxTest = 200)]
    public void All_text_views_parse_back_to_the_same_identity(DoNotSize<ulong> seed)
    {
        foreach (EpcScheme scheme in AnyFields.Schemes)
        {
            // The checks throw when a view does not come back.
            byte[] text = Encoding.ASCII.GetBytes("\u0002" + AnyFields.TagUri(scheme, new SplitMix(seed.Item)));
            AnyInput.Check(text);
        }
    }

    [Property(MaxTest = 1000)]
    public void Random_bytes_never_throw(byte[] bytes) => AnyInput.Check(bytes);

    [Property(MaxTest = 1000)]
    public void Random_text_never_throws(string? text)
    {
        ReadOnlySpan<char> span = (text ?? string.Empty).AsSpan();
        _ = Epc.TryParse(span, out _);
        _ = EpcFields.TryParseTagUri(span, out _, out _);
        _ = EpcIdentity.TryParseUri(span, out _, out _);
        _ = EpcIdentity.TryParseElementString(span, default, EpcDecoding.Strict, out _, out _);
        _ = EpcIdentity.TryParseDigitalLink(span, default, EpcDecoding.Strict, out _, out _);
        _ = EpcPattern.TryParse(span, out _, out _);
        _ = EpcMemory.TryParseUri(span, out _, out _);
        _ = Epc.TryParseRawUri(span, out _, out _);
        Assert.False(EpcComponent.TryCreate(span, out EpcComponent component) && !string.Equals(component.ToString(), text ?? string.Empty, StringComparison.Ordinal));
    }

    [Fact]
    public void One_seeded_corpus_gives_the_same_bytes_on_every_target()
    {
        var draw = new SplitMix(20261124);
        var text = new StringBuilder();
        for (int i = 0; i < 2_000; i++)
        {
            EpcFields fields = EpcFields.ParseTagUri(AnyFields.TagUri(AnyFields.Schemes[i % AnyFields.Schemes.Length], draw).AsSpan());
            Epc epc = fields.ToEpc();
            text.Append(epc).Append('\n').Append(epc.ToTagUri()).Append('\n').Append(epc.ToPureIdentityUri()).Append('\n')
                .Append(fields.Identity.ToElementString()).Append('\n').Append(fields.Identity.ToDigitalLink()).Append('\n')
                .Append(epc.ToWholeWords().ToRawUri()).Append('\n');

            // Broken ones too: what is refused is refused alike.
            byte[] bytes = new byte[epc.ByteCount];
            epc.TryWriteBytes(bytes, out _);
            bytes[draw.Below(bytes.Length)] ^= (byte)(1 << draw.Below(8));
            _ = EpcFields.TryDecode(Epc.FromBytes(bytes, epc.BitCount), EpcDecoding.Strict, out EpcFields broken, out EpcFault fault);
            text.Append(broken).Append(fault).Append('\n');
        }

        string hash = Hash(Encoding.ASCII.GetBytes(text.ToString()));
        Assert.True(string.Equals(CorpusHash, hash, StringComparison.Ordinal), hash);
    }

    private static string Hash(byte[] bytes)
    {
#if NET
        return Convert.ToHexString(SHA256.HashData(bytes));
#else
        using var sha = SHA256.Create();
        return BitConverter.ToString(sha.ComputeHash(bytes)).Replace("-", string.Empty);
#endif
    }

    // No digits, or fewer than there are: the K = 0 column of the partition tables has an empty component.
    [Theory]
    [InlineData("urn:epc:tag:gdti-113:3.0614141.12345.006847", 113, "3A74257BF460720000000007AE7F8")]
    [InlineData("urn:epc:tag:gdti-113:0.000000000000..0", 113, "3A000000000000000000000000050")]
    public void Gdti_113_keeps_leading_zeros_by_the_text_of_the_standard(string uri, int bits, string hex)
    {
        Epc epc = EpcFields.ParseTagUri(uri.AsSpan()).ToEpc();
        Assert.Equal(bits, epc.BitCount);
        Assert.Equal(hex, epc.ToString());
        Assert.Equal(uri, epc.ToTagUri());
    }

    [Theory]
    [InlineData("urn:epc:id:bic:CSQU3054383", EpcRule.None)]
    [InlineData("urn:epc:id:bic:CSQU3054384", EpcRule.CheckDigit)]
    [InlineData("urn:epc:id:bic:CSIU3054383", EpcRule.CharacterSet)]
    [InlineData("urn:epc:id:bic:CSQX3054383", EpcRule.CharacterSet)]
    [InlineData("urn:epc:id:bic:CSQU305438", EpcRule.DigitCount)]
    [InlineData("urn:epc:id:imovn:9176187", EpcRule.None)]
    [InlineData("urn:epc:id:imovn:917618", EpcRule.DigitCount)]
    [InlineData("urn:epc:class:lgtin:4012345.012345.998877", EpcRule.None)]
    [InlineData("urn:epc:id:lgtin:4012345.012345.998877", EpcRule.SchemeName)]
    [InlineData("urn:epc:tag:giai-96:0.0614141.1", EpcRule.UriPrefix)]
    public void Identities_outside_the_tag_codings(string uri, EpcRule rule)
    {
        bool valid = EpcIdentity.TryParseUri(uri.AsSpan(), out EpcIdentity identity, out EpcFault fault);
        Assert.Equal(rule, fault.Rule);
        Assert.Equal(rule == EpcRule.None, valid);
        Assert.Equal(valid ? uri : string.Empty, identity.ToString());
    }
}
