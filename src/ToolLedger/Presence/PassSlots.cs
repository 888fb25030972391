using System;

namespace ToolLedger.Presence;

/// <summary>The models among passes, numbered as they come up: each has an obscured share of its own, which may be wrong by itself.</summary>
internal static class PassSlots
{
    /// <summary>Gives each pass the place of its model.</summary>
    /// <param name="passes">The passes, at most six.</param>
    /// <param name="slots">As many places.</param>
    /// <returns>How many models there are.</returns>
    public static int Fill(ReadOnlySpan<PassLooks> passes, Span<int> slots)
    {
        int count = 0;
        for (int i = 0; i < passes.Length; i++)
        {
            int same = 0;
            while (same < i && passes[same].Model != passes[i].Model)
            {
                same++;
            }

            slots[i] = same < i ? slots[same] : count++;
        }

        return count;
    }
}
