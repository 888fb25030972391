using ToolLedger.Kits;

namespace ToolLedger.Trials;

/// <summary>A line of a kit with what was shown of the tag on its tool, container or case.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
/// <param name="Line">The line.</param>
/// <param name="Qualification">What the trials show.</param>
public sealed record LineQualification(ManifestLine Line, TagQualification Qualification)
{
    /// <summary>The line, and what was shown of its tag.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() => $"{Line}; {Qualification}";
}
