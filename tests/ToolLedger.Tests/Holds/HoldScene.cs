using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Holds;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tests.Custody;
using ToolLedger.Tools;
using static ToolLedger.Tests.Custody.CustodyScene;

namespace ToolLedger.Tests.Holds;

/// <summary>The afternoon of the scenario tables: K1 with P on aircraft A 08:00-10:00, B 10:15-12:00 and C 12:30-15:00; an authority named S may release. All of it is invented.</summary>
internal static class HoldScene
{
    public static readonly Role Authority = new("release authority");

    public static readonly RoleRoster Roster = new([new RoleGrant { Person = new PersonId("S"), Role = Authority, From = Day.AddDays(-100) }]);

    public static IReadOnlyList<CustodyEntry> Afternoon(params IEnumerable<CustodyEntry> more) =>
    [
        Issue("I1", At(7, 50)), Visit("V1", At(8), At(10), "A"), Visit("V2", At(10, 15), At(12), "B"), Visit("V3", At(12, 30), At(15), "C"), .. more,
    ];

    public static PositiveAccounting Accounted(string tool, DateTimeOffset at, AccountingBasis basis = AccountingBasis.Sighted, string signedIn = "") => new()
    {
        Kit = K1,
        Label = tool[1..],
        Tool = new ToolId(tool),
        At = at,
        Basis = basis,
        SignedIn = signedIn.Length == 0 ? default : new EntryId(signedIn),
    };

    public static ExposureMap Map(IEnumerable<CustodyEntry> custody, params IEnumerable<PositiveAccounting> accountings) => new(Register(custody), accountings);

    public static MissingDeclaration Missing(string id, DateTimeOffset at, string tool = "T7", string by = "P") => new()
    {
        Id = new EntryId(id),
        At = at,
        By = new PersonId(by),
        Description = "tool " + tool[1..],
        Tool = tool.Length == 0 ? default : new ToolId(tool),
        Kit = K1,
    };

    public static FoundDeclaration Found(string id, DateTimeOffset at, string hold = "M1", string tool = "T7", string? mark = "K1-7", string by = "Q") => new()
    {
        Id = new EntryId(id),
        At = at,
        By = new PersonId(by),
        Hold = hold.Length == 0 ? default : new EntryId(hold),
        Tool = new ToolId(tool),
        MarkRead = mark,
        Where = new Place("wheel well"),
    };

    public static HoldRelease Release(string id, DateTimeOffset at, ReleaseGround ground = ReleaseGround.Found, string by = "S", string? role = "release authority", string hold = "M1") => new()
    {
        Id = new EntryId(id),
        At = at,
        By = new PersonId(by),
        Role = role is null ? default : new Role(role),
        Hold = new EntryId(hold),
        Ground = ground,
        Decision = "inspected, clear",
    };

    public static HoldRegister Register(ExposureMap map, params IEnumerable<HoldEntry> entries) => new(HoldPolicy.Default, Roster, map, entries);

    public static string[] Equipment(Exposure exposure) => [.. exposure.Things.Select(static thing => thing.Equipment.Value).Where(static text => text.Length > 0)];

    /// <summary>Hands entries to a book that must take them all, and then one that is answered.</summary>
    public static (RecordAnswer Answer, string[] Codes, HoldRegister Register) Try(HoldPolicy policy, HoldEntry last, params IReadOnlyList<HoldEntry> before)
    {
        var book = new HoldBook(policy, Roster, Map(Afternoon()));
        foreach (HoldEntry entry in before)
        {
            if (book.Record(entry, out IReadOnlyList<RecordIssue> refused) != RecordAnswer.Recorded)
            {
                throw new InvalidOperationException(string.Join("; ", refused));
            }
        }

        RecordAnswer answer = book.Record(last, out IReadOnlyList<RecordIssue> issues);
        return (answer, Codes(issues), book.Live);
    }

    private static CustodyRegister Register(IEnumerable<CustodyEntry> entries) => CustodyScene.Register(entries);
}
