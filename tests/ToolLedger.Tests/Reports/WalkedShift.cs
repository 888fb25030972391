using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Holds;
using ToolLedger.Ledger;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tests.Holds;
using ToolLedger.Tests.Reconciliation;
using ToolLedger.Tools;

namespace ToolLedger.Tests.Reports;

/// <summary>
/// A whole invented shift, from issue to release: kit K1 goes to P, is inventoried at 10:05, lends T8, has T5 retagged; at 15:57 T7 is not read; it is declared missing, read late, found in a wheel well, and the
/// hold is released; the loan is closed and the kit turned in. Persons C (custodian), P and Q (users), B (borrower), S (authority), aircraft A to D.
/// </summary>
internal sealed class WalkedShift
{
    private static readonly TagId NewTag = World.TagOf("N5");

    private readonly World world = new();
    private readonly LedgerBook book;

    public WalkedShift()
    {
        Settings = new LedgerSettings
        {
            Kits = world.Kits(),
            Custody = CustodyPolicy.Default with { Roster = HoldScene.Roster },
            Holds = HoldPolicy.Default with { NotificationsNeeded = ["quality assurance"], HoldTimeMax = TimeSpan.FromMinutes(30) },
        };
        book = new LedgerBook(Settings);
        Walk();
    }

    public LedgerSettings Settings { get; }

    public LedgerBook Book => book;

    public ReconciliationResult AtShiftEnd { get; private set; } = null!;

    public SignedReconciliation SignedAtShiftEnd { get; private set; } = null!;

    public List<string> Refused { get; } = [];

    public static DateTimeOffset At(int hour, int minute = 0) => new(2026, 3, 2, hour, minute, 0, TimeSpan.FromHours(1));

    private static Signature By(string person, DateTimeOffset at, string role = "") => new() { By = new PersonId(person), At = at, Role = role.Length == 0 ? default : new Role(role) };

    private void Walk()
    {
        Record(new KitIssue { Id = new EntryId("I-1"), At = At(8), By = new PersonId("C"), Kit = World.K1, Revision = 3, ReceivedBy = By("P", At(8)), Job = new JobId("J-A"), ExpectedReturn = At(16, 30) });
        Visit("V-A", At(8, 5), At(10), "aircraft A");
        Record(SignedReconciliation.Of(new EntryId("S-1"), Morning(), By("P", At(10, 6)), By("Q", At(10, 7))));
        Visit("V-B", At(10, 15), At(12), "aircraft B");
        Record(new ToolLoan
        {
            Id = new EntryId("L-1"),
            At = At(11),
            By = World.P,
            Tool = new ToolId("T8"),
            Kit = World.K1,
            ToKit = World.K2,
            ReceivedBy = By("B", At(11)),
            Job = new JobId("J-D"),
            Equipment = new EquipmentId("aircraft D"),
            Due = At(17),
        });
        Visit("V-C", At(12, 30), At(15, 30), "aircraft C");
        ShiftEnd();
        Loss();
        Return();
    }

    private void ShiftEnd()
    {
        // T5 was retagged at 13:10: the old tag is retired, the new one is read.
        int old = world.Bindings.FindIndex(static binding => binding.Tool.Value == "T5");
        world.Bindings[old] = new TagBinding { Tag = World.TagOf("T5"), Tool = new ToolId("T5"), From = World.Start.AddYears(-1), Until = At(13, 10), BoundBy = World.Q };
        world.Bindings.Add(new TagBinding { Tag = NewTag, Tool = new ToolId("T5"), From = At(13, 10), BoundBy = World.Q });
        world.Policy = new ReconciliationPolicy { Custody = Settings.Custody };
        world.ReadAllBut("T5", "T7", "T8").CountAll();
        world.ReadAt(NewTag, World.A1, World.Baseline, 6).ReadAt(NewTag, World.A2, World.Baseline, 7, 9, 11);
        AtShiftEnd = Reconcile();
        SignedAtShiftEnd = SignedReconciliation.Of(new EntryId("S-2"), AtShiftEnd, By("Q", At(16), "supervisor"), By("P", At(16, 1)));
        Record(SignedAtShiftEnd);
    }

    private void Loss()
    {
        var hold = new EntryId("M-1");
        Record(new MissingDeclaration { Id = hold, At = At(16, 5), By = World.P, Description = "tool 7", Tool = new ToolId("T7"), Kit = World.K1, LineNumber = 7, LastSeenAt = At(10, 5), LastSeenWhere = new Place("bay 2") });
        Told("N-1", At(16, 8));
        world.ReadWell("T7");
        Record(Amendment.Of(new EntryId("A-1"), SignedAtShiftEnd, Reconcile(), By("Q", At(16, 21), "supervisor"), "buffered reads arrived at 16:20")!);
        Record(new HoldRelease { Id = new EntryId("R-0"), At = At(16, 25), By = new PersonId("S"), Role = HoldScene.Authority, Hold = hold, Ground = ReleaseGround.Found, Decision = "its tag was read" });
        Record(new SearchStep { Id = new EntryId("ST-1"), At = At(16, 40), By = World.Q, Hold = hold, Step = "wheel wells", Result = SearchResult.Found, Where = new Place("aircraft C") });
        Record(new FoundDeclaration
        {
            Id = new EntryId("F-1"),
            At = At(16, 45),
            By = World.Q,
            Hold = hold,
            Tool = new ToolId("T7"),
            MarkRead = "K1-7",
            Equipment = new EquipmentId("aircraft C"),
            Where = new Place("left wheel well"),
            LastSeenAt = At(9),
            Remark = "sealant of 09:10 had set around it",
        });
        Record(new HoldRelease { Id = new EntryId("R-1"), At = At(16, 50), By = World.P, Role = HoldScene.Authority, Hold = hold, Ground = ReleaseGround.Found, Decision = "found" });
        Told("N-2", At(16, 55));
        Record(new HoldRelease { Id = new EntryId("R-2"), At = At(17, 10), By = new PersonId("S"), Role = HoldScene.Authority, Hold = hold, Ground = ReleaseGround.Found, Decision = "found, three aircraft inspected" });
    }

    private void Return()
    {
        Record(new KitTurnIn { Id = new EntryId("TI-0"), At = At(17, 15), By = World.P, Kit = World.K1, AcceptedBy = By("P", At(17, 15)) });
        Record(new ReceiptClosure { Id = new EntryId("LC-1"), At = At(17, 20), By = new PersonId("B"), Receipt = new EntryId("L-1"), AcceptedBy = By("P", At(17, 20)), ToKit = World.K1 });
        Record(new KitTurnIn { Id = new EntryId("TI-1"), At = At(17, 30), By = World.P, Kit = World.K1, AcceptedBy = By("C", At(17, 30)) });
    }

    private void Visit(string id, DateTimeOffset from, DateTimeOffset until, string equipment) => Record(new JobVisit
    {
        Id = new EntryId(id),
        At = from,
        Until = until,
        By = World.P,
        Kit = World.K1,
        Job = new JobId("J-" + equipment[^1]),
        Equipment = new EquipmentId(equipment),
    });

    private void Told(string id, DateTimeOffset at) => Record(new HoldNotification { Id = new EntryId(id), At = at, By = World.P, Hold = new EntryId("M-1"), Told = "quality assurance", Person = new PersonId("QA-4") });

    /// <summary>Everything is recorded when it happens; what is refused is kept as the refusal it is.</summary>
    private void Record(RecordEntry content)
    {
        DateTimeOffset recordedAt = content is JobVisit { Until: { } until } ? until : content.At;
        if (book.Append(content, recordedAt, out IReadOnlyList<RecordIssue> issues) != AppendOutcome.Refused)
        {
            return;
        }

        Refused.Add($"{content.Id}: {string.Join(", ", issues.Select(static issue => issue.Rule))}");
        book.Append(new EntryRefusal
        {
            Id = new EntryId("REF-" + content.Id),
            At = content.At,
            By = content.By,
            Refused = content.Id,
            RefusedKind = content.Kind,
            RefusedDigest = content.Digest,
            Codes = [.. issues.Select(static issue => issue.Rule)],
        }, content.At, out _);
    }

    private ReconciliationResult Morning()
    {
        var morning = new World { AsOf = At(10, 5), Policy = new ReconciliationPolicy { Custody = Settings.Custody } };
        foreach (int number in Enumerable.Range(1, 12))
        {
            string text = number.ToString(CultureInfo.InvariantCulture);
            morning.Sight("T" + text, "K1-" + text, at: At(10, 4));
        }

        morning.Count(13, 10, "each", At(10, 4)).Count(14, 1, "spool", At(10, 4)).Count(15, 6, "each", At(10, 4));
        morning.Signatures.Add(By("P", At(10, 5)));
        return new Reconciler(morning.Policy).Reconcile(WithCustody(morning.Input()));
    }

    private ReconciliationResult Reconcile() => new Reconciler(world.Policy).Reconcile(WithCustody(world.Input(world.Session())));

    private ReconciliationInput WithCustody(ReconciliationInput input) => new()
    {
        Kits = input.Kits,
        Subject = input.Subject,
        Sessions = input.Sessions,
        Tags = input.Tags,
        Inventory = input.Inventory,
        Calibration = input.Calibration,
        AsOf = input.AsOf,
        Custody = new CustodyRegister(Settings.Custody, input.Kits, new CustodyLog(book.Entries.Select(static entry => entry.Content).OfType<CustodyEntry>())),
    };
}
