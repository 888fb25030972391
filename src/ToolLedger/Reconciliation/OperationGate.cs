using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>The gate "before operation": an engine run, a gear swing, re-energising, closing a boundary.</summary>
/// <remarks>
/// Users inventory before they operate anything after maintenance (US Air Force Instruction 21-101 of 16 January 2020, paragraph 8.5.4.1). An inventory satisfies the gate
/// only if the kit is complete, every line rests on evidence newer than the last opening of the kit and no older than the policy allows, nobody has reported an item
/// of no list gone, and nothing about the kit has become known since. An older inventory never does. Signatures are not asked for here: who must have signed is for the site to say, and the report says who has. Stateless and thread-safe.
/// </remarks>
public static class OperationGate
{
    private const int ToolsNamed = 10;
    private const int EntriesNamed = 10;

    /// <summary>Judges whether an inventory satisfies the gate at an instant.</summary>
    /// <remarks>
    /// What the inventory was made from is not asked again. What is dated after the inventory and no later than the instant is: an entry about the kit, its sub-kits, the kits that hold it or their
    /// tools (a breakage, a use, a sighting elsewhere, a count), a custody entry about any of them, one that was refused too (an issue, a turn-in, a transfer, a receipt or its closure, a visit or its end, a note that a
    /// tool was sent away, a use, a log entry of a zone), a session that presents the kit or heard one of its tools, a tag bound, retired or doubted. Each shuts the gate until the kit
    /// is reconciled again. An entry written after the inventory and dated before it is seen only by that.
    /// </remarks>
    /// <param name="result">The inventory.</param>
    /// <param name="known">Everything that is known at the instant of the operation, which is its <see cref="ReconciliationInput.AsOf"/>; its subject, revision, calibration and hints are not used.
    /// Openings of the kit, of its sub-kits and of the kits that hold it count in it and in the result itself.</param>
    /// <returns>The answer with its reasons.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static GateAnswer Judge(ReconciliationResult result, ReconciliationInput known)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(known);
        DateTimeOffset asOf = known.AsOf;
        var news = new GateNews(result, asOf);
        var reasons = new List<Reason>();
        if (result.Kit.State != KitState.Complete)
        {
            reasons.Add(new Reason(PeopleReasons.GateNotComplete, ("at", Time(result, result.AsOf)), ("state", Words.Of(result.Kit.State))));
        }

        if (result.AsOf > asOf)
        {
            reasons.Add(new Reason(PeopleReasons.GateLater, ("at", Time(result, result.AsOf))));
        }

        DateTimeOffset? opened = known.Inventory.Openings.Concat(result.Openings)
            .Where(opening => news.Concerns(opening.Kit) && opening.At <= asOf)
            .Max(static opening => (DateTimeOffset?)opening.At);
        AddOpening(reasons, result, opened);
        AddAge(reasons, result, asOf);
        AddNews(reasons, result, known, news);
        foreach (UnlistedItemReport report in result.UnlistedItems.Concat(news.Reports(known)))
        {
            reasons.Add(new Reason(PeopleReasons.GateUnlisted, ("what", report.Description), ("at", Time(result, report.At))));
        }

        return Answer(result, asOf, reasons, opened);
    }

    private static GateAnswer Answer(ReconciliationResult result, DateTimeOffset asOf, List<Reason> reasons, DateTimeOffset? opened)
    {
        if (reasons.Count == 0)
        {
            DateTimeOffset oldest = result.AllLines.Min(static line => line.Evidence.OldestAt)!.Value;
            Reason satisfied = opened is { } last
                ? new(PeopleReasons.GateSatisfied, ("opened", Time(result, last)), ("at", Time(result, oldest)))
                : new(PeopleReasons.GateSatisfiedUnopened, ("at", Time(result, oldest)));
            return new GateAnswer(result.Manifest.Id, asOf, result.AsOf, isSatisfied: true, [satisfied], next: null);
        }

        bool onlyUnlisted = reasons.TrueForAll(static reason => reason.Kind == PeopleReasons.GateUnlisted);
        NextStep next = onlyUnlisted
            ? new NextStep(NextStepKind.SearchShortage, new Reason(PeopleReasons.StepUnlistedItem))
            : new NextStep(NextStepKind.PresentAtStation, new Reason(PeopleReasons.StepInventoryAgain, ("kit", result.Manifest.Id.Value)));
        return new GateAnswer(result.Manifest.Id, asOf, result.AsOf, isSatisfied: false, reasons, next);
    }

    private static void AddNews(List<Reason> reasons, ReconciliationResult result, ReconciliationInput known, GateNews news)
    {
        if (news.Entries(known.Inventory) is { Length: > 0 } entries)
        {
            PersonEntry last = entries[^1];
            reasons.Add(new Reason(PeopleReasons.GateEntries, ("count", Text(entries.Length)), ("what", last.ToString()), ("by", last.By.Value), ("at", Time(result, last.At))));
        }

        if (news.Custody(known.Custody) is { Length: > 0 } custody)
        {
            string named = string.Join("; ", custody.Take(EntriesNamed).Select(mention => NameOf(result, mention)));
            reasons.Add(new Reason(PeopleReasons.GateCustody, ("count", Text(custody.Length)), ("entries", custody.Length > EntriesNamed ? named + "; ..." : named)));
        }

        if (news.Sessions(known) is { Length: > 0 } sessions)
        {
            reasons.Add(new Reason(PeopleReasons.GateSessions, ("count", Text(sessions.Length)), ("session", sessions[^1].Id.Value), ("at", Time(result, sessions[^1].To))));
        }

        if (news.Rebound(known.Tags) is { Length: > 0 } tools)
        {
            string named = string.Join(", ", tools.Take(ToolsNamed).Select(static tool => tool.Value));
            reasons.Add(new Reason(PeopleReasons.GateTags, ("count", Text(tools.Length)), ("tools", tools.Length > ToolsNamed ? named + ", ..." : named)));
        }
    }

    private static string NameOf(ReconciliationResult result, CustodyMention mention)
        => $"{mention.Entry.Kind} {mention.Entry.Id.Value} by {mention.Entry.By.Value} at {Time(result, mention.Entry.At)}{(mention.IsRefused ? " (refused)" : "")}";

    private static void AddOpening(List<Reason> reasons, ReconciliationResult result, DateTimeOffset? last)
    {
        int older = last is null ? 0 : result.AllLines.Count(line => line.Evidence.OldestAt <= last);
        if (last is { } opened && older > 0)
        {
            reasons.Add(new Reason(PeopleReasons.GateOpened, ("at", Time(result, opened)), ("count", Text(older))));
        }
    }

    private static void AddAge(List<Reason> reasons, ReconciliationResult result, DateTimeOffset asOf)
    {
        TimeSpan limit = result.Policy.Inventory.EvidenceAgeMax;
        int tooOld = result.AllLines.Count(line => asOf - line.Evidence.OldestAt > limit);
        if (tooOld > 0)
        {
            reasons.Add(new Reason(PeopleReasons.GateTooOld, ("count", Text(tooOld))));
        }

        int untimed = result.AllLines.Count(static line => line.IsAccounted && line.Evidence.OldestAt is null);
        if (untimed > 0)
        {
            reasons.Add(new Reason(PeopleReasons.GateNoTime, ("count", Text(untimed))));
        }
    }

    private static string Time(ReconciliationResult result, DateTimeOffset at)
        => result.Policy.Calendar.ToSite(at).ToString("yyyy-MM-dd HH:mm:sszzz", CultureInfo.InvariantCulture);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
