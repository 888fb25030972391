using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Holds;
using ToolLedger.Ledger;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tests.Custody;
using ToolLedger.Tests.Holds;
using ToolLedger.Tests.Reconciliation;
using ToolLedger.Tools;
using static ToolLedger.Tests.Custody.CustodyScene;

namespace ToolLedger.Tests.Ledger;

/// <summary>Ledgers of the invented tool room.</summary>
internal static class LedgerScene
{
    public static readonly LedgerSettings Settings = new() { Kits = CustodyScene.Kits(), Custody = CustodyPolicy.Default with { Roster = HoldScene.Roster } };

    public static LedgerEntry Entry(RecordEntry content, DateTimeOffset? recordedAt = null, string station = "R1") => new(content, recordedAt ?? content.At, new ToolLedger.Reads.StationId(station));

    public static LedgerBook Book(params IEnumerable<RecordEntry> contents) => new(Settings, contents.Select(static content => Entry(content)));

    public static (AppendOutcome Outcome, string[] Codes) Append(LedgerBook book, RecordEntry content, DateTimeOffset? recordedAt = null)
    {
        AppendOutcome outcome = book.Append(content, recordedAt ?? content.At, out IReadOnlyList<RecordIssue> issues);
        return (outcome, Codes(issues));
    }

    /// <summary>One fact of every kind that is not of custody, every member set.</summary>
    public static IReadOnlyList<RecordEntry> OneOfEach()
    {
        var world = new World();
        SignedReconciliation signed = SignedReconciliation.Of(new EntryId("S1"), world.ReadAllBut("T7").CountAll().Reconcile(), Signed("Q", world.AsOf, "supervisor"), Signed("S", world.AsOf));
        Amendment amendment = Amendment.Of(new EntryId("A1"), signed, world.ReadWell("T7").Reconcile(), Signed("S", world.AsOf.AddHours(1), "supervisor"), "reads that came late")!;
        EntryId hold = new("M1");
        var thing = new AffectedThing(new EquipmentId("B"), new JobId("J1"), new Place("bay 2"));
        return
        [
            new MissingDeclaration
            {
                Id = hold, At = At(15), By = new PersonId("P"), Description = "spanner", Tool = new ToolId("T7"), Kit = K1, LineNumber = 7, Pieces = 1, Owner = new PersonId("P"), LastSeenAt = At(14),
                LastSeenWhere = new Place("bay 2"), TouchedSince = [thing],
            },
            new HoldPlacement { Id = new EntryId("H1"), At = At(15), By = new PersonId("P"), Hold = hold, Affected = [thing], IsImpound = true },
            new HoldNarrowing { Id = new EntryId("H2"), At = At(15), By = new PersonId("S"), Hold = hold, NotAffected = [thing], Decision = "closed before" },
            new HoldNotification { Id = new EntryId("H3"), At = At(15), By = new PersonId("P"), Hold = hold, Told = "quality assurance", Person = new PersonId("QA1") },
            new SearchStep { Id = new EntryId("H4"), At = At(15), By = new PersonId("P"), Hold = hold, Step = "immediate area", Result = SearchResult.Inaccessible },
            new SearchDiscontinuation { Id = new EntryId("H5"), At = At(15), By = new PersonId("S"), Hold = hold, Decision = "searched" },
            new FoundDeclaration { Id = new EntryId("H6"), At = At(15), By = new PersonId("P"), Hold = hold, Tool = new ToolId("T7"), MarkRead = "K1-7", InKit = K1, Equipment = new EquipmentId("B"), LastSeenAt = At(14) },
            new FoundWithdrawal { Id = new EntryId("H7"), At = At(15), By = new PersonId("P"), Found = new EntryId("H6"), Reason = "another mark" },
            new LeftInPlace { Id = new EntryId("H8"), At = At(15), By = new PersonId("S"), Hold = hold, Location = "frame 12", Equipment = new EquipmentId("B"), Image = Digest.Of("x"u8), Decision = "no hazard" },
            new DropRecord { Id = new EntryId("H9"), At = At(15), By = new PersonId("P"), Description = "washer", Tool = new ToolId("T7"), Equipment = new EquipmentId("B"), Quantity = new Quantity(2, Unit.Each) },
            new ItemRecovery { Id = new EntryId("H10"), At = At(15), By = new PersonId("P"), Item = new EntryId("H9") },
            new HoldRelease { Id = new EntryId("H11"), At = At(15), By = new PersonId("S"), Hold = hold, Ground = ReleaseGround.DeclaredInError, Decision = "in the other pocket" },
            signed,
            amendment,
            new EntryCorrection { Id = new EntryId("C1"), At = At(16), By = new PersonId("C"), Witness = new PersonId("W"), Corrects = new EntryId("I1"), Reason = "wrong kit" },
            new EntryRefusal { Id = new EntryId("F1"), At = At(16), By = new PersonId("C"), Refused = new EntryId("I2"), RefusedKind = "kit-issue", RefusedDigest = Digest.Of("y"u8), Codes = ["custody.already-issued"] },
            StoredRecord.Of(new EntryId("SR1"), new World().Sheet().ToJson(), Signed("C", At(16))),
        ];
    }
}
