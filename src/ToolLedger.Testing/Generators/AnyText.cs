using System;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;

namespace ToolLedger.Testing.Generators;

/// <summary>Printable texts: mostly Latin letters and digits, with marks, other scripts and characters beyond the basic plane.</summary>
public static class AnyText
{
    // A fixed list: what counts as assigned grows with Unicode, and generators must not.
    private static readonly string[] Characters =
    [
        .. "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789".Select(c => c.ToString()),
        "-", "_", "/", ".", "\"", "\\", "<", "&", "+", "'", "\u00e4", "\u00df", "\u00e9", "\u0142", "\u03a9", "\u0416",
        "\u05d0", "\u0639", "\u0e01", "\u6f22", "\uac00", "\U0001F527", "\U00020000",
    ];

    /// <summary>Texts of 1 to so many characters, without white space at an end.</summary>
    /// <param name="maxLength">Most Unicode characters, at least 1.</param>
    /// <returns>A generator.</returns>
    public static Gen<string> OfLength(int maxLength) =>
        from length in Gen.Choose(1, maxLength)
        from seed in Gen.Choose(0, int.MaxValue)
        select Make(length, seed);

    // One choice a text and not one a character: a manifest has hundreds of characters.
    private static string Make(int length, int seed)
    {
        var random = new Random(seed);
        int space = random.Next(1, 3 * length);
        return string.Concat(Enumerable.Range(0, length).Select(i =>
            i == space && i < length - 1 ? " " : Characters[random.Next(Characters.Length)]));
    }
}
