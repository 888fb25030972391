#if NET
using System;
using System.Linq;
using System.Text;
using ToolLedger.Identifiers.Tests.Vectors;
using Xunit;

namespace ToolLedger.Identifiers.Tests;

/// <summary>Nothing on the hot path allocates, on success or failure; only the tail of an EPC over 128 bits does.</summary>
public sealed class AllocationTests
{
    private static readonly byte[][] Hex = VectorFile.Read("tag.tsv").Select(r => Encoding.ASCII.GetBytes(r["memoryHex"])).ToArray();
    private static readonly byte[][] Uris = VectorFile.Read("tag.tsv").Select(r => Encoding.ASCII.GetBytes(r["tagUri"])).ToArray();
    private static readonly byte[][] Elements = VectorFile.Read("identity.tsv").Select(r => Encoding.ASCII.GetBytes(r["elementString"])).ToArray();
    private static readonly byte[][] Links = VectorFile.Read("identity.tsv").Select(r => Encoding.ASCII.GetBytes(r["digitalLink"])).ToArray();
    private static readonly byte[][] Broken = Hex.Select(h => h.Take(h.Length - 9).Append((byte)'G').ToArray()).Concat(Uris.Select(u => u.Take(u.Length / 2).ToArray())).ToArray();

    [Fact]
    public void Hex_to_fields_allocates_nothing_at_any_length() => Measure(Hex, static text =>
        EpcFields.TryDecodeHex(text, EpcDecoding.Lenient, out _, out _));

    [Fact]
    public void Hex_to_tag_uri_allocates_nothing_at_any_length() => Measure(Hex, static text =>
    {
        Span<byte> uri = stackalloc byte[600];
        return EpcFields.TryDecodeHex(text, out EpcFields fields) && fields.TryFormatTagUri(uri, out _) && fields.Identity.TryFormatUri(uri, out _);
    });

    [Fact]
    public void Tag_uri_to_hex_allocates_nothing_at_any_length() => Measure(Uris, static text =>
    {
        Span<byte> hex = stackalloc byte[200];
        return EpcFields.TryParseTagUri(text, out EpcFields fields, out _) && fields.TryFormatHex(hex, out _);
    });

    [Fact]
    public void Gs1_texts_allocate_nothing() => Measure(Elements, static text =>
    {
        Span<byte> room = stackalloc byte[600];
        return EpcIdentity.TryParseElementString(text, CompanyPrefixLength.FromDigits(7), EpcDecoding.Lenient, out EpcIdentity identity, out _)
            && identity.TryFormatElementString(room, ElementStringForm.Raw, out _) && identity.TryFormatDigitalLink(room, out _);
    });

    [Fact]
    public void Digital_links_allocate_nothing() => Measure(Links, static text =>
        EpcIdentity.TryParseDigitalLink(text, CompanyPrefixLength.FromDigits(7), EpcDecoding.Lenient, out _, out _));

    [Fact]
    public void Refusals_allocate_nothing() => Measure(Broken, static text =>
        EpcFields.TryDecodeHex(text, EpcDecoding.Strict, out _, out _) | EpcFields.TryParseTagUri(text, out _, out _)
        | EpcIdentity.TryParseUri(text, out _, out _) | Epc.TryParse(text, out _));

    [Fact]
    public void An_epc_of_up_to_128_bits_allocates_nothing_and_a_longer_one_its_tail()
    {
        byte[] inline = Encoding.ASCII.GetBytes(new string('A', 32));
        byte[] longer = Encoding.ASCII.GetBytes(new string('A', 52));
        Assert.Equal(0, Bytes(() => Epc.TryParse(inline, out _)));
        Assert.Equal(40, Bytes(() => Epc.TryParse(longer, out _)));
    }

    private static void Measure(byte[][] texts, Func<byte[], bool> read)
    {
        int accepted = 0;
        for (int warm = 0; warm < 2; warm++)
        {
            accepted = texts.Count(read);
        }

        Assert.True(accepted > 0 || ReferenceEquals(texts, Broken));
        Assert.Equal(0, Bytes(() =>
        {
            foreach (byte[] text in texts)
            {
                read(text);
            }

            return true;
        }));
    }

    // The smallest of a few, since the runtime itself may allocate once.
    private static long Bytes(Func<bool> work)
    {
        long least = long.MaxValue;
        for (int i = 0; i < 5; i++)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            work();
            least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
        }

        return least;
    }
}
#endif
