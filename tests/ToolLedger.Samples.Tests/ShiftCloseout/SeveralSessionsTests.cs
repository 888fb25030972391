using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using System.Threading.Tasks;
using Xunit;

namespace ToolLedger.Samples.Tests.ShiftCloseout;

/// <summary>Several sessions, kits inside kits and tag histories on one command line, over the demo's files.</summary>
public sealed class SeveralSessionsTests
{
    private const string Nacelle = "manifest-nacelle-bag.json";
    private const string Hub = "manifest-hub-bag.json";

    // The 30 mm spanner lies in the yaw bag, which stands beside antenna 2 in the first session and is gone in the second.
    [Fact]
    public async Task S94_a_second_session_without_the_neighbour_tells_its_tools_from_those_of_the_bag()
    {
        using var folder = new DemoFolder();

        Dictionary<string, string> first = await States(folder.ArgsOfOneSession([Nacelle]));
        Dictionary<string, string> both = await States(folder.Args([Nacelle]));
        HostRun said = await HostRun.Of(folder.Args([Nacelle]));

        Assert.Equal("weak", first["4"]);
        Assert.Equal("not-read", both["4"]);
        Assert.Contains("seen only while kit WT-BAG-11 stood there", Unwrapped(said.Output), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_order_of_the_pairs_decides_nothing()
    {
        using var folder = new DemoFolder();
        string[] usual = folder.Args([Nacelle, Hub], "--format", "json");

        using JsonDocument one = JsonDocument.Parse((await HostRun.Of(usual)).Output);
        using JsonDocument other = JsonDocument.Parse((await HostRun.Of(Swapped(usual, folder))).Output);

        Assert.Equal(one.RootElement.GetProperty("kits").ToString(), other.RootElement.GetProperty("kits").ToString());
        Assert.Equal(one.RootElement.GetProperty("sessions").ToString(), other.RootElement.GetProperty("sessions").ToString());
    }

    // Each sheet with the reads of the other session: no read lies in its window, so neither session is fit to conclude from.
    [Fact]
    public async Task Reads_are_paired_with_the_sheet_in_the_same_place()
    {
        using var folder = new DemoFolder();
        string[] crossed = [.. folder.ArgsOfOneSession([Hub], "--reads", folder["reads-2.jsonl"]), "--session", folder["presentation-2.json"], "--reads", folder["reads.jsonl"]];

        HostRun run = await HostRun.Of(crossed);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("INVALID", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_kit_inside_a_kit_whose_manifest_is_not_at_hand_is_not_assessed()
    {
        using var folder = new DemoFolder();
        string[] args = folder.Args([Hub]);
        int at = Array.IndexOf(args, folder["manifest-crimping-set.json"]) - 1;

        HostRun run = await HostRun.Of([.. args[..at], .. args[(at + 2)..]]);

        Assert.Equal(1, run.ExitCode);
        Assert.Contains("hand in the signed manifest of kit WT-SET-21 revision 1", Unwrapped(run.Output), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_history_orders_the_search_and_changes_no_conclusion()
    {
        using var folder = new DemoFolder();
        string[] with = folder.Args([Nacelle]);
        int at = Array.IndexOf(with, "--history");
        string[] without = [.. with[..at], .. with[(at + 2)..]];

        Assert.Equal(await States(without), await States(with));
        Assert.Contains("its tag was read in 40 of 40 past sessions", Unwrapped((await HostRun.Of(with)).Output), StringComparison.Ordinal);
    }

    private static string[] Swapped(string[] args, DemoFolder folder) => [.. args.Select(arg =>
        arg == folder["presentation.json"] ? folder["presentation-2.json"]
        : arg == folder["presentation-2.json"] ? folder["presentation.json"]
        : arg == folder["reads.jsonl"] ? folder["reads-2.jsonl"]
        : arg == folder["reads-2.jsonl"] ? folder["reads.jsonl"]
        : arg)];

    private static async Task<Dictionary<string, string>> States(string[] args)
    {
        HostRun run = await HostRun.Of([.. args, "--format", "json"]);
        using JsonDocument document = JsonDocument.Parse(run.Output);
        return document.RootElement.GetProperty("kits")[0].GetProperty("lines").EnumerateArray()
            .ToDictionary(line => line.GetProperty("line").GetString()!, line => line.GetProperty("state").GetString()!, StringComparer.Ordinal);
    }

    private static string Unwrapped(string text) => string.Join(' ', text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
