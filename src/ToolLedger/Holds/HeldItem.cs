using System;
using System.Collections.Generic;
using System.Linq;

namespace ToolLedger.Holds;

/// <summary>One hold with everything that was recorded of it, in time order.</summary>
internal sealed class HeldItem(MissingDeclaration declaration)
{
    internal MissingDeclaration Declaration => declaration;

    internal List<HoldPlacement> Placements { get; } = [];

    internal List<HoldNarrowing> Narrowings { get; } = [];

    internal List<HoldNotification> Notifications { get; } = [];

    internal List<SearchStep> Steps { get; } = [];

    internal List<SearchDiscontinuation> Discontinuations { get; } = [];

    internal List<FoundDeclaration> Finds { get; } = [];

    internal Dictionary<Records.EntryId, FoundWithdrawal> Withdrawals { get; } = [];

    internal List<LeftInPlace> Left { get; } = [];

    internal List<HoldRelease> Releases { get; } = [];

    /// <summary>The declaration that it was found that stands at an instant, or null.</summary>
    internal FoundDeclaration? FoundAt(DateTimeOffset at) => Finds.LastOrDefault(found => found.At <= at && !IsWithdrawnAt(found, at));

    /// <summary>The release that ends the hold at an instant, or null while it stands. One that rested on a declaration withdrawn since ends nothing any more.</summary>
    internal HoldRelease? ReleaseAt(DateTimeOffset at) => Releases.LastOrDefault(release => release.At <= at
        && (release.Ground != ReleaseGround.Found || FoundAt(release.At) is { } found && !IsWithdrawnAt(found, at)));

    internal bool IsHeldAt(DateTimeOffset at) => declaration.At <= at && ReleaseAt(at) is null;

    internal bool IsImpoundAt(DateTimeOffset at) => Placements.Exists(placement => placement.IsImpound && placement.At <= at);

    private bool IsWithdrawnAt(FoundDeclaration found, DateTimeOffset at) => Withdrawals.TryGetValue(found.Id, out FoundWithdrawal? withdrawal) && withdrawal.At <= at;
}
