using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Holds;

/// <summary>Finds the sign-offs that a found tool contradicts: those that accounted for it, after it was last truly seen, where it was not.</summary>
/// <remarks>
/// "Correct" was wrong; what was signed is kept, flagged and reviewed, never corrected in silence. Since when the tool can have been where it was found is for people to say
/// (<see cref="FoundDeclaration.LastSeenAt"/>); where nobody can, the last sighting by its own mark on a signed reconciliation is taken, and before the first every sign-off counts. A line that rested on
/// a receipt claimed no look, and is not contradicted. Stateless and thread-safe.
/// </remarks>
public static class SignOffReview
{
    /// <summary>The sign-offs that a found tool contradicts.</summary>
    /// <param name="found">The declaration that it was found.</param>
    /// <param name="signOffs">The signed reconciliations, in any order.</param>
    /// <returns>Every sign-off that claimed the tool for a kit it was not found in, in time order.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<ContradictedSignOff> ContradictedBy(FoundDeclaration found, IEnumerable<SignedReconciliation> signOffs)
    {
        ArgumentNullException.ThrowIfNull(found);
        ArgumentNullException.ThrowIfNull(signOffs);
        if (found.Tool.IsEmpty)
        {
            return [];
        }

        ContradictedSignOff[] claims = [.. signOffs
            .Where(one => one.AsOf <= found.At && (found.InKit.IsEmpty || found.InKit != one.Kit))
            .SelectMany(one => one.Lines.Where(line => line.Tool == found.Tool && line is { IsAccounted: true, Receipt.IsEmpty: true }).Select(line => new ContradictedSignOff(one, line, found)))
            .OrderBy(static claim => claim.SignOff.AsOf)
            .ThenBy(static claim => claim.SignOff.Id.Value, StringComparer.Ordinal)];
        DateTimeOffset? since = found.LastSeenAt ?? claims.Where(static claim => claim.Line.IsSighted).Max(static claim => (DateTimeOffset?)claim.SignOff.AsOf);
        return [.. claims.Where(claim => !(claim.SignOff.AsOf <= since))];
    }

    /// <summary>What the tool could have been left in, when the contradicted sign-offs no longer count: their exposure is open again.</summary>
    /// <param name="found">The declaration that it was found.</param>
    /// <param name="contradicted">The sign-offs that it contradicts.</param>
    /// <param name="map">What things were near.</param>
    /// <returns>The exposure as of the time it was found.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Exposure Reopened(FoundDeclaration found, IReadOnlyList<ContradictedSignOff> contradicted, ExposureMap map)
    {
        ArgumentNullException.ThrowIfNull(found);
        ArgumentNullException.ThrowIfNull(contradicted);
        ArgumentNullException.ThrowIfNull(map);
        HashSet<EntryId> wrong = [.. contradicted.Select(static one => one.SignOff.Id)];
        return map.Without(accounting => accounting.Tool == found.Tool && wrong.Contains(accounting.SignedIn)).Of(found.Tool, found.At);
    }
}
