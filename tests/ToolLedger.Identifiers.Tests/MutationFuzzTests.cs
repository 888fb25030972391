using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using ToolLedger.Identifiers.Tests.Vectors;
using Xunit;

namespace ToolLedger.Identifiers.Tests;

/// <summary>Seeded mutations of every vector: nothing throws, and whatever is accepted survives every view.</summary>
public sealed class MutationFuzzTests
{
    private static readonly byte[] Interesting = Encoding.ASCII.GetBytes("0123456789.:*[]-()%#/\\AFGZaz~ ");

    [Theory]
    [InlineData(20261124UL, 60_000)]
    [InlineData(7UL, 60_000)]
    public void No_mutation_of_a_vector_breaks_what_must_hold(ulong seed, int runs)
    {
        List<byte[]> corpus = Corpus().ToList();
        var draw = new SplitMix(seed);
        for (int run = 0; run < runs; run++)
        {
            byte[] input = Mutate((byte[])corpus[draw.Below(corpus.Count)].Clone(), draw);
            try
            {
                AnyInput.Check(input);
            }
            catch (Exception broken)
            {
                Assert.Fail("Input " + BitConverter.ToString(input) + ": " + broken);
            }
        }
    }

    // Every bit flip and every truncation of one tag of each scheme.
    [Fact]
    public void Every_bit_flip_and_truncation_decodes_or_is_refused()
    {
        foreach (IGrouping<string, IReadOnlyDictionary<string, string>> scheme in VectorFile.Read("tag.tsv").GroupBy(r => r["scheme"], StringComparer.Ordinal))
        {
            byte[] bytes = Bytes(scheme.First()["memoryHex"]);
            for (int bit = 0; bit < bytes.Length * 8; bit++)
            {
                var flipped = new byte[bytes.Length + 1];
                bytes.CopyTo(flipped, 1);
                flipped[1 + (bit / 8)] ^= (byte)(0x80 >> (bit % 8));
                AnyInput.Check(flipped);
                var cut = new byte[1 + ((bit + 7) / 8)];
                Array.Copy(bytes, 0, cut, 1, cut.Length - 1);
                cut[0] = (byte)(1 | (((8 - (bit % 8)) % 8) << 3));
                AnyInput.Check(cut);
            }
        }
    }

    internal static IEnumerable<byte[]> Corpus()
    {
        foreach (IReadOnlyDictionary<string, string> row in VectorFile.Read("tag.tsv"))
        {
            yield return new byte[] { 0 }.Concat(Bytes(row["memoryHex"])).ToArray();
            yield return new byte[] { 7 }.Concat(Bytes("3000" + row["memoryHex"])).ToArray();
            yield return Text(2, row["tagUri"]);
            yield return Text(3, row["pureIdentity"]);
            yield return Text(4 + 8, row["elementString"]);
            yield return Text(5 + 8, row["digitalLink"]);
            yield return Text(6, row["tagUri"].Replace("urn:epc:tag:", "urn:epc:pat:"));
            yield return Text(6, row["tagUri"].Replace("urn:epc:tag:", "urn:epc:tag:[att=x01][umi=1][xpc=x0001]"));
            yield return Text(6, row["hex"]);
        }

        foreach (IReadOnlyDictionary<string, string> row in VectorFile.Read("identity.tsv"))
        {
            yield return Text(3, row["pureIdentity"]);
            yield return Text(4 + 8, row["elementString"]);
            yield return Text(6, row["pureIdentity"].Replace("urn:epc:id:", "urn:epc:idpat:"));
        }
    }

    private static byte[] Mutate(byte[] input, SplitMix draw)
    {
        for (int times = 1 + draw.Below(3); times > 0 && input.Length > 1; times--)
        {
            int at = 1 + draw.Below(input.Length - 1);
            switch (draw.Below(7))
            {
                case 0: input[at] ^= (byte)(1 << draw.Below(8)); break;
                case 1: input[at] = (byte)draw.Next(); break;
                case 2: input[at] = Interesting[draw.Below(Interesting.Length)]; break;
                case 3: input = input.Take(at).ToArray(); break;
                case 4: input = input.Take(at).Concat(input.Skip(at + 1)).ToArray(); break;
                case 5: input = input.Take(at).Concat([Interesting[draw.Below(Interesting.Length)]]).Concat(input.Skip(at)).ToArray(); break;
                default: input = input.Concat(input.Skip(at)).ToArray(); break;
            }
        }

        input[0] = draw.Below(20) == 0 ? (byte)draw.Next() : input[0];
        return input;
    }

    private static byte[] Text(byte kind, string text) => [kind, .. Encoding.ASCII.GetBytes(text)];

    private static byte[] Bytes(string hex)
    {
        Epc epc = Epc.Parse(hex);
        var bytes = new byte[epc.ByteCount];
        epc.TryWriteBytes(bytes, out _);
        return bytes;
    }
}
