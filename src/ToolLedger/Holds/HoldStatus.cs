using System;
using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Holds;

/// <summary>One hold as of an instant: what it is about, what it affects, its clocks, and what is still to be done.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class HoldStatus
{
    /// <summary>The declaration that began it.</summary>
    public required MissingDeclaration Declaration { get; init; }

    /// <summary>The instant the answer is for.</summary>
    public required DateTimeOffset AsOf { get; init; }

    /// <summary>Whether the hold stands.</summary>
    public bool IsHeld => Release is null;

    /// <summary>Whether it is an impoundment.</summary>
    public bool IsImpound { get; init; }

    /// <summary>The release that ended it; null while it stands.</summary>
    public HoldRelease? Release { get; init; }

    /// <summary>The declaration that it was found that stands; null if none does.</summary>
    public FoundDeclaration? Found { get; init; }

    /// <summary>What it could have been left in at the time it was declared.</summary>
    public required Exposure Exposure { get; init; }

    /// <summary>What is affected: what the exposure shows and people added, less what a named decision took away, each once.</summary>
    public required IReadOnlyList<AffectedThing> Affected { get; init; }

    /// <summary>What a named decision took away.</summary>
    public required IReadOnlyList<HoldNarrowing> Narrowings { get; init; }

    /// <summary>Who must still be told, by the policy: of the hold, or, since it was declared found, of that.</summary>
    public required IReadOnlyList<string> NotTold { get; init; }

    /// <summary>Which steps of the search must still be made, by the policy.</summary>
    public required IReadOnlyList<string> NotSearched { get; init; }

    /// <summary>The steps of the search on record.</summary>
    public required IReadOnlyList<SearchStep> Steps { get; init; }

    /// <summary>The decision to discontinue the search; null if there is none.</summary>
    public SearchDiscontinuation? Discontinued { get; init; }

    /// <summary>How long it has stood, or stood until its release.</summary>
    public TimeSpan SinceDeclaration => (Release?.At ?? AsOf) - Declaration.At;

    /// <summary>How long ago the item was last positively accounted for; null if that is on no record.</summary>
    public TimeSpan? SinceAccounting => AsOf - Exposure.Since;

    /// <summary>What is over its time, by the policy.</summary>
    public required IReadOnlyList<Reason> Late { get; init; }

    /// <summary>What is held, what it affects, and what is still to be done before a person who may can release it; or who released it.</summary>
    /// <returns>Text for people.</returns>
    public override string ToString()
    {
        string head = $"{Declaration.Id} {Declaration.Description}, {(IsImpound ? "impounded" : "declared missing")} by {Declaration.By} at {RecordTime.ToText(Declaration.At)}: ";
        if (Release is { } release)
        {
            return $"{head}released by {release.By} at {RecordTime.ToText(release.At)}";
        }

        string affected = Affected.Count == 0 ? "nothing on record, which limits nothing" : string.Join("; ", Affected);
        List<string> open = [];
        if (!IsImpound)
        {
            open.Add(Found is { } found ? $"found by {found.By} at {RecordTime.ToText(found.At)}" : Discontinued is null ? "not found" : "not found, search discontinued");
        }

        if (NotTold.Count > 0)
        {
            open.Add("to be told: " + string.Join(", ", NotTold));
        }

        if (NotSearched.Count > 0)
        {
            open.Add("to be searched: " + string.Join(", ", NotSearched));
        }

        open.Add("to be released by a person who may");
        return $"{head}held; affected: {affected}; {string.Join("; ", open)}";
    }
}
