using System;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Inventory;

/// <summary>A named person decides, by putting the fragments together or by inspection, how many pieces a broken tool is in.</summary>
/// <remarks>It settles the number that must be met; the pieces still have to be counted. Immutable and thread-safe.</remarks>
public sealed class Reconstruction
{
    /// <summary>Longest decision, in characters.</summary>
    public const int MaxDecisionLength = 200;

    /// <summary>The tool it is about.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required ToolId Tool { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.EntryWithoutTool), nameof(Tool)); }

    /// <summary>The number of pieces established.</summary>
    /// <value>1 to 999. A number below the manifest's or a reported one never lowers it.</value>
    /// <exception cref="ArgumentException">The number is outside the range.</exception>
    public required int Pieces { get; init => field = EntryChecks.Checked(value, EntryChecks.Established(value), nameof(Pieces)); }

    /// <summary>What was decided and how, 1 to 200 printable characters.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Decision { get; init => field = RecordText.Require(value, MaxDecisionLength, nameof(Decision)); }

    /// <summary>Who decided, when, and in which role.</summary>
    /// <exception cref="ArgumentNullException">The signature is null.</exception>
    public required Signature SignedBy { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>A second person who was there; empty (the default) if none is recorded. An <see cref="InventorySheet"/> refuses the same person as the witness.</summary>
    public PersonId Witness { get; init; }
}
