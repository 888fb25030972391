using System;
using System.Collections.Generic;
using System.Text;

namespace ToolLedger.Interchange;

/// <summary>Which column a name stands for.</summary>
internal sealed class ColumnNames
{
    private readonly byte[][] _names = new byte[(int)ReadColumn.ReportId + 1][];
    private readonly string?[] _texts;

    internal ColumnNames(ReadColumns columns)
    {
        _texts = [null, columns.Tag, columns.FirstSeen, columns.Antenna, columns.LastSeen, columns.Rssi, columns.Count, columns.Tid, columns.ReportId];
        HashSet<string> different = new(StringComparer.Ordinal);
        for (int i = 0; i < _texts.Length; i++)
        {
            // A name holds at least one character, so that the empty one never matches.
            _names[i] = Encoding.UTF8.GetBytes(_texts[i] ?? "");
            if (_texts[i] is { } text && !different.Add(text))
            {
                throw new ArgumentException($"The name \"{text}\" is given to two columns.", nameof(columns));
            }
        }
    }

    internal string? TextOf(ReadColumn column) => _texts[(int)column];

    internal ReadColumn Find(ReadOnlySpan<byte> name)
    {
        if (!name.IsEmpty)
        {
            for (int i = 1; i < _names.Length; i++)
            {
                if (name.SequenceEqual(_names[i]))
                {
                    return (ReadColumn)i;
                }
            }
        }

        return ReadColumn.Ignored;
    }
}
