using System;

namespace ToolLedger.Reads;

/// <summary>The looks of a session in order, and where those of each tag begin.</summary>
internal sealed class LookIndex
{
    private readonly ReadOnlyMemory<ulong> _looks;
    private readonly int[] _starts;

    internal LookIndex(LookLog log, int tagCount)
    {
        _looks = log.InOrder();
        _starts = new int[tagCount + 1];
        foreach (ulong look in _looks.Span)
        {
            _starts[LookKey.Tag(look) + 1]++;
        }

        for (int tag = 1; tag < _starts.Length; tag++)
        {
            _starts[tag] += _starts[tag - 1];
        }
    }

    /// <summary>The looks of a tag in order of pass, antenna and slot.</summary>
    internal ReadOnlySpan<ulong> Of(int tag) => _looks.Span[_starts[tag].._starts[tag + 1]];

    /// <summary>How many looks at the front of some are of one pass and antenna.</summary>
    internal static int CellLength(ReadOnlySpan<ulong> looks)
    {
        int length = 1;
        while (length < looks.Length && LookKey.Cell(looks[length]) == LookKey.Cell(looks[0]))
        {
            length++;
        }

        return length;
    }
}
