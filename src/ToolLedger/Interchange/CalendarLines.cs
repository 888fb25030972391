using System;
using System.Buffers;
using System.Text;

namespace ToolLedger.Interchange;

/// <summary>Content lines of iCalendar: ended by CR LF, folded at 75 octets, never inside a character (RFC 5545, 3.1).</summary>
internal sealed class CalendarLines
{
    private const int MaxOctets = 75;

    private readonly ArrayBufferWriter<byte> bytes = new(4096);

    internal void Put(string line)
    {
        Span<byte> one = stackalloc byte[4];
        int used = 0;
        foreach (Rune rune in line.EnumerateRunes())
        {
            int length = rune.EncodeToUtf8(one);
            if (used + length > MaxOctets)
            {
                // The space that begins a continuation counts among its octets.
                bytes.Write("\r\n "u8);
                used = 1;
            }

            bytes.Write(one[..length]);
            used += length;
        }

        bytes.Write("\r\n"u8);
    }

    /// <summary>A property whose value is text: the backslash first, then semicolon, comma and line breaks (RFC 5545, 3.3.11); other control characters have no place in text and become spaces.</summary>
    internal void PutText(string name, string text)
    {
        var line = new StringBuilder(name.Length + text.Length + 16).Append(name).Append(':');
        for (int index = 0; index < text.Length; index++)
        {
            char c = text[index];
            _ = c switch
            {
                '\\' => line.Append("\\\\"),
                ';' => line.Append("\\;"),
                ',' => line.Append("\\,"),
                '\r' when index + 1 < text.Length && text[index + 1] == '\n' => line,
                '\r' or '\n' => line.Append("\\n"),
                _ => line.Append(char.IsControl(c) ? ' ' : c),
            };
        }

        Put(line.ToString());
    }

    internal byte[] ToArray() => bytes.WrittenSpan.ToArray();
}
