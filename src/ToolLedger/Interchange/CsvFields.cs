using System;

namespace ToolLedger.Interchange;

/// <summary>Cuts a line into separated fields (RFC 4180, with the delimiter stated). A field in quotation marks ends on its
/// line; spaces around a field do not count.</summary>
internal sealed class CsvFields
{
    private readonly byte _delimiter;
    private byte[] _scratch = [];

    internal CsvFields(char delimiter) => _delimiter = (byte)delimiter;

    /// <summary>The next field; leaves the place behind the delimiter, or past the end of the line after the last field. False
    /// where quotation marks do not enclose a whole field. The text is good until the next field is taken.</summary>
    internal bool TryTake(ReadOnlySpan<byte> line, ref int at, out ReadOnlySpan<byte> text)
    {
        ReadOnlySpan<byte> rest = line[at..];
        if (!rest.IsEmpty && rest[0] == '"')
        {
            return TryTakeQuoted(line, ref at, out text);
        }

        int length = rest.IndexOf(_delimiter);
        length = length < 0 ? rest.Length : length;
        at += length + 1;
        text = rest[..length];
        if (length > 0 && (text[0] == ' ' || text[^1] == ' '))
        {
            text = text.Trim((byte)' ');
            return text.IsEmpty || text[0] != '"';
        }

        return true;
    }

    private bool TryTakeQuoted(ReadOnlySpan<byte> line, ref int at, out ReadOnlySpan<byte> text)
    {
        text = default;
        if (_scratch.Length < line.Length)
        {
            _scratch = new byte[line.Length];
        }

        int used = 0;
        for (int i = at + 1; i < line.Length; i++)
        {
            if (line[i] != '"')
            {
                _scratch[used++] = line[i];
            }
            else if (i + 1 < line.Length && line[i + 1] == '"')
            {
                // Two marks stand for one.
                _scratch[used++] = line[i++];
            }
            else
            {
                text = _scratch.AsSpan(0, used);
                at = i + 2;
                return i + 1 == line.Length || line[i + 1] == _delimiter;
            }
        }

        return false;
    }
}
