using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Calibration;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Tests.Laws;

/// <summary>Hosts that mean well and come to wrong answers: each does one thing to the facts before the reconciler sees them, or to the answer after.</summary>
internal static class BadHosts
{
    public static ReconciliationResult Plain(ReconciliationInput input) => new Reconciler(new ReconciliationPolicy()).Reconcile(input);

    /// <summary>Takes the session that was delivered first for the latest.</summary>
    public static ReconciliationResult TakesTheFirstSession(ReconciliationInput input) => Plain(With(input, sessions: [.. input.Sessions.Take(1)]));

    /// <summary>Lets people finish writing.</summary>
    public static ReconciliationResult LooksAhead(ReconciliationInput input) => Plain(With(input, asOf: input.AsOf.AddHours(2)));

    /// <summary>Does not believe sightings of tools that are overdue for calibration.</summary>
    public static ReconciliationResult DoubtsOverdueTools(ReconciliationInput input)
    {
        bool IsOverdue(ToolId tool) => input.Calibration.StatusOf(new Tool { Id = tool, Description = "any" }, input.AsOf, new CalibrationPolicy(), SiteCalendar.Utc).State == CalibrationState.Overdue;
        InventorySheet sheet = input.Inventory;
        return Plain(With(input, sheet: new InventorySheet(sheet.Entries with { Sightings = [.. sheet.Sightings.Where(sighting => !IsOverdue(sighting.Tool))] })));
    }

    /// <summary>Corrects counts that are over what the list says.</summary>
    public static ReconciliationResult CorrectsCounts(ReconciliationInput input)
    {
        InventorySheet sheet = input.Inventory;
        Quantity Most(LineCount count)
        {
            Quantity? expected = input.Kits.Find(count.Kit, input.AsOf)?.FindLine(count.LineNumber)?.Expected;
            return expected is { } most && most.Unit == count.Quantity.Unit && most.Amount < count.Quantity.Amount ? most : count.Quantity;
        }

        return Plain(With(input, sheet: new InventorySheet(sheet.Entries with
        {
            Counts = [.. sheet.Counts.Select(count => new LineCount { Kit = count.Kit, LineNumber = count.LineNumber, Quantity = Most(count), By = count.By, At = count.At, Witness = count.Witness, Parts = count.Parts })],
        })));
    }

    /// <summary>Binds every tag that says a known tool's identity to that tool.</summary>
    public static ReconciliationResult LearnsTags(ReconciliationInput input)
    {
        var bindings = new List<TagBinding>(input.Tags.Bindings);
        foreach (ReadSession session in input.Sessions)
        {
            bindings.AddRange(session.Tags
                .Where(tag => tag.LastSeen is { } at && input.Tags.ToolByDecodedIdentity(tag.Tag, at) is not null && bindings.TrueForAll(binding => binding.Tag != tag.Tag))
                .Select(tag => new TagBinding { Tag = tag.Tag, Tool = input.Tags.ToolByDecodedIdentity(tag.Tag, tag.LastSeen!.Value)!.Value, From = session.From.AddYears(-1) })
                .ToArray());
        }

        return Plain(With(input, tags: new TagRegister(bindings, input.Tags.Quarantines)));
    }

    /// <summary>Answers for the wrong kit.</summary>
    public static ReconciliationResult AnswersForAnotherKit(ReconciliationInput input) => Plain(With(input, subject: input.Kits.KitIds[^1]));

    /// <summary>Once complete, always complete.</summary>
    public static Func<ReconciliationInput, ReconciliationResult> RemembersComplete()
    {
        ReconciliationResult? complete = null;
        return input =>
        {
            ReconciliationResult result = Plain(input);
            complete = result.Kit.State == KitState.Complete ? result : complete;
            return complete ?? result;
        };
    }

    private static ReconciliationInput With(
        ReconciliationInput input, KitId? subject = null, IReadOnlyList<ReadSession>? sessions = null, TagRegister? tags = null, InventorySheet? sheet = null, DateTimeOffset? asOf = null)
    {
        return new ReconciliationInput
        {
            Kits = input.Kits,
            Subject = subject ?? input.Subject,
            Sessions = sessions ?? input.Sessions,
            Tags = tags ?? input.Tags,
            Inventory = sheet ?? input.Inventory,
            Calibration = input.Calibration,
            History = input.History,
            AsOf = asOf ?? input.AsOf,
        };
    }
}
