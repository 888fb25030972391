using System.Text;
using System.Threading.Tasks;
using Xunit;

namespace ToolLedger.Samples.Tests.ShiftCloseout;

/// <summary>What the process returns on files, over the demo's own.</summary>
public sealed class ExitCodeTests
{
    private const string Nacelle = "manifest-nacelle-bag.json";
    private const string Hub = "manifest-hub-bag.json";

    [Fact]
    public async Task A_complete_kit_returns_0()
    {
        using var folder = new DemoFolder();

        HostRun run = await HostRun.Of(folder.Args([Hub]));

        Assert.Equal("", run.Error);
        Assert.Equal(0, run.ExitCode);
    }

    [Fact]
    public async Task An_open_or_discrepant_kit_returns_1_and_so_do_both_kits_together()
    {
        using var folder = new DemoFolder();

        Assert.Equal(1, (await HostRun.Of(folder.Args([Nacelle]))).ExitCode);
        Assert.Equal(1, (await HostRun.Of(folder.Args([Hub, Nacelle]))).ExitCode);
    }

    [Fact]
    public async Task A_session_in_which_nothing_was_read_returns_2()
    {
        using var folder = new DemoFolder();
        string empty = folder.Write("empty.jsonl", []);

        Assert.Equal(2, (await HostRun.Of(folder.ArgsOfOneSession([Hub], "--reads", empty))).ExitCode);
    }

    [Fact]
    public async Task Several_kits_return_the_highest_code()
    {
        // The yaw bag was not presented, so it has no valid read; the hub bag is complete.
        using var folder = new DemoFolder();

        Assert.Equal(2, (await HostRun.Of(folder.Args([Hub, Nacelle, "manifest-yaw-bag.json"]))).ExitCode);
    }

    [Fact]
    public async Task Without_an_instant_it_concludes_for_now_and_an_old_session_settles_nothing()
    {
        using var folder = new DemoFolder();
        string[] args = folder.Args([Hub]);
        int asOf = System.Array.IndexOf(args, "--as-of");
        string[] now = [.. args[..asOf], .. args[(asOf + 2)..]];

        Assert.Equal(0, (await HostRun.Of(now)).ExitCode); // the run's clock stands 24 minutes after the session
        Assert.Equal(2, (await HostRun.At(new System.DateTimeOffset(2026, 10, 15, 14, 0, 0, System.TimeSpan.Zero), now)).ExitCode);
    }

    [Fact]
    public async Task Without_a_reader_what_people_say_is_enough_to_conclude()
    {
        using var folder = new DemoFolder();

        HostRun run = await HostRun.Of("--manifest", folder[Hub], "--counts", folder["counts.json"], "--as-of", "2026-10-14T16:00:00+02:00");

        Assert.Equal("", run.Error);
        Assert.InRange(run.ExitCode, 1, 2);
    }

    [Fact]
    public async Task CSV_and_JSON_Lines_give_the_same_conclusions()
    {
        using var folder = new DemoFolder();
        var csv = new StringBuilder("epc,antenna,time,rssi\r\n");
        foreach (Reads.TagRead read in DemoScenario.Reads)
        {
            csv.Append(System.Globalization.CultureInfo.InvariantCulture,
                $"{read.Tag.Epc},{read.Antenna},{read.FirstSeen.UtcDateTime:yyyy-MM-dd'T'HH:mm:ss.ffffff'Z'},{read.Strength!.Value.ToDbm()}\r\n");
        }

        HostRun fromCsv = await HostRun.Of(folder.Args([Nacelle, Hub], "--reads", folder.Write("reads.csv", Encoding.UTF8.GetBytes(csv.ToString()))));
        HostRun fromLines = await HostRun.Of(folder.Args([Nacelle, Hub]));

        // The reports differ in the name and the digest of that one file only.
        string[] one = fromCsv.Output.Split('\n');
        string[] other = fromLines.Output.Split('\n');
        Assert.Equal(other.Length, one.Length);
        Assert.All(System.Linq.Enumerable.Zip(one, other), pair => Assert.True(
            string.Equals(pair.First, pair.Second, System.StringComparison.Ordinal) || pair.First.Contains("reads.csv", System.StringComparison.Ordinal), pair.First));
    }
}
