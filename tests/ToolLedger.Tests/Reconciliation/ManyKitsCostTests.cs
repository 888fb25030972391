using System;
using System.Globalization;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>Many kits, each with a session of its own: the cost is that of the sum, not of kits times sessions.</summary>
public sealed class ManyKitsCostTests
{
    [Fact]
    public void Memory_grows_with_the_number_of_kits_and_not_with_its_square()
    {
        Allocated(20);
        double few = Allocated(50), many = Allocated(400);

        // Eight times the kits: linear is 8, kits times sessions would be 64.
        Assert.InRange(many / few, 4, 12);
    }

    [Fact]
    public void A_kit_without_a_session_names_at_most_ten_sessions_of_others()
    {
        ReconciliationInput input = Input(30, static number => number != 1);
        ReconciliationResult result = new Reconciler(new ReconciliationPolicy()).ReconcileAll(input, [Kit(1)]).Single();

        Assert.Equal(KitState.NoValidRead, result.Kit.State);
        Assert.Equal(10, result.Findings.Count(finding => finding.Code == ReconciliationReasons.SessionOfOtherKits.Code));
    }

    private static double Allocated(int kits)
    {
        ReconciliationInput input = Input(kits, static _ => true);
        var reconciler = new Reconciler(new ReconciliationPolicy());
        KitId[] ids = [.. Enumerable.Range(1, kits).Select(Kit)];
        long before = GC.GetAllocatedBytesForCurrentThread();
        int open = reconciler.ReconcileAll(input, ids).Count(static result => result.Kit.State == KitState.Open);
        long after = GC.GetAllocatedBytesForCurrentThread();
        Assert.Equal(kits, open);
        return after - before;
    }

    private static ReconciliationInput Input(int kits, Func<int, bool> hasSession) => new()
    {
        Kits = new KitRegister(Enumerable.Range(1, kits).Select(Manifest)),
        Subject = Kit(1),
        Sessions = [.. Enumerable.Range(1, kits).Where(hasSession).Select(Session)],
        Tags = new TagRegister(Enumerable.Range(1, kits).SelectMany(kit => new[] { "a", "b" }.Select(tool => World.Binding(Tag(kit, tool), Tool(kit, tool))))),
        AsOf = World.End.AddMinutes(2),
    };

    // Tool a is read well in its own kit's session; tool b only in the session of the kit before, so that hints have to be looked for.
    private static ReadSession Session(int kit)
    {
        var builder = new ReadSessionBuilder(
            new Presentation
            {
                Id = new SessionId("S" + Text(kit)),
                Station = World.Station(),
                Kits = [Kit(kit)],
                From = World.Start,
                Until = World.End,
                ReaderClockOffset = TimeSpan.Zero,
            },
            new SessionPolicy());
        foreach (TagRead read in new World().ControlReads())
        {
            builder.Add(read);
        }

        foreach (double second in new[] { 5.0, 7, 9 })
        {
            builder.Add(new TagRead(Tag(kit, "a"), World.A1, World.Start.AddSeconds(second)));
            builder.Add(new TagRead(Tag(kit, "a"), World.A2, World.Start.AddSeconds(second)));
            builder.Add(new TagRead(Tag(kit + 1, "b"), World.A1, World.Start.AddSeconds(second)));
        }

        return builder.Close(World.End, TimeSpan.Zero);
    }

    private static KitManifest Manifest(int kit) => new(
        Kit(kit), 1, "invented", World.Start.AddDays(-30), new Signature { By = World.P, At = World.Start.AddDays(-30), Role = new Role("custodian") },
        new[] { "a", "b" }.Select((tool, index) => new ToolLine
        {
            Number = index + 1,
            Tool = new Tool { Id = Tool(kit, tool), Description = "invented tool", Mark = Text(kit) + tool },
        }));

    private static KitId Kit(int number) => new("K" + Text(number));

    private static ToolId Tool(int kit, string tool) => new("T" + Text(kit) + tool);

    private static TagId Tag(int kit, string tool) => TagId.FromText("tag " + Text(kit) + tool);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
