using System.Collections.Generic;

namespace ToolLedger.Reports;

/// <summary>The rows of one source that could not be used: how many, and the first of them.</summary>
/// <remarks>Immutable and thread-safe if the list handed in is not changed.</remarks>
public sealed class RefusedRows
{
    /// <summary>The source, as in <see cref="SourceDigest.Name"/>.</summary>
    public required string Source { get; init; }

    /// <summary>How many rows were refused; 0 or more.</summary>
    public required long Count { get; init; }

    /// <summary>The first of them, as many as the host kept; reports print up to five and say how many more there are.</summary>
    public IReadOnlyList<RefusedRow> First { get; init; } = [];
}
