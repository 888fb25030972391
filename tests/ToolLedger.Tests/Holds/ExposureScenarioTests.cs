using System;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Custody;
using ToolLedger.Holds;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tests.Custody;
using ToolLedger.Tools;
using Xunit;
using static ToolLedger.Tests.Custody.CustodyScene;
using static ToolLedger.Tests.Holds.HoldScene;

namespace ToolLedger.Tests.Holds;

/// <summary>What could be affected: scenarios of the trade's tables by id, and property 10. Kits and aircraft are invented.</summary>
public sealed class ExposureScenarioTests
{
    private static readonly ToolId T7 = new("T7");
    private static readonly ToolId T8 = new("T8");

    // Given A 08:00-10:00, B 10:15-12:00, C 12:30-15:00, full inventories at 08:00 and 10:05 only; when T7 is declared missing at 15:55; then B, C and the places between, not A.
    [Fact]
    public void S62_The_exposure_runs_from_the_last_positive_accounting()
    {
        Exposure exposure = Map(Afternoon(), Accounted("T7", At(8)), Accounted("T7", At(10, 5))).Of(T7, At(15, 55));

        Assert.Equal(At(10, 5), exposure.Since);
        Assert.Equal(["B", "C"], Equipment(exposure));
        Assert.Equal(
            [(At(10, 5), At(10, 15)), (At(12), At(12, 30)), (At(15), At(15, 55))],
            exposure.Items.Where(item => item.Kind == ExposureKind.Between).Select(item => (item.From, item.Until!.Value)));
        Assert.All(exposure.Items, item => Assert.Equal(new PersonId("P"), item.Holder.Person));
        Assert.Equal(new TimeSpan(5, 50, 0), exposure.Elapsed);
    }

    // Given the same but T7 weak at 10:05: a weak read accounts for nothing, so there is no accounting to hand in; then A, B and C.
    [Fact]
    public void S63_A_weak_read_does_not_end_an_exposure() =>
        Assert.Equal(["A", "B", "C"], Equipment(Map(Afternoon(), Accounted("T7", At(8)), Accounted("T6", At(10, 5))).Of(T7, At(15, 55))));

    [Fact]
    public void S63_A_result_hands_in_no_accounting_for_a_weak_line_a_seal_or_a_receipt()
    {
        Tests.Reconciliation.World world = new Tests.Reconciliation.World().ReadAllBut("T7", "T8").Read("T7", Tests.Reconciliation.World.A1, 3).CountAll();

        string[] labels = [.. PositiveAccounting.Of(world.Reconcile()).Select(one => one.Label)];

        Assert.DoesNotContain("7", labels, StringComparer.Ordinal);
        Assert.DoesNotContain("8", labels, StringComparer.Ordinal);
        Assert.Contains("6", labels, StringComparer.Ordinal);
    }

    // S59's second half: a transfer with an open line cuts nothing off.
    [Fact]
    public void S59_A_transfer_does_not_cut_the_exposure_of_the_first_user()
    {
        Exposure exposure = Map(Afternoon(Transfer("X1", At(12, 15))), Accounted("T7", At(8))).Of(T7, At(15, 55));

        Assert.Equal(["A", "B", "C"], Equipment(exposure));
        Assert.Equal([new PersonId("P"), new PersonId("Q")], exposure.Items.Select(item => item.Holder.Person).Distinct());
    }

    // S53: the borrower's signature moves the exposure to where the tool went; when it comes back on a signed closure it runs with the kit again.
    [Fact]
    public void S53_A_signed_loan_moves_the_exposure_to_the_borrower()
    {
        ExposureMap map = Map(Afternoon(Loan("L1", At(11)), Visit("V9", At(11, 30), At(13), "D", "K2")), Accounted("T8", At(8)));

        Assert.Equal(["A", "B"], Equipment(map.Of(T8, At(10, 59))));
        Assert.Equal(["aircraft B"], Equipment(map.Of(T8, At(14))));
        Assert.Equal(["A", "B", "C"], Equipment(map.Of(T7, At(14))));
    }

    [Fact]
    public void S53_What_the_kit_that_borrowed_it_visits_counts_and_a_closure_ends_it()
    {
        ToolLoan plain = Loan("L1", At(11));
        ToolLoan loan = new() { Id = plain.Id, At = plain.At, By = plain.By, Tool = plain.Tool, Kit = plain.Kit, ReceivedBy = plain.ReceivedBy, Due = plain.Due, ToKit = K2 };
        ExposureMap map = Map(Afternoon(loan, Visit("V9", At(11, 30), At(13), "D", "K2"), Close("C1", At(14), "L1")), Accounted("T8", At(8)));

        Assert.Equal(["D"], Equipment(map.Of(T8, At(13, 30))));
        Assert.Equal(["C"], Equipment(map.Of(T8, At(15))));
    }

    // S69: nothing was accounted for, so the exposure runs on.
    [Fact]
    public void S69_Without_any_accounting_everything_on_record_counts()
    {
        Exposure exposure = Map(Afternoon()).OfKit(K1, At(18));

        Assert.Null(exposure.Since);
        Assert.Equal(["A", "B", "C"], Equipment(exposure));
    }

    [Fact]
    public void The_exposure_of_a_kit_is_that_of_all_its_lines_together()
    {
        PositiveAccounting[] all = [.. Enumerable.Range(1, 8).Select(number => Accounted(FormattableString.Invariant($"T{number}"), number == 3 ? At(8) : At(12, 10)))];

        Exposure exposure = Map(Afternoon(), all).OfKit(K1, At(15));

        Assert.Equal(At(8), exposure.Since);
        Assert.Equal(["A", "B", "C"], Equipment(exposure));
    }

    // Where the policy says so, only a sighting ends an exposure.
    [Fact]
    public void A_policy_may_ask_for_a_sighting()
    {
        var map = new ExposureMap(Register(Afternoon()), [Accounted("T7", At(8)), Accounted("T7", At(10, 5), AccountingBasis.Read)], sightingNeeded: true);

        Assert.Equal(At(8), map.Of(T7, At(15, 55)).Since);
    }

    // A visit that ends at the very instant of the look may still have kept the tool.
    [Fact]
    public void A_visit_that_ends_at_the_instant_of_the_accounting_counts() =>
        Assert.Equal(["A"], Equipment(Map([Issue("I1", At(7)), Visit("V1", At(8), At(10), "A")], Accounted("T7", At(10))).Of(T7, At(11))));

    // Property 10: an exposure gets less only by a positive accounting; a further visit or entry never makes it less; another tool's accounting changes nothing.
    [Fact]
    public void Property_10_exposure_only_shrinks_by_positive_accounting()
    {
        Gen<(CustodyCommand[] Commands, int[] Looks, int More)> cases =
            from commands in CustodyMachineTests.Commands()
            from looks in Gen.Choose(0, 900).ArrayOf(3)
            from more in Gen.Choose(0, 900)
            select (commands, looks, more);
        Check.One(CustodyMachineTests.Run(), Prop.ForAll(Arb.From(cases), one =>
        {
            CustodyEntry[] entries = CustodyMachineTests.EntriesOf(one.Commands);
            DateTimeOffset end = At(6).AddMinutes(1000);
            var tool = new ToolId("T1");
            PositiveAccounting[] looks = [.. one.Looks.Select(minute => Accounted("T1", At(6).AddMinutes(minute)))];
            Exposure before = Map(entries, looks).Of(tool, end);

            // Against the plainest reckoning: every visit of the kit that is not over before the last look, while the tool was not out on a receipt.
            if (!Register(entries).ReceiptsOf(tool, end).Any())
            {
                DateTimeOffset since = looks.Max(look => look.At);
                Assert.Equal(
                    Register(entries).Entries.OfType<JobVisit>().Where(visit => visit.Kit == K1 && visit.Until >= since && visit.At <= end).Select(visit => visit.Id.Value).Order(StringComparer.Ordinal),
                    before.Items.Where(item => item.Kind == ExposureKind.Visit).Select(item => item.Entry.Value).Order(StringComparer.Ordinal),
                    StringComparer.Ordinal);
            }

            Exposure more = Map([.. entries, Visit("V-more", At(6).AddMinutes(one.More), At(6).AddMinutes(one.More + 10), "Z")], looks).Of(tool, end);
            Assert.Superset(before.Items.Where(item => item.Kind == ExposureKind.Visit).ToHashSet(), more.Items.Where(item => item.Kind == ExposureKind.Visit).ToHashSet());
            Assert.Equal(before.Items, Map(entries, [.. looks, Accounted("T2", end)]).Of(tool, end).Items);
            Exposure looked = Map(entries, [.. looks, Accounted("T1", At(6).AddMinutes(one.More))]).Of(tool, end);
            Assert.True(looked.Since >= before.Since);
            Assert.Subset(before.Items.Where(item => item.Kind == ExposureKind.Visit).ToHashSet(), looked.Items.Where(item => item.Kind == ExposureKind.Visit).ToHashSet());
            Exposure forgotten = Map(entries, looks.Skip(1)).Of(tool, end);
            Assert.True(forgotten.Since is null || forgotten.Since <= before.Since);
        }));
    }
}
