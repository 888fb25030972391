using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>What the reads of one tag in one session are, seen from the kit under check. Reads of a tag that share an explanation stand together with their number.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class ReadExplanation
{
    /// <summary>The session the reads were delivered to.</summary>
    public required SessionId Session { get; init; }

    /// <summary>The tag; the empty tag stands for reads of tags beyond the session's tag limit.</summary>
    public required TagId Tag { get; init; }

    /// <summary>What the reads are.</summary>
    public required ReadExplanationKind Kind { get; init; }

    /// <summary>Why.</summary>
    public required Reason Reason { get; init; }

    /// <summary>How many read reports this explains, 1 or more.</summary>
    public required long ReadCount { get; init; }

    /// <summary>The tool the tag is or was bound to, or null.</summary>
    public ToolId? Tool { get; init; }

    /// <summary>The kit whose manifest lists that tool, or null.</summary>
    public KitId? Kit { get; init; }

    /// <summary>The sentence of <see cref="Reason"/>.</summary>
    /// <returns>An English sentence.</returns>
    public override string ToString() => Reason.ToString();
}
