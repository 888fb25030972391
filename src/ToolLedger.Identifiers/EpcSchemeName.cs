using System;
using ToolLedger.Identifiers.Schemes;

namespace ToolLedger.Identifiers;

/// <summary>The names of the coding schemes as the standard prints them, such as <c>SGTIN-96</c>.</summary>
public static class EpcSchemeName
{
    /// <summary>The name of a scheme whose fields this version reads.</summary>
    /// <param name="scheme">The scheme.</param>
    /// <returns>The name; empty text for every other scheme.</returns>
    public static string Of(EpcScheme scheme) => SchemeList.Of(scheme)?.PrintedName ?? string.Empty;

    /// <summary>Finds a scheme by its name, in capital or small letters.</summary>
    /// <param name="name">The name.</param>
    /// <param name="scheme">The scheme, or <see cref="EpcScheme.Unknown"/> when the answer is <see langword="false"/>.</param>
    /// <returns>Whether this version reads the fields of a scheme of this name.</returns>
    public static bool TryParse(ReadOnlySpan<char> name, out EpcScheme scheme)
    {
        foreach (EpcCodec codec in SchemeList.Codecs)
        {
            if (name.Equals(codec.Name.AsSpan(), StringComparison.OrdinalIgnoreCase))
            {
                scheme = codec.Scheme;
                return true;
            }
        }

        scheme = EpcScheme.Unknown;
        return false;
    }
}
