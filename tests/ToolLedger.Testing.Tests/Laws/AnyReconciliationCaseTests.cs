using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Testing.Cases;
using ToolLedger.Testing.Generators;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Testing.Tests.Laws;

/// <summary>Laws prove little over cases in which nothing happens: everything must occur among the generated ones.</summary>
public sealed class AnyReconciliationCaseTests
{
    private static readonly ReconciliationPolicy Policy = new();

    private static readonly Lazy<ReconciliationResult[]> Results = new(() => [.. Enumerable.Range(1, 3000)
        .Select(seed => new Reconciler(Policy).Reconcile(AnyReconciliationCase.FromSeed((ulong)seed).ToInput(Policy.Sessions)))]);

    [Fact]
    public void Every_conclusion_of_a_kit_and_of_a_line_occurs_often()
    {
        foreach (KitState state in Enum.GetValues<KitState>())
        {
            Assert.True(Results.Value.Count(result => result.Kit.State == state) >= 60, state.ToString());
        }

        foreach (LineState state in Enum.GetValues<LineState>())
        {
            Assert.True(Results.Value.Sum(result => result.Kit.CountOf(state)) >= 60, state.ToString());
        }

        Assert.Contains(Results.Value, result => result.Kit.State == KitState.Complete && result.NoReadUsed);
        Assert.Contains(Results.Value, result => result.Kit.State == KitState.Complete && result.Lines.All(line => line.Basis == AccountingBasis.Read));
    }

    [Fact]
    public void Every_health_of_a_session_and_every_explanation_of_a_read_occurs()
    {
        Assert.Equal(Enum.GetValues<SessionState>(), Results.Value.SelectMany(result => result.Sessions).Select(summary => summary.Session.Health.State).Distinct().Order());
        Assert.Equal(Enum.GetValues<ReadExplanationKind>(), Results.Value.SelectMany(result => result.Reads).Select(read => read.Kind).Distinct().Order());
    }

    [Fact]
    public void Every_reason_that_doubts_an_identity_occurs()
    {
        HashSet<string> codes = [.. Results.Value.SelectMany(result => result.Lines).SelectMany(line => line.Reasons).Select(reason => reason.Code)];

        foreach (ReasonKind kind in new[]
        {
            ReconciliationReasons.RetiredTagRead, ReconciliationReasons.TwoChips, ReconciliationReasons.WrongChip, ReconciliationReasons.Reencoded, ReconciliationReasons.BindingChanged,
            ReconciliationReasons.CreditedToTwoKits, ReconciliationReasons.IdentitySettled, ReconciliationReasons.LaterSilent, ReconciliationReasons.BetterElsewhere,
            ReconciliationReasons.SharedMark, ReconciliationReasons.OtherMark, ReconciliationReasons.SightedInOtherKit, ReconciliationReasons.CountOfOtherRevision, ReconciliationReasons.TooOld,
        })
        {
            Assert.Contains(kind.Code, codes);
        }
    }

    [Fact]
    public void Every_kind_of_record_leaves_its_mark_on_some_answer()
    {
        HashSet<string> codes =
        [
            .. Results.Value.SelectMany(result => result.AllLines).SelectMany(line => line.Reasons).Select(reason => reason.Code),
            .. Results.Value.SelectMany(result => result.NotExpected).Select(line => line.Reason.Code),
            .. Results.Value.SelectMany(result => result.Findings).Select(finding => finding.Code),
        ];
        foreach (ReasonKind kind in new[]
        {
            ReconciliationReasons.SightedOutside, ReconciliationReasons.ReadLaterElsewhere, ReconciliationReasons.OnlyWhileNearby, ReconciliationReasons.Quarantined, ReconciliationReasons.ReadBeforeClearing,
            ReconciliationReasons.SubKitWhole, ReconciliationReasons.SubKitOpen, ReconciliationReasons.HistorySuspect,
            PeopleReasons.RemovedOnRecord, PeopleReasons.KnownShort, PeopleReasons.Balance, PeopleReasons.UsedSinceCounted, PeopleReasons.Broken, PeopleReasons.Reconstructed, PeopleReasons.PieceCountBefore,
            PeopleReasons.Joined, PeopleReasons.PartsNotJoined, PeopleReasons.OpenedSince, PeopleReasons.FindingUnlisted,
            SealReasons.Substituted, SealReasons.SubstitutionsDiffer, SealReasons.NotAccepted,
            CustodyReasons.OnLoan, CustodyReasons.AtLaboratory, CustodyReasons.BeforeReceipt, CustodyReasons.SightedWithBorrower, CustodyReasons.FindingReceiptContradicted, CustodyReasons.FindingEntryRefused,
        })
        {
            Assert.True(codes.Contains(kind.Code), kind.Code);
        }
    }

    [Fact]
    public void A_smaller_case_has_fewer_facts()
    {
        ReconciliationCase large = AnyReconciliationCase.FromSeed(4);
        ReconciliationCase[] smaller = [.. AnyReconciliationCase.Arbitrary().Shrinker(large)];

        Assert.NotEmpty(smaller);
        Assert.All(smaller, one => Assert.True(FactsIn(one) < FactsIn(large), one.ToString()));
        Assert.All(smaller, one => Assert.NotNull(one.Manifest));
    }

    [Fact]
    public void A_case_can_be_written_by_hand_and_changed()
    {
        var tag = TagId.FromText("A1");
        var from = new DateTimeOffset(2026, 3, 2, 15, 55, 0, TimeSpan.Zero);
        var control = TagId.FromText("C1");
        var station = new ReadStation { Id = new StationId("R1"), Antennas = [new AntennaPort(1), new AntennaPort(2)], ControlTags = [new ControlTag(control, default)] };
        SessionCase session = new SessionCase
        {
            Id = new SessionId("S1"),
            Station = station,
            Kits = [new KitId("K1")],
            From = from,
            To = from.AddSeconds(30),
            Reads = [new TagRead(tag, new AntennaPort(1), from.AddSeconds(4)), new TagRead(tag, new AntennaPort(2), from.AddSeconds(9)), new TagRead(tag, new AntennaPort(2), from.AddSeconds(14))],
        }.WithControlReads(TimeSpan.FromSeconds(3));
        var signed = new Signature { By = new PersonId("S"), At = from.AddDays(-1) };
        var facts = new ReconciliationCase
        {
            Subject = new KitId("K1"),
            Manifests = [new KitManifest(new KitId("K1"), 1, "one tool", from.AddDays(-1), signed, [new ToolLine { Number = 1, Tool = new Tool { Id = new ToolId("T1"), Description = "tool" } }])],
            Bindings = [new TagBinding { Tag = tag, Tool = new ToolId("T1"), From = from.AddDays(-1) }],
            Sessions = [session],
            AsOf = from.AddMinutes(2),
        };

        Assert.Equal(LineState.Accounted, Only(facts).State);
        Assert.Equal(LineState.Weak, Only(facts with { Sessions = [session with { Reads = [.. session.Reads.Skip(1)] }] }).State);
        Assert.Equal(LineState.NotAssessed, Only(facts with { Sessions = [session with { ClockOffset = null }] }).State);
        Assert.Contains("  tag text:A1 on antenna 2: 9 s, 14 s", facts.ToString(), StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => session.WithControlReads(TimeSpan.Zero));
    }

    private static LineConclusion Only(ReconciliationCase facts) => Assert.Single(new Reconciler(Policy).Reconcile(facts.ToInput(Policy.Sessions)).Lines);

    private static int FactsIn(ReconciliationCase facts) => facts.Manifests.Sum(manifest => manifest.Lines.Count) + facts.Bindings.Count + facts.Calibrations.Count + facts.Quarantines.Count + facts.History.Count + facts.Custody.Count
        + facts.Entries.Annotations.Count + facts.Entries.Uses.Count + facts.Entries.Breakages.Count + facts.Entries.Reconstructions.Count + facts.Entries.Joinings.Count + facts.Entries.Openings.Count
        + facts.Entries.UnlistedItems.Count + facts.Entries.Seals.Count + facts.Entries.SealChecks.Count + facts.Entries.Substitutions.Count
        + facts.Entries.Sightings.Count + facts.Entries.Counts.Count + facts.Entries.PieceCounts.Count + facts.Entries.Signatures.Count
        + facts.Sessions.Sum(session => 1 + session.Reads.Count + session.PassStarts.Count + session.Losses.Count + session.NearbyKits.Count
            + (session.ClockOffset == TimeSpan.Zero && session.ClockOffsetAfter == TimeSpan.Zero ? 0 : 1));
}
