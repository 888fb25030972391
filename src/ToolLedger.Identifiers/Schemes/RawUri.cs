using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>Raw URIs of EPCs (GS1 TDS 2.3, chapter 12): bits that need no decoding.</summary>
internal static class RawUri
{
    internal static int LengthOf(Epc epc)
    {
        int bits = PaddedBits(epc);
        return "urn:epc:raw:".Length + DecimalText.CountDigits((ulong)bits) + ".x".Length + (bits / 4);
    }

    internal static string Format(Epc epc)
    {
        int length = LengthOf(epc);
        Span<char> text = length <= 512 ? stackalloc char[length] : new char[length];
        TryFormat(epc, text, out _);
        return text.ToString();
    }

    internal static bool TryFormat(Epc epc, Span<byte> destination, out int written)
    {
        int length = LengthOf(epc);
        if (destination.Length < length)
        {
            written = 0;
            return false;
        }

        int bits = PaddedBits(epc);
        var sink = new TextSink(destination);
        sink.Add("urn:epc:raw:"u8);
        sink.AddNumber((ulong)bits);
        sink.Add(".x"u8);
        epc.TryFormatHex(destination.Slice(sink.Length), out int digits);
        destination.Slice(sink.Length + digits, (bits / 4) - digits).Fill((byte)'0');
        written = length;
        return true;
    }

    internal static bool TryFormat(Epc epc, Span<char> destination, out int written)
    {
        int length = LengthOf(epc);
        if (destination.Length < length)
        {
            written = 0;
            return false;
        }

        int bits = PaddedBits(epc);
        Span<byte> start = stackalloc byte[20];
        var sink = new TextSink(start);
        sink.Add("urn:epc:raw:"u8);
        sink.AddNumber((ulong)bits);
        sink.Add(".x"u8);
        AsciiText.TryWiden(start.Slice(0, sink.Length), destination, out _);
        epc.TryFormatHex(destination.Slice(sink.Length), out int digits);
        destination.Slice(sink.Length + digits, (bits / 4) - digits).Fill('0');
        written = length;
        return true;
    }

    private static int PaddedBits(Epc epc) => (epc.BitCount + 15) & ~15;
}
