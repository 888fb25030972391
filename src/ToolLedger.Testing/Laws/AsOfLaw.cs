using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Testing.Cases;
using ToolLedger.Testing.Generators;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Laws;

/// <inheritdoc cref="ReconciliationLaw.AsOf"/>
internal sealed class AsOfLaw : Law
{
    private static readonly Place Elsewhere = new("bench 9");
    private static readonly SessionId LaterId = new("later");

    public override ReconciliationLaw Kind => ReconciliationLaw.AsOf;

    public override LawAnswer Try(LawTrial trial)
    {
        DateTimeOffset later = trial.Case.AsOf.AddSeconds(1 + trial.Chance.Below(3600));
        return LawAnswer.Same(
            "what comes later changes nothing",
            Both(trial.Result),
            Both(trial.Ask(trial.Parts.Aggregate(WithCustody(WithLists(trial.Case, trial.Manifest, later), trial, later), (facts, part) => WithEntries(facts, part, later)))));
    }

    private static string Both(ReconciliationResult result) => ResultText.Accounting(result) + "\n" + ResultText.Calibration(result);

    private static ReconciliationCase WithLists(ReconciliationCase facts, KitManifest manifest, DateTimeOffset later)
    {
        var signed = new Signature { By = new PersonId("S"), At = later };
        var revised = new KitManifest(
            manifest.Id,
            manifest.Revision + 1,
            "a later revision",
            later,
            signed,
            [new CountedLine { Number = 1, Description = "something else", Quantity = new Quantity(1, Unit.Each) }]);
        return facts with { Manifests = [.. facts.Manifests, revised], Bindings = [.. facts.Bindings.SelectMany(binding => Rebound(binding, facts.AsOf, later))] };
    }

    /// <summary>Every tag in use moves to another tool later.</summary>
    private static IEnumerable<TagBinding> Rebound(TagBinding binding, DateTimeOffset asOf, DateTimeOffset later)
    {
        if (binding.Until is not null || binding.From > asOf)
        {
            return [binding];
        }

        return
        [
            new TagBinding { Tag = binding.Tag, Tid = binding.Tid, Tool = binding.Tool, From = binding.From, Until = later, BoundBy = binding.BoundBy },
            new TagBinding { Tag = binding.Tag, Tid = binding.Tid, Tool = new ToolId("S9"), From = later, BoundBy = binding.BoundBy },
        ];
    }

    /// <summary>The kit is issued again and every tool of it lent, later.</summary>
    private static ReconciliationCase WithCustody(ReconciliationCase facts, LawTrial trial, DateTimeOffset later)
    {
        var signed = new Signature { By = new PersonId("Q"), At = later };
        return facts with
        {
            Custody =
            [
                .. facts.Custody,
                new KitIssue { Id = new EntryId("later"), At = later, By = new PersonId("S"), Kit = facts.Subject, Revision = trial.Manifest.Revision, ReceivedBy = signed, ExpectedReturn = later.AddHours(8) },
                .. trial.Parts.SelectMany(static part => part.Lines).Select(static line => line.Tool).OfType<Tool>().DistinctBy(static tool => tool.Id).Select(tool =>
                    new ToolLoan { Id = new EntryId("later " + tool.Id.Value), At = later, By = new PersonId("S"), Tool = tool.Id, Kit = facts.Subject, ReceivedBy = signed, Due = later.AddHours(8) }),
            ],
        };
    }

    private static ReconciliationCase WithEntries(ReconciliationCase facts, KitManifest manifest, DateTimeOffset later)
    {
        var who = new PersonId("S");
        Tool[] tools = [.. manifest.Lines.Select(static line => line.Tool).OfType<Tool>()];
        SessionCase? repeated = facts.Sessions.FirstOrDefault(session => session.Kits.Contains(facts.Subject) && facts.Sessions.All(static other => other.Id != LaterId));
        return facts with
        {
            Entries = facts.Entries with
            {
                Sightings = [.. facts.Entries.Sightings, .. tools.Select(tool => new Sighting { Tool = tool.Id, MarkRead = "K9", By = who, At = later, Where = Elsewhere, InKit = new KitId("K9") })],
                Counts = [.. facts.Entries.Counts, .. manifest.Lines.Select(line => new LineCount { Kit = manifest.Id, LineNumber = line.Number, Quantity = line.Expected, By = who, At = later })],
                PieceCounts = [.. facts.Entries.PieceCounts, .. tools.Select(tool => new PieceCount { Tool = tool.Id, Pieces = tool.PieceCount, By = who, At = later })],
                Openings = [.. facts.Entries.Openings, new KitOpening { Kit = manifest.Id, By = who, At = later }],
                Annotations = [.. facts.Entries.Annotations, .. manifest.Lines.Select(line => new Annotation { Kit = manifest.Id, LineNumber = line.Number, Kind = AnnotationKind.Removed, Reason = "later", SignedBy = new Signature { By = who, At = later } })],
                Uses = [.. facts.Entries.Uses, .. manifest.Lines.OfType<ConsumableLine>().Select(line => new ConsumableUse { Kit = manifest.Id, LineNumber = line.Number, Job = "J-1", Unit = line.Expected.Unit, Used = 1, By = who, At = later })],
                Breakages = [.. facts.Entries.Breakages, .. tools.Select(tool => new Breakage { Tool = tool.Id, Pieces = 7, By = who, At = later })],
                Reconstructions = [.. facts.Entries.Reconstructions, .. tools.Select(tool => new Reconstruction { Tool = tool.Id, Pieces = 5, Decision = "later", SignedBy = new Signature { By = who, At = later }, Witness = new PersonId("P") })],
                Joinings = [.. facts.Entries.Joinings, .. manifest.Lines.Select(line => new JoiningStatement { Kit = manifest.Id, LineNumber = line.Number, Parts = 2, Wholes = 1, By = who, At = later })],
                Substitutions = [.. facts.Entries.Substitutions, .. manifest.Lines.OfType<ToolLine>().SelectMany(line => line.Alternates.Select(alternate => new Substitution { Kit = manifest.Id, LineNumber = line.Number, InPlace = alternate.Id, Reason = "later", By = who, At = later }))],
                SealChecks = [.. facts.Entries.SealChecks, .. manifest.Lines.OfType<SubKitLine>().Select(line => new SealCheck { Kit = line.Kit, NumberRead = "N-9", IsIntact = false, By = who, At = later })],
                UnlistedItems = [.. facts.Entries.UnlistedItems, new UnlistedItemReport { Description = "later", By = who, At = later }],
                Signatures = [.. facts.Entries.Signatures, new Signature { By = who, At = later }],
            },
            Quarantines = [.. facts.Quarantines, .. facts.Bindings.Where(binding => manifest.Id == facts.Subject && binding.From <= later).Select(binding => new BindingQuarantine { Tag = binding.Tag, Tool = binding.Tool, From = later, By = who, Reason = "later" })],
            Calibrations = [.. facts.Calibrations, .. tools.Select(tool => AnyReconciliationCase.Record(tool.Id, later.AddDays(99), daysLeft: -10))],
            Sessions = repeated is null ? facts.Sessions : [.. facts.Sessions, Later(repeated, later)],
        };
    }

    private static SessionCase Later(SessionCase session, DateTimeOffset later)
    {
        TimeSpan shift = later - session.From;
        return session with
        {
            Id = LaterId,
            From = later,
            To = session.To + shift,
            PassStarts = [.. session.PassStarts.Select(start => start + shift)],
            Losses = [],
            NearbyKits = [],
            SurroundingsChanges = [],
            Reads = [.. session.Reads.Select(read => new TagRead(read.Tag, read.Antenna, read.FirstSeen + shift))],
        };
    }
}
