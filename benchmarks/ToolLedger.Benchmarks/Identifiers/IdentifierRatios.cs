using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using ToolLedger.Identifiers;

namespace ToolLedger.Benchmarks.Identifiers;

/// <summary>
/// Identifiers against the bounds of the machine, a naive decoder and the framework.
/// </summary>
internal static class IdentifierRatios
{
    internal static int Run()
    {
        var corpus = new EpcCorpus();
        var data = new Data(corpus);
        int different = Enumerable.Range(0, corpus.Hex.Length).Count(i => !Agrees(corpus, i));
        Console.WriteLine($"corpus: {corpus.Hex.Length} EPCs, {different} where library and corpus disagree");
        Ratios.Measure("hex -> tag URI, UTF-8", data.Count, ("copy bound", data.CopyHexToUri), ("library", data.HexToUri));
        Ratios.Measure("hex -> fields, UTF-8", data.Count, ("xor bound", data.XorHex), ("library", data.HexToFields));
        Ratios.Measure("tag URI -> hex, UTF-8", data.Count, ("copy bound", data.CopyUriToHex), ("library", data.UriToHex));
        Ratios.Measure("96-bit hex -> Epc, UTF-8", data.ShortCount, ("xor bound", data.XorShortHex), ("library", data.HexToEpc), ("Convert.FromHexString", data.FrameworkHex));
        Ratios.Measure("hex -> tag URI, strings", data.Count, ("naive bit string", data.NaiveStrings), ("library", data.HexToUriStrings));
        Ratios.Measure("tag URI -> hex, strings", data.Count, ("copy bound", data.CopyUriToHex), ("library", data.UriToHexStrings));
        foreach (int keys in new[] { 20, 1_000, 1_000_000 })
        {
            var look = new LookUps(keys);
            Ratios.Measure($"Dictionary look-up, {keys} keys", look.Count, ("UInt128", look.WithUInt128), ("Epc", look.WithEpc));
        }

        return different == 0 ? 0 : 1;
    }

    private static bool Agrees(EpcCorpus corpus, int i)
    {
        Epc epc = Epc.Parse(corpus.Hex[i]);
        return string.Equals(epc.ToTagUri(), corpus.TagUri[i], StringComparison.Ordinal)
            && EpcFields.TryParseTagUri(corpus.TagUri[i].AsSpan(), out EpcFields fields, out _)
            && fields.ToEpc().ToWholeWords() == epc
            && (i >= 2_000 || string.Equals(NaiveBitString.TagUri(corpus.Hex[i]), corpus.TagUri[i], StringComparison.Ordinal));
    }

    private sealed class Data
    {
        private readonly byte[][] _hex;
        private readonly byte[][] _uris;
        private readonly string[] _hexText;
        private readonly string[] _uriText;
        private readonly byte[][] _shortHex;
        private readonly byte[] _room = new byte[1024];

        internal Data(EpcCorpus corpus)
        {
            _hex = corpus.Hex.Select(Encoding.ASCII.GetBytes).ToArray();
            _uris = corpus.TagUri.Select(Encoding.ASCII.GetBytes).ToArray();
            _hexText = corpus.Hex.Select(h => new string(h.AsSpan())).ToArray();
            _uriText = corpus.TagUri.Select(u => new string(u.AsSpan())).ToArray();
            _shortHex = _hex.Where(h => h.Length == 24).ToArray();
        }

        internal int Count => _hex.Length;

        internal int ShortCount => _shortHex.Length;

        internal long CopyHexToUri()
        {
            long sum = 0;
            byte[] room = _room;
            for (int i = 0; i < _hex.Length; i++)
            {
                _hex[i].AsSpan().CopyTo(room);
                sum += room[1];
                _uris[i].AsSpan().CopyTo(room);
                sum += room[1];
            }

            return sum;
        }

        internal long CopyUriToHex()
        {
            long sum = 0;
            byte[] room = _room;
            for (int i = 0; i < _hex.Length; i++)
            {
                _uris[i].AsSpan().CopyTo(room);
                sum += room[1];
                _hex[i].AsSpan().CopyTo(room);
                sum += room[1];
            }

            return sum;
        }

        internal long XorHex() => Xor(_hex);

        internal long XorShortHex() => Xor(_shortHex);

        internal long HexToUri()
        {
            long sum = 0;
            Span<byte> room = _room;
            foreach (byte[] hex in _hex)
            {
                EpcFields.TryConvertHexToTagUri(hex, room, out int written);
                sum += written;
            }

            return sum;
        }

        internal long HexToFields()
        {
            long sum = 0;
            foreach (byte[] hex in _hex)
            {
                sum += EpcFields.TryDecodeHex(hex, out EpcFields fields) ? fields.Filter : 0;
            }

            return sum;
        }

        internal long UriToHex()
        {
            long sum = 0;
            Span<byte> room = _room;
            foreach (byte[] uri in _uris)
            {
                EpcFields.TryConvertTagUriToHex(uri, room, out int written);
                sum += written;
            }

            return sum;
        }

        internal long HexToEpc()
        {
            long sum = 0;
            foreach (byte[] hex in _shortHex)
            {
                sum += Epc.TryParse(hex, out Epc epc) ? epc.BitCount : 0;
            }

            return sum;
        }

        internal long FrameworkHex()
        {
            long sum = 0;
            Span<byte> room = _room;
            foreach (byte[] hex in _shortHex)
            {
                Convert.FromHexString(hex, room, out _, out int written);
                sum += written;
            }

            return sum;
        }

        internal long NaiveStrings() => _hexText.Sum(hex => (long)NaiveBitString.TagUri(hex).Length);

        internal long HexToUriStrings()
        {
            long sum = 0;
            foreach (string hex in _hexText)
            {
                sum += EpcFields.TryDecodeHex(hex, EpcDecoding.Lenient, out EpcFields fields, out _) ? fields.ToTagUri().Length : 0;
            }

            return sum;
        }

        internal long UriToHexStrings()
        {
            long sum = 0;
            foreach (string uri in _uriText)
            {
                sum += EpcFields.TryParseTagUri(uri.AsSpan(), out EpcFields fields, out _) ? fields.ToHex().Length : 0;
            }

            return sum;
        }

        private static long Xor(byte[][] texts)
        {
            ulong xor = 0;
            foreach (byte[] text in texts)
            {
                ReadOnlySpan<ulong> words = System.Runtime.InteropServices.MemoryMarshal.Cast<byte, ulong>(text);
                foreach (ulong word in words)
                {
                    xor ^= word;
                }
            }

            return (long)xor;
        }
    }

    private sealed class LookUps
    {
        private const int Reads = 200_000;
        private readonly Dictionary<Epc, int> _epcs = [];
        private readonly Dictionary<UInt128, int> _numbers = [];
        private readonly Epc[] _epcReads = new Epc[Reads];
        private readonly UInt128[] _numberReads = new UInt128[Reads];

        internal LookUps(int keys)
        {
            var draw = new SplitMix64(7);
            for (int i = 0; i < keys; i++)
            {
                (Epc epc, UInt128 number) = Key(i);
                _epcs.Add(epc, i);
                _numbers.Add(number, i);
            }

            for (int i = 0; i < Reads; i++)
            {
                (_epcReads[i], _numberReads[i]) = Key(draw.Below(keys));
            }
        }

        internal int Count => Reads;

        internal long WithEpc()
        {
            long sum = 0;
            foreach (Epc read in _epcReads)
            {
                sum += _epcs.TryGetValue(read, out int value) ? value : 0;
            }

            return sum;
        }

        internal long WithUInt128()
        {
            long sum = 0;
            foreach (UInt128 read in _numberReads)
            {
                sum += _numbers.TryGetValue(read, out int value) ? value : 0;
            }

            return sum;
        }

        // GIAI-96 of one company prefix, as the tags of one site are.
        private static (Epc Epc, UInt128 Number) Key(int i)
        {
            UInt128 number = ((UInt128)0x34 << 88) | ((UInt128)5 << 82) | ((UInt128)614141 << 58) | (ulong)(((long)i * 7919) + 1);
            return (Epc.Parse(number.ToString("X24", CultureInfo.InvariantCulture)), number);
        }
    }
}
