using ToolLedger.Reads;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>A read session as the result saw it.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class SessionSummary
{
    /// <summary>The session.</summary>
    public required ReadSession Session { get; init; }

    /// <summary>True where its looks count as evidence: usable, of this kit, not after the as-of instant and not too old.</summary>
    public required bool IsUsed { get; init; }

    /// <summary>Why it was left out, or null where it was used or its own health is the reason.</summary>
    public Reason? LeftOut { get; init; }

    /// <summary>The session, and whether it was used or why not.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() => $"{Session}, {(IsUsed ? "used" : LeftOut is { } why ? $"not used: {why}" : "not used")}";
}
