using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Tests.Custody;

/// <summary>Two invented kits of a tool room, K1 with T1 to T8 and K2 with U1 to U4, and entries about them with the least there must be.</summary>
internal static class CustodyScene
{
    public static readonly DateTimeOffset Day = new(2026, 3, 2, 0, 0, 0, TimeSpan.FromHours(1));
    public static readonly KitId K1 = new("K1");
    public static readonly KitId K2 = new("K2");

    public static DateTimeOffset At(int hour, int minute = 0) => Day.AddHours(hour).AddMinutes(minute);

    public static Signature Signed(string person, DateTimeOffset at, string? role = null) => new()
    {
        By = new PersonId(person),
        At = at,
        Role = role is null ? default : new Role(role),
    };

    public static KitManifest Manifest(string kit, string prefix, int count, int revision = 1, DateTimeOffset? from = null) => new(
        new KitId(kit), revision, "an invented kit", from ?? Day.AddDays(-30), Signed("S", Day.AddDays(-30)),
        Enumerable.Range(1, count).Select(number => new ToolLine
        {
            Number = number,
            Tool = new Tool { Id = new ToolId(prefix + Text(number)), Description = "tool " + Text(number), Mark = kit + "-" + Text(number) },
        }));

    public static KitRegister Kits(params IEnumerable<KitManifest> more) => new([Manifest("K1", "T", 8), Manifest("K2", "U", 4), .. more]);

    public static KitIssue Issue(string id, DateTimeOffset at, string user = "P", string kit = "K1", string by = "C", int revision = 1) => new()
    {
        Id = new EntryId(id),
        At = at,
        By = new PersonId(by),
        Kit = new KitId(kit),
        Revision = revision,
        ReceivedBy = Signed(user, at),
        ExpectedReturn = at.AddHours(8),
    };

    public static KitTurnIn TurnIn(string id, DateTimeOffset at, string acceptedBy = "C", string by = "P", string kit = "K1") => new()
    {
        Id = new EntryId(id),
        At = at,
        By = new PersonId(by),
        Kit = new KitId(kit),
        AcceptedBy = Signed(acceptedBy, at),
    };

    public static KitTransfer Transfer(string id, DateTimeOffset at, string from = "P", string to = "Q", string kit = "K1") => new()
    {
        Id = new EntryId(id),
        At = at,
        By = new PersonId(from),
        Kit = new KitId(kit),
        ReceivedBy = Signed(to, at),
        InventoriedAt = at.AddMinutes(-5),
    };

    public static ToolLoan Loan(string id, DateTimeOffset at, string tool = "T8", string by = "P", string to = "B", string kit = "K1") => new()
    {
        Id = new EntryId(id),
        At = at,
        By = new PersonId(by),
        Tool = new ToolId(tool),
        Kit = new KitId(kit),
        ReceivedBy = Signed(to, at),
        Due = at.AddHours(4),
        Job = new JobId("J-B"),
        Equipment = new EquipmentId("aircraft B"),
    };

    public static ReceiptClosure Close(string id, DateTimeOffset at, string receipt, string by = "B", string acceptedBy = "P") => new()
    {
        Id = new EntryId(id),
        At = at,
        By = new PersonId(by),
        Receipt = new EntryId(receipt),
        AcceptedBy = Signed(acceptedBy, at),
    };

    public static JobVisit Visit(string id, DateTimeOffset from, DateTimeOffset? until, string equipment, string kit = "K1") => new()
    {
        Id = new EntryId(id),
        At = from,
        Until = until,
        By = new PersonId("P"),
        Kit = new KitId(kit),
        Job = new JobId("J-" + equipment),
        Equipment = new EquipmentId(equipment),
    };

    public static ZoneEntry Carry(string id, DateTimeOffset at, CarriedDirection direction, string item = "T2", string zone = "Z", decimal amount = 1) => new()
    {
        Id = new EntryId(id),
        At = at,
        By = new PersonId("M"),
        Zone = new Place(zone),
        Item = item,
        Carrier = new PersonId("P"),
        Direction = direction,
        Quantity = new Quantity(amount, Unit.Each),
    };

    public static CustodyRegister Register(params IEnumerable<CustodyEntry> entries) => new(CustodyPolicy.Default, CustodyScene.Kits(), new CustodyLog(entries));

    public static string[] Codes(IReadOnlyList<RecordIssue> issues) => [.. issues.Select(static issue => issue.Rule)];

    /// <summary>Hands entries to a book that must take them all, and then one that is answered.</summary>
    public static (RecordAnswer Answer, string[] Codes, CustodyRegister Register) Try(CustodyPolicy policy, CustodyEntry last, params IReadOnlyList<CustodyEntry> before)
    {
        var book = new CustodyBook(policy, Kits());
        foreach (CustodyEntry entry in before)
        {
            if (book.Record(entry, out IReadOnlyList<RecordIssue> refused) != RecordAnswer.Recorded)
            {
                throw new InvalidOperationException(string.Join("; ", refused));
            }
        }

        RecordAnswer answer = book.Record(last, out IReadOnlyList<RecordIssue> issues);
        return (answer, Codes(issues), book.Live);
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
