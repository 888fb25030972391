using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>The gate "before operation": an engine run, a gear swing, re-energising, closing a boundary.</summary>
/// <remarks>
/// Users inventory before they operate anything after maintenance (US Air Force Instruction 21-101 of 16 January 2020, paragraph 8.5.4.1). An inventory satisfies the gate
/// only if the kit is complete, every line rests on evidence newer than the last opening of the kit and no older than the policy allows, and nobody has reported an item
/// of no list gone. An older inventory never does. Signatures are not asked for here: who must have signed is for the site to say, and the report says who has. Stateless and thread-safe.
/// </remarks>
public static class OperationGate
{
    /// <summary>Judges whether an inventory satisfies the gate at an instant.</summary>
    /// <param name="result">The inventory.</param>
    /// <param name="openings">Openings of kits, in any order: of the kit, its sub-kits and the kits that hold it. Those of other kits and those after the instant are not looked at. Openings that the result itself carries count too.</param>
    /// <param name="asOf">The instant of the operation.</param>
    /// <returns>The answer with its reasons.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">One of the openings is null.</exception>
    public static GateAnswer Judge(ReconciliationResult result, IEnumerable<KitOpening> openings, DateTimeOffset asOf)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(openings);
        KitOpening[] all = [.. openings];
        if (Array.Exists(all, static opening => opening is null))
        {
            throw new ArgumentException("An opening is null.", nameof(openings));
        }

        var reasons = new List<Reason>();
        if (result.Kit.State != KitState.Complete)
        {
            reasons.Add(new Reason(PeopleReasons.GateNotComplete, ("at", Time(result, result.AsOf)), ("state", Words.Of(result.Kit.State))));
        }

        if (result.AsOf > asOf)
        {
            reasons.Add(new Reason(PeopleReasons.GateLater, ("at", Time(result, result.AsOf))));
        }

        DateTimeOffset? opened = LastOpening(result, [.. all, .. result.Openings], asOf);
        AddOpening(reasons, result, opened);
        AddAge(reasons, result, asOf);
        foreach (UnlistedItemReport report in result.UnlistedItems)
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

    private static DateTimeOffset? LastOpening(ReconciliationResult result, List<KitOpening> openings, DateTimeOffset asOf)
    {
        // Whoever opens a box in the bag, or the bag around the box, could reach what is in it.
        HashSet<KitId> kits = [result.Manifest.Id, .. result.Holders, .. result.AllLines.Select(static line => line.Line).OfType<SubKitLine>().Select(static line => line.Kit)];
        return openings
            .Where(opening => kits.Contains(opening.Kit) && opening.At <= asOf)
            .Max(static opening => (DateTimeOffset?)opening.At);
    }

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
