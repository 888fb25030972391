using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Inventory;

/// <summary>A person saw a tool and read its mark: which tool, which mark, who, when and where.</summary>
/// <remarks>A sighting that leaves one of the five out cannot be made. Whether <see cref="MarkRead"/> is the mark of <see cref="Tool"/>, and of that tool alone,
/// is judged where the manifest is known. Immutable and thread-safe.</remarks>
public sealed class Sighting
{
    /// <summary>The tool that was seen.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required ToolId Tool { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.SightingWithoutTool), nameof(Tool)); }

    /// <summary>The mark as the person read it on the tool.</summary>
    /// <value>1 to 32 characters, no control or format character, no white space at either end.</value>
    /// <exception cref="ArgumentException">The mark is missing or not of this form.</exception>
    public required string MarkRead { get; init => field = EntryChecks.Checked(value, EntryChecks.Mark(value), nameof(MarkRead)); }

    /// <summary>The person who looked.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required PersonId By { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.SightingNotSigned), nameof(By)); }

    /// <summary>When the tool was seen.</summary>
    /// <exception cref="ArgumentException">The year is outside 1970 to 2999 (UTC).</exception>
    public required DateTimeOffset At { get; init => field = EntryChecks.Checked(value, EntryChecks.Time(value, InventoryRules.SightingWithoutTime), nameof(At)); }

    /// <summary>Where the tool was seen.</summary>
    /// <exception cref="ArgumentException">The place is empty.</exception>
    public required Place Where { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.SightingWithoutPlace), nameof(Where)); }

    /// <summary>The kit in which the tool was seen, where the person says so; default where not said. A tool seen inside another kit is not accounted for in its own, nor is one that is not said to be in its kit, unless the policy takes it for that (<see cref="InventoryPolicy.SightingsWithoutKitAccepted"/>).</summary>
    public KitId InKit { get; init; }

    /// <summary>What else told this tool from others with the same mark, such as its serial number, size or description: 1 to 64 printable characters; null (the default) if not said. Counts only where <see cref="InventoryPolicy.FurtherIdentificationAccepted"/>.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public string? AlsoIdentifiedBy { get; init => field = RecordText.RequireOrNull(value, IdText.MaxLength, nameof(AlsoIdentifiedBy)); }

    /// <summary>A second person who looked too; empty (the default) if none is recorded. An <see cref="InventorySheet"/> refuses the same person as the witness.</summary>
    public PersonId Witness { get; init; }

    /// <summary>Records a sighting, or says everything that is missing.</summary>
    /// <param name="tool">The tool that was seen.</param>
    /// <param name="markRead">The mark as read on the tool.</param>
    /// <param name="by">The person who looked.</param>
    /// <param name="at">When.</param>
    /// <param name="where">Where.</param>
    /// <param name="sighting">The sighting, or null if it is refused.</param>
    /// <param name="issues">Every rule that is broken; empty if the sighting is recorded.</param>
    /// <returns>Whether the sighting was recorded.</returns>
    public static bool TryCreate(
        ToolId tool,
        string? markRead,
        PersonId by,
        DateTimeOffset at,
        Place where,
        [NotNullWhen(true)] out Sighting? sighting,
        out IReadOnlyList<RecordIssue> issues)
    {
        var found = new IssueList();
        EntryChecks.Note(found, "tool", EntryChecks.Present(tool.IsEmpty, InventoryRules.SightingWithoutTool));
        EntryChecks.Note(found, "markRead", EntryChecks.Mark(markRead));
        EntryChecks.Note(found, "by", EntryChecks.Present(by.IsEmpty, InventoryRules.SightingNotSigned));
        EntryChecks.Note(found, "at", EntryChecks.Time(at, InventoryRules.SightingWithoutTime));
        EntryChecks.Note(found, "where", EntryChecks.Present(where.IsEmpty, InventoryRules.SightingWithoutPlace));
        issues = found;
        sighting = found.Reported > 0 ? null : new Sighting { Tool = tool, MarkRead = markRead!, By = by, At = at, Where = where };
        return sighting is not null;
    }

    /// <summary>Tool, mark, person, time, place, and the kit where it is said.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() =>
        $"tool {Tool}: mark {MarkRead} read by {By} at {RecordTime.ToText(At)}, {Where}{(InKit.IsEmpty ? "" : $", in kit {InKit}")}{(Witness.IsEmpty ? "" : $", witness {Witness}")}";
}
