using System;

namespace ToolLedger.Identifiers;

/// <summary>Between ASCII bytes and characters.</summary>
internal static class AsciiText
{
    internal static string ToText(ReadOnlySpan<byte> ascii)
    {
#if NET
        return System.Text.Encoding.ASCII.GetString(ascii);
#else
        Span<char> text = ascii.Length <= 1024 ? stackalloc char[ascii.Length] : new char[ascii.Length];
        TryWiden(ascii, text, out _);
        return text.ToString();
#endif
    }

    internal static bool TryWiden(ReadOnlySpan<byte> ascii, Span<char> destination, out int written)
    {
        written = 0;
        if (ascii.Length > destination.Length)
        {
            return false;
        }

#if NET
        System.Text.Ascii.ToUtf16(ascii, destination, out written);
#else
        for (; written < ascii.Length; written++)
        {
            destination[written] = (char)ascii[written];
        }
#endif
        return true;
    }

    internal static bool TryCopy(ReadOnlySpan<byte> ascii, Span<byte> destination, out int written)
    {
        bool room = ascii.TryCopyTo(destination);
        written = room ? ascii.Length : 0;
        return room;
    }

    /// <summary>Narrows to bytes. A character beyond ASCII becomes FFh, which no rule here accepts.</summary>
    internal static bool TryNarrow(ReadOnlySpan<char> text, Span<byte> room, out ReadOnlySpan<byte> bytes, out EpcFault fault)
    {
        fault = default;
        bytes = default;
        if (text.Length > room.Length)
        {
            fault = new EpcFault(EpcRule.TextLength, EpcField.None, EpcPositionUnit.Character, room.Length, (ulong)text.Length);
            return false;
        }

        Narrow(text, room);
        bytes = room.Slice(0, text.Length);
        return true;
    }

    private static void Narrow(ReadOnlySpan<char> text, Span<byte> room)
    {
        int from = 0;
#if NET
        if (System.Text.Ascii.FromUtf16(text, room, out from) == System.Buffers.OperationStatus.Done)
        {
            return;
        }
#endif
        for (int i = from; i < text.Length; i++)
        {
            room[i] = text[i] < 0x80 ? (byte)text[i] : (byte)0xFF;
        }
    }
}
