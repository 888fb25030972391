using System;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>What was signed of one line.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
/// <param name="Label">The number as reports print it.</param>
/// <param name="Description">What the line lists.</param>
/// <param name="Tool">The tool; empty if it lists none.</param>
/// <param name="State">Where it stood, in the words of <see cref="Words"/>.</param>
/// <param name="Basis">What it rested on, in the words of <see cref="Words"/>.</param>
/// <param name="OldestAt">The oldest evidence that it could not do without; null if it was open.</param>
/// <param name="Receipt">The receipt it was on; empty if on none.</param>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed record SignedLine(string Label, string Description, ToolId Tool, string State, string Basis, DateTimeOffset? OldestAt, EntryId Receipt)
{
    /// <summary>Whether the line was accounted for.</summary>
    public bool IsAccounted => string.Equals(State, Words.Of(LineState.Accounted), StringComparison.Ordinal);

    /// <summary>Whether it was accounted for by its own mark.</summary>
    public bool IsSighted => IsAccounted && string.Equals(Basis, Words.Of(AccountingBasis.Sighted), StringComparison.Ordinal);

    /// <summary>For example "line 7 (spanner): accounted for, read".</summary>
    /// <returns>Text for people.</returns>
    public override string ToString() => $"line {Label} ({Description}): {Standing}";

    /// <summary>State and, if accounted for, basis.</summary>
    internal string Standing => IsAccounted ? $"{State}, {Basis}" : State;
}
