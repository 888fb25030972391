using System;
using System.Collections.Generic;
using System.Globalization;
using System.Text;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>Where the kit stands, with the number of lines in each state.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class KitConclusion
{
    private readonly int[] counts;

    internal KitConclusion(KitState state, IReadOnlyList<Reason> reasons, IReadOnlyList<LineConclusion> lines)
    {
        State = state;
        Reasons = reasons;
        counts = new int[(int)LineState.Accounted + 1];
        foreach (LineConclusion line in lines)
        {
            counts[(int)line.State]++;
        }

        LineCount = lines.Count;
    }

    /// <summary>Where the kit stands.</summary>
    public KitState State { get; }

    /// <summary>Why, at least one unless complete.</summary>
    public IReadOnlyList<Reason> Reasons { get; }

    /// <summary>The probability that a line that rests on reads alone is not there, over the whole kit; null where the presence policy states no risk.</summary>
    public KitRisk? Risk { get; internal init; }

    /// <summary>Number of expected lines, those inside sub-kits included.</summary>
    public int LineCount { get; }

    /// <summary>Number of lines in a state; over all states they add up to <see cref="LineCount"/>.</summary>
    /// <param name="state">The line state.</param>
    /// <returns>0 or more.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a defined value.</exception>
    public int CountOf(LineState state)
        => (uint)state < (uint)counts.Length ? counts[(int)state] : throw new ArgumentOutOfRangeException(nameof(state), state, "Not a line state.");

    /// <summary>For example "Open: 12 accounted for, 2 not read, 1 not assessed".</summary>
    /// <returns>An English phrase.</returns>
    public override string ToString()
    {
        var text = new StringBuilder(Words.Of(State));
        text[0] = char.ToUpperInvariant(text[0]);
        string separator = ": ";
        for (int state = counts.Length - 1; state >= 0; state--)
        {
            if (counts[state] > 0)
            {
                text.Append(separator).Append(counts[state].ToString(CultureInfo.InvariantCulture)).Append(' ').Append(Words.Of((LineState)state));
                separator = ", ";
            }
        }

        return text.ToString();
    }
}
