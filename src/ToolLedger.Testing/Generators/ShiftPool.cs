using System;
using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Identifiers;
using ToolLedger.Kits;
using ToolLedger.Testing.Simulation;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>The few names that generated shifts share, so that reads, bindings and entries meet.</summary>
internal static class ShiftPool
{
    internal static readonly DateTimeOffset Start = new(2026, 3, 2, 15, 55, 0, TimeSpan.Zero);

    internal static readonly KitId Subject = new("K1");
    internal static readonly KitId Second = new("K2");
    internal static readonly KitId Third = new("K3");
    internal static readonly KitId Box = new("K4");

    internal static readonly ToolId Spare = new("S1");

    internal const int TagsPerTool = 4;

    /// <summary>A tag by number. Another filter value is the same identity in other words.</summary>
    /// <remarks>
    /// GS1 EPC Tag Data Standard 2.3, GIAI-96: header 34, filter 0 to 7, partition 5 (seven-digit company prefix), prefix 0614141 (the one GS1
    /// uses in its own examples), then 58 bits of individual asset reference.
    /// </remarks>
    internal static TagId Tag(int number, int filter = 0)
    {
        UInt128 bits = ((UInt128)0x34 << 88) | ((UInt128)filter << 85) | ((UInt128)5 << 82) | ((UInt128)614141 << 58) | (uint)number;
        return TagId.Parse(string.Create(CultureInfo.InvariantCulture, $"{(ulong)(bits >> 32):X16}{(uint)bits:X8}"));
    }

    /// <summary>A tag of this pool with another filter value.</summary>
    internal static TagId InOtherWords(TagId tag)
    {
        // The filter value is the three bits behind the header, so the third hexadecimal digit holds them.
        char[] digits = tag.Epc.ToString().ToCharArray();
        digits[2] = digits[2] == '3' ? '5' : '3';
        return TagId.Parse(new string(digits));
    }

    internal static Tid Chip(int number) => Tid.Parse(string.Create(CultureInfo.InvariantCulture, $"E2801105{number:X8}"));

    /// <summary>Values drawn from a seed that FsCheck chooses: one choice a value and not one a fact, since a shift has hundreds of facts.</summary>
    internal static Gen<T> FromSeeds<T>(Func<SplitMix64, T> draw) =>
        from high in Gen.Choose(0, int.MaxValue)
        from low in Gen.Choose(0, int.MaxValue)
        select draw(new SplitMix64(((ulong)high << 32) | (uint)low));

    /// <summary>An index, each as often as its weight says.</summary>
    internal static int Weighted(this SplitMix64 chance, params ReadOnlySpan<int> weights)
    {
        int sum = 0;
        foreach (int weight in weights)
        {
            sum += weight;
        }

        int left = chance.Below(sum);
        int index = 0;
        while (left >= weights[index])
        {
            left -= weights[index++];
        }

        return index;
    }

    /// <summary>True once in so many times.</summary>
    internal static bool OneIn(this SplitMix64 chance, int count) => chance.Below(count) == 0;

    /// <summary>Uniform, both ends included.</summary>
    internal static int Among(this SplitMix64 chance, int low, int high) => low + chance.Below(high - low + 1);
}
