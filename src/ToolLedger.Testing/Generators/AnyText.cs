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
        from characters in Gen.Elements(Characters).ArrayOf(length)
        from space in Gen.Choose(0, 3 * length)
        select string.Concat(characters.Select((c, i) => i == space && i > 0 && i < length - 1 ? " " : c));
}
