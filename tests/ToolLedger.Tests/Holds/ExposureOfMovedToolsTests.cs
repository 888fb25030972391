using System;
using System.Collections.Generic;
using ToolLedger.Custody;
using ToolLedger.Holds;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tests.Custody;
using ToolLedger.Tools;
using Xunit;
using static ToolLedger.Tests.Custody.CustodyScene;
using static ToolLedger.Tests.Holds.HoldScene;

namespace ToolLedger.Tests.Holds;

/// <summary>Property 10 where a tool goes with more than one kit: nothing but a positive accounting takes a place out of its exposure, no manifest and no box around the box. Kits and aircraft are invented.</summary>
public sealed class ExposureOfMovedToolsTests
{
    private static readonly ToolId T8 = new("T8");

    // Given T8 accounted for at 08:00 and with K1 at A; when a manifest of 11:00 lists it in K2, which then visits D; then both A and D.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_manifest_that_moves_a_tool_takes_nothing_out_of_its_exposure(bool isOutBefore)
    {
        KitRegister kits = CustodyScene.Kits(Manifest("K1", "T", 7, revision: 2, from: At(11)), WithT8());
        CustodyEntry[] entries = [.. isOutBefore ? (CustodyEntry[])[Issue("I1", At(7, 50)), TurnIn("R1", At(10, 30))] : [], Visit("V1", At(8), At(10), "A"), Visit("V2", At(12), At(13), "D", "K2")];

        Exposure exposure = Map(kits, entries, "T8").Of(T8, At(15));

        Assert.Equal(At(8), exposure.Since);
        Assert.Equal(["A", "D"], Equipment(exposure));
    }

    // Given a tool that was accounted for after the move; then what its former kit visited later is no concern of it.
    [Fact]
    public void A_kit_that_the_tool_left_before_it_was_accounted_for_does_not_count()
    {
        KitRegister kits = CustodyScene.Kits(Manifest("K1", "T", 7, revision: 2, from: At(7)), WithT8(At(7)));

        Assert.Equal(["D"], Equipment(Map(kits, [Visit("V1", At(9), At(10), "A"), Visit("V2", At(12), At(13), "D", "K2")], "T8", "K2").Of(T8, At(15))));
    }

    // Given the roll K1 inside the chest K9; when K9 is taken to A and a tool of K1 is missing; then A is affected.
    [Fact]
    public void What_the_outer_kit_visits_counts_for_the_tools_inside()
    {
        KitManifest chest = new(new KitId("K9"), 1, "a chest", Day.AddDays(-30), Signed("S", Day.AddDays(-30)), [new SubKitLine { Number = 1, Kit = K1, Revision = 1 }]);
        ExposureMap map = Map(CustodyScene.Kits(chest), [Issue("I1", At(7, 50), kit: "K9"), Visit("V1", At(8), At(10), "A", "K9")], "T8");

        Assert.Equal(["A"], Equipment(map.Of(T8, At(15))));
        Assert.Equal(["A"], Equipment(map.Of(K1, "8", At(15))));
        Assert.Equal(["A"], Equipment(map.OfKit(K1, At(15))));
    }

    // Given a loan closed by putting the tool into K2; when K2 visits D afterwards; then D is affected.
    [Fact]
    public void What_the_kit_visits_that_a_closure_put_the_tool_into_counts()
    {
        ToolLoan loan = new() { Id = new EntryId("L1"), At = At(9), By = new PersonId("C"), Tool = T8, ReceivedBy = Signed("B", At(9)), Due = At(20) };
        ReceiptClosure closure = new() { Id = new EntryId("C1"), At = At(11), By = new PersonId("B"), Receipt = loan.Id, AcceptedBy = Signed("C", At(11)), ToKit = K2 };

        Assert.Equal(["D"], Equipment(Map(CustodyScene.Kits(), [loan, closure, Visit("V2", At(12), At(13), "D", "K2")], "T8").Of(T8, At(15))));
    }

    private static KitManifest WithT8(DateTimeOffset? from = null) => new(K2, 2, "an invented kit", from ?? At(11), Signed("S", Day.AddDays(-30)),
    [
        .. Manifest("K2", "U", 4).Lines, new ToolLine { Number = 5, Tool = new Tool { Id = T8, Description = "tool 8", Mark = "K2-5" } },
    ]);

    private static ExposureMap Map(KitRegister kits, IEnumerable<CustodyEntry> entries, string tool, string kit = "K1") => new(
        new CustodyRegister(CustodyPolicy.Default, kits, new CustodyLog(entries)),
        [new() { Kit = new KitId(kit), Label = "8", Tool = new ToolId(tool), At = At(8), Basis = ToolLedger.Reconciliation.AccountingBasis.Sighted }]);
}
