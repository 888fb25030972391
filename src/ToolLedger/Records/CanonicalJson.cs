using System;
using System.Diagnostics.CodeAnalysis;

namespace ToolLedger.Records;

/// <summary>The JSON Canonicalization Scheme (RFC 8785): one form for every JSON text of the same content, fit for a digest.</summary>
/// <remarks>
/// Members are ordered by their UTF-16 code units, numbers are written as ECMAScript writes a double, no white space is
/// kept. Numbers beyond the precision of a double lose it, as RFC 8785 section 3.2.2.3 has it. Thread-safe.
/// </remarks>
public static class CanonicalJson
{
    /// <summary>Deepest nesting accepted.</summary>
    public const int MaxDepth = 64;

    /// <summary>Largest text accepted, in bytes.</summary>
    public const int MaxByteCount = 512 * 1024 * 1024;

    /// <summary>Writes JSON in its canonical form.</summary>
    /// <param name="utf8Json">One JSON value as UTF-8.</param>
    /// <returns>The canonical form as UTF-8.</returns>
    /// <exception cref="RecordException">The text is not JSON, names a member twice, holds half of a surrogate pair, is too large or nested too deeply.</exception>
    public static byte[] Canonicalize(ReadOnlySpan<byte> utf8Json) =>
        TryCanonicalize(utf8Json, out byte[]? canonical, out RecordIssue? issue) ? canonical : throw new RecordException([issue]);

    /// <summary>Writes JSON in its canonical form if it is acceptable.</summary>
    /// <param name="utf8Json">One JSON value as UTF-8.</param>
    /// <param name="canonical">The canonical form as UTF-8, or null.</param>
    /// <param name="issue">What is wrong, or null.</param>
    /// <returns>False if the text is not JSON, names a member twice, holds half of a surrogate pair, is too large or nested too deeply.</returns>
    public static bool TryCanonicalize(ReadOnlySpan<byte> utf8Json, [NotNullWhen(true)] out byte[]? canonical, [NotNullWhen(false)] out RecordIssue? issue)
    {
        canonical = null;
        issue = JsonScan.Check(utf8Json, new JsonLimits(MaxByteCount));
        if (issue is not null)
        {
            return false;
        }

        var writer = new CanonicalWriter(JsonScan.WithoutMark(utf8Json));
        issue = writer.Write();
        canonical = issue is null ? writer.ToArray() : null;
        return canonical is not null;
    }

    /// <summary>The digest of the canonical form of JSON this library wrote itself.</summary>
    internal static Digest DigestOf(ReadOnlySpan<byte> utf8Json) => Digest.Of(Canonicalize(utf8Json));
}
