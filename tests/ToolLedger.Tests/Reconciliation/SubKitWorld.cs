using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>
/// The sub-kit of the scenario tables, invented as they are: kit K1 holds tools T1 and T2 on lines 1 and 2 and, on line 7, sub-kit K1a: a tagged case
/// and five tagged tools A1 to A5. K1a can hold K1aa on its line 9: no case, tools B1 and B2.
/// </summary>
internal sealed class SubKitWorld
{
    public static readonly KitId K1a = new("K1a");
    public static readonly KitId K1aa = new("K1aa");

    public World World { get; } = new();

    public List<KitManifest> Others { get; } = [];

    public int ListedRevision { get; set; } = 2;

    public bool HasCase { get; set; } = true;

    public bool IsK1aRegistered { get; set; } = true;

    public bool IsNestedTwice { get; set; }

    /// <summary>Whether K1a holds twenty pins on its line 6.</summary>
    public bool HasPins { get; set; }

    public SubKitWorld()
    {
        foreach (string tool in (string[])["CASE", "A1", "A2", "A3", "A4", "A5", "B1", "B2"])
        {
            World.Bindings.Add(World.Binding(World.TagOf(tool), new ToolId(tool)));
        }
    }

    public static Tool Tool(string id) => new() { Id = new ToolId(id), Description = "tool " + id, Mark = "mark " + id };

    public static ToolLine Line(int number, string tool) => new() { Number = number, Tool = Tool(tool), Location = "tray" };

    public static KitManifest Manifest(KitId kit, int revision, params ManifestLine[] lines) => new(
        kit, revision, "invented scenario kit", World.Start.AddDays(revision - 40), new Signature { By = new PersonId("S"), At = World.Start.AddDays(-40) }, lines);

    public KitManifest K1() => Manifest(World.K1, 3, Line(1, "T1"), Line(2, "T2"), new SubKitLine
    {
        Number = 7,
        Location = "lid",
        Kit = K1a,
        Revision = ListedRevision,
        Case = HasCase ? Tool("CASE") : null,
    });

    public KitManifest K1aRevision2()
    {
        IEnumerable<ManifestLine> tools = Enumerable.Range(1, 5).Select(static i => Line(i, "A" + i.ToString(CultureInfo.InvariantCulture)));
        IEnumerable<ManifestLine> pins = HasPins ? [new ConsumableLine { Number = 6, Description = "pins", Quantity = new Quantity(20, Unit.Each) }] : [];
        return Manifest(K1a, 2, [.. pins, .. IsNestedTwice ? tools.Append(new SubKitLine { Number = 9, Kit = K1aa, Revision = 1 }) : tools]);
    }

    public KitRegister Kits()
    {
        var manifests = new List<KitManifest>(Others) { K1() };
        if (IsK1aRegistered)
        {
            manifests.Add(K1aRevision2());
        }

        if (IsNestedTwice)
        {
            manifests.Add(Manifest(K1aa, 1, Line(1, "B1"), Line(2, "B2")));
        }

        return new KitRegister(manifests);
    }

    public SubKitWorld ReadWell(params string[] tools)
    {
        World.ReadWell(tools);
        return this;
    }

    public ReconciliationResult Reconcile(KitId? subject = null, params IReadOnlyList<ReadSession> sessions)
    {
        ReconciliationInput plain = World.Input(sessions.Count > 0 ? sessions : [World.Session("S1", [subject ?? World.K1])]);
        return new Reconciler(World.Policy, World.Rules).Reconcile(new ReconciliationInput
        {
            Kits = Kits(),
            Subject = subject ?? World.K1,
            Sessions = plain.Sessions,
            Tags = plain.Tags,
            Inventory = plain.Inventory,
            Custody = new CustodyRegister(World.Policy.Custody, Kits(), new CustodyLog(World.Custody)),
            AsOf = plain.AsOf,
        });
    }
}
