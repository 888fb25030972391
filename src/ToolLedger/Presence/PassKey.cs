using System;
using System.Runtime.InteropServices;

namespace ToolLedger.Presence;

/// <summary>The looks that passes offered, their models and which of them shared their surroundings, in an order of its own: what a cut may depend on.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct PassKey
{
    /// <summary>Most passes that are weighed.</summary>
    public const int MaxPasses = 6;

    // From below: 16 bits of looks, 3 of the number of the surroundings, 10 of the model; 0 for none.
    private readonly (int, int, int, int, int, int) packed;

    private PassKey((int, int, int, int, int, int) packed, int count)
    {
        this.packed = packed;
        Count = count;
    }

    public int Count { get; }

    public static PassKey Of(ReadOnlySpan<PassLooks> passes)
    {
        Span<int> numbers = stackalloc int[MaxPasses];
        numbers.Clear();
        int count = 0;
        for (int i = 0; i < passes.Length; i++)
        {
            if (passes[i].Looks > 0)
            {
                numbers[count++] = (passes[i].Model << 19) | (GroupOf(passes, i) << 16) | passes[i].Looks;
            }
        }

        // The order of passes makes no difference to the chances of their sums.
        numbers[..count].Sort();
        return new PassKey((numbers[0], numbers[1], numbers[2], numbers[3], numbers[4], numbers[5]), count);
    }

    /// <summary>An order of its own.</summary>
    public static int Compare(PassKey left, PassKey right) => left.Count != right.Count ? left.Count.CompareTo(right.Count) : left.packed.CompareTo(right.packed);

    public int LooksOf(int index) => this[index] & 0xFFFF;

    public int GroupOf(int index) => (this[index] >> 16) & 7;

    public int ModelOf(int index) => this[index] >> 19;

    /// <summary>The passes again, without reads, and with the group as surroundings.</summary>
    public void CopyTo(Span<PassLooks> passes)
    {
        for (int i = 0; i < Count; i++)
        {
            passes[i] = new PassLooks(LooksOf(i), 0) { Surroundings = GroupOf(i), Model = ModelOf(i) };
        }
    }

    private int this[int index] => index switch
    {
        0 => packed.Item1,
        1 => packed.Item2,
        2 => packed.Item3,
        3 => packed.Item4,
        4 => packed.Item5,
        _ => packed.Item6,
    };

    /// <summary>The index of the first pass of the same surroundings.</summary>
    private static int GroupOf(ReadOnlySpan<PassLooks> passes, int index)
    {
        for (int i = 0; i < index; i++)
        {
            if (passes[i].Surroundings == passes[index].Surroundings)
            {
                return i;
            }
        }

        return index;
    }
}
