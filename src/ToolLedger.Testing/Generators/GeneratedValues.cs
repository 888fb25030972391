using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;

namespace ToolLedger.Testing.Generators;

/// <summary>Plain values that several generators are built from.</summary>
internal static class GeneratedValues
{
    private static readonly string[] Letters =
    [
        "a", "b", "k", "Z", "0", "7", "-", "_", "/", "#", "*", "|", "\\", "<", "\"", "'", "&", "ä", "ß", "É", "İ", "ı", "Ж", "Ω", "م", "ש", "工", "具", "한", "ไ", "e\u0301", "\U0001F527",
    ];

    /// <summary>Printable text without white space at an end, from several scripts.</summary>
    internal static Gen<string> Text(int maxLetters) =>
        from count in Gen.Choose(1, maxLetters)
        from letters in Gen.Elements(Letters).ArrayOf(count)
        select string.Concat(letters);

    /// <summary>A short id out of few, so that ids meet.</summary>
    internal static Gen<string> FewIds(string stem) => Gen.Choose(1, 6).Select(number => FormattableString.Invariant($"{stem}{number}"));

    /// <summary>An instant of the years 2000 to 2060, to the 100 ns, with an offset of whole quarter hours.</summary>
    internal static Gen<DateTimeOffset> Times() =>
        from day in Gen.Choose(0, 21_900)
        from second in Gen.Choose(0, 86_399)
        from tick in Gen.Frequency((3, Gen.Constant(0)), (1, Gen.Choose(0, 9_999_999)))
        from quarters in Gen.Choose(-48, 56)
        let offset = TimeSpan.FromMinutes(15 * quarters)
        select new DateTimeOffset(2000, 1, 2, 0, 0, 0, TimeSpan.Zero).AddDays(day).AddSeconds(second).AddTicks(tick).ToOffset(offset);

    /// <summary>A list of 0 to so many entries.</summary>
    internal static Gen<IReadOnlyList<T>> ListOf<T>(Gen<T> entry, int maxCount) =>
        Gen.Choose(0, maxCount).SelectMany(count => entry.ArrayOf(count)).Select(IReadOnlyList<T> (entries) => entries.ToArray());
}
