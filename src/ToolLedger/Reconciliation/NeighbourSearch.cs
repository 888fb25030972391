using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Reads;

namespace ToolLedger.Reconciliation;

/// <summary>
/// Separates a neighbour from the bag: a tag that was heard only in passes during which another kit stood nearby, and not in a pass without it at the
/// same station, is explained by that kit. Passes without the kit count whether they came before or after: either shows what the bag alone sounds like.
/// </summary>
internal static class NeighbourSearch
{
    /// <summary>The kit that explains every look, the first by its id; null if none does.</summary>
    /// <param name="passes">The passes of sessions that count.</param>
    /// <param name="silentBeside">Silent passes of sessions of the kit that settle nothing: their silence still speaks against a tool, or a doubt about such a session would help it.</param>
    /// <param name="noted">The sessions of the kit, usable or not: when a kit left is a person's note, whatever the reader did and whether it heard the tag.</param>
    /// <param name="shortestPass">The shortest pass that is a view of its own.</param>
    public static KitId? Find(IReadOnlyList<SessionPass> passes, IEnumerable<SessionPass> silentBeside, IReadOnlyList<ReadSession> noted, TimeSpan shortestPass)
    {
        return passes.Any(static pass => pass.Session.NearbyKits.Count > 0) && passes.Any(static pass => pass.Looks > 0) ? FindAmong(passes, [.. silentBeside], noted, shortestPass) : null;
    }

    private static KitId? FindAmong(IReadOnlyList<SessionPass> passes, SessionPass[] silentBeside, IReadOnlyList<ReadSession> noted, TimeSpan shortestPass)
    {
        foreach (KitId kit in passes
            .SelectMany(static pass => pass.Session.NearbyKits)
            .Select(static nearby => nearby.Kit)
            .Distinct()
            .OrderBy(static kit => kit.Value, StringComparer.Ordinal))
        {
            bool onlyWithIt = passes.All(pass => pass.Looks == 0 || Stood(kit, pass));
            if (onlyWithIt && passes.Concat(silentBeside).Any(pass => pass.Looks == 0 && IsClear(kit, pass, noted, shortestPass)))
            {
                return kit;
            }
        }

        return null;
    }

    private static bool Stood(KitId kit, SessionPass pass) =>
        pass.Session.NearbyKits.Any(nearby => nearby.Kit == kit && nearby.Overlaps(pass.Pass.From, pass.Pass.To));

    // A session in which nobody noted the kit says nothing of where it stood, unless it began after the kit was noted to have left.
    private static bool IsClear(KitId kit, SessionPass pass, IReadOnlyList<ReadSession> noted, TimeSpan shortestPass) =>
        pass.Pass.To - pass.Pass.From >= shortestPass
        && !Stood(kit, pass)
        && noted.Any(other => other.Presentation.Station.Id == pass.Session.Presentation.Station.Id
            && other.NearbyKits.Any(nearby => nearby.Kit == kit && IsNotedApart(nearby, pass, other)));

    private static bool IsNotedApart(NearbyKit nearby, SessionPass pass, ReadSession other) =>
        nearby.Until <= pass.Pass.From || (other.Id == pass.Session.Id && pass.Pass.To <= nearby.From);
}
