using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Calibration;
using ToolLedger.Custody;
using ToolLedger.Reads;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>The gate before issue: whether an inventory lets a kit go out. Who answers for what is asked of the <see cref="CustodyBook"/>, which refuses on its own grounds.</summary>
/// <remarks>
/// A kit with an open line goes out only if the line is annotated (then it is not expected) or acknowledged by both who sign the issue; a difference that was shown is no matter for an
/// acknowledgement. A tool that is not fit by calibration, or will not be any more at the issue, goes out only if the issue says that it is not for measurement; one whose
/// calibration lapses before the kit is due back goes out with a warning. Stateless and thread-safe.
/// </remarks>
public static class IssueGate
{
    /// <summary>Judges whether an inventory lets a kit go out.</summary>
    /// <param name="issue">The issue as it is to be signed.</param>
    /// <param name="inventory">The inventory of the kit.</param>
    /// <returns>The answer with its reasons.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static GateAnswer Judge(KitIssue issue, ReconciliationResult inventory)
    {
        ArgumentNullException.ThrowIfNull(issue);
        ArgumentNullException.ThrowIfNull(inventory);
        var reasons = new List<Reason>();
        var warnings = new List<Reason>();
        AddInventory(reasons, issue, inventory);
        foreach (LineConclusion line in inventory.AllLines)
        {
            AddLine(reasons, issue, line);
            AddCalibration(reasons, warnings, issue, line, inventory.Policy.Calendar);
        }

        if (inventory.Kit.State == KitState.Discrepant)
        {
            reasons.Add(new Reason(CustodyReasons.IssueDiscrepant, ("why", inventory.Kit.Reasons[0].ToString())));
        }

        return reasons.Count == 0
            ? new GateAnswer(issue.Kit, issue.At, inventory.AsOf, isSatisfied: true, [new Reason(CustodyReasons.IssueSatisfied, ("at", Time(inventory, inventory.AsOf))), .. warnings], next: null)
            : new GateAnswer(issue.Kit, issue.At, inventory.AsOf, isSatisfied: false, [.. reasons, .. warnings],
                new NextStep(NextStepKind.PresentAtStation, new Reason(CustodyReasons.StepBeforeIssue, ("kit", issue.Kit.Value))));
    }

    private static void AddInventory(List<Reason> reasons, KitIssue issue, ReconciliationResult inventory)
    {
        if (inventory.Manifest.Id != issue.Kit || inventory.AsOf > issue.At)
        {
            reasons.Add(new Reason(CustodyReasons.IssueOtherInventory, ("kit", inventory.Manifest.Id.Value), ("at", Time(inventory, inventory.AsOf))));
        }

        if (inventory.Manifest.Revision != issue.Revision)
        {
            reasons.Add(new Reason(CustodyReasons.IssueOtherRevision, ("inventoried", LineConclusion.Text(inventory.Manifest.Revision)), ("revision", LineConclusion.Text(issue.Revision))));
        }

        if (issue.At - inventory.AsOf > inventory.Policy.Custody.IssueInventoryAgeMax)
        {
            reasons.Add(new Reason(CustodyReasons.IssueTooOld, ("at", Time(inventory, inventory.AsOf))));
        }

        if (inventory.AllLines.Max(static line => line.Evidence.OpenedSince) is { } opened)
        {
            reasons.Add(new Reason(CustodyReasons.IssueOpened, ("at", Time(inventory, opened))));
        }
    }

    private static void AddLine(List<Reason> reasons, KitIssue issue, LineConclusion line)
    {
        if (!line.IsAccounted && !issue.OpenLines.Contains(line.OuterNumber))
        {
            reasons.Add(new Reason(CustodyReasons.IssueOpenLine, ("line", line.Label), ("state", Words.Of(line.State))));
        }
    }

    private static void AddCalibration(List<Reason> reasons, List<Reason> warnings, KitIssue issue, LineConclusion line, SiteCalendar calendar)
    {
        if (line is not { Calibration: { State: not CalibrationState.NotRequired } status, Line.Tool: { } tool } || issue.NotForMeasurement.Contains(line.OuterNumber))
        {
            return;
        }

        // The status is that of the inventory; the issue may be on a later day.
        if (!status.IsInDate || status.DueOn < calendar.DateAt(issue.At))
        {
            reasons.Add(new Reason(CustodyReasons.IssueNotFit, ("line", line.Label), ("tool", tool.Id.Value), ("status", status.ToString().TrimEnd('.'))));
        }
        else if (issue.ExpectedReturn is { } back && status.DueOn is { } until && calendar.DateAt(back) > until)
        {
            warnings.Add(new Reason(CustodyReasons.IssueLapses, ("line", line.Label), ("tool", tool.Id.Value), ("until", Day(until)), ("back", Day(calendar.DateAt(back)))));
        }
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Time(ReconciliationResult result, DateTimeOffset at)
        => result.Policy.Calendar.ToSite(at).ToString("yyyy-MM-dd HH:mm:sszzz", CultureInfo.InvariantCulture);
}
