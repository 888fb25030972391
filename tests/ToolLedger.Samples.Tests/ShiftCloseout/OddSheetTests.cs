using System;
using System.IO;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Threading.Tasks;
using Xunit;

namespace ToolLedger.Samples.Tests.ShiftCloseout;

/// <summary>Sheets and reads that do not fit each other, over the demo's files: the report must say so where a supervisor looks first.</summary>
public sealed class OddSheetTests
{
    private const string Nacelle = "manifest-nacelle-bag.json";
    private const string Hub = "manifest-hub-bag.json";

    [Fact]
    public async Task A_session_of_another_kit_is_named_with_its_health_and_on_standard_error()
    {
        using var folder = new DemoFolder();
        Edit(folder, "presentation.json", static sheet => sheet["kits"] = new JsonArray("WT-BAG-70")); // 07, mistyped

        HostRun run = await HostRun.Of(folder.ArgsOfOneSession([Nacelle]));
        using JsonDocument json = JsonDocument.Parse((await HostRun.Of(folder.ArgsOfOneSession([Nacelle], "--format", "json"))).Output);
        string first = Between(run, "1. Is the read any good?", "2. Settled");

        Assert.Contains("VALID session WT-2026-10-14-2", first, StringComparison.Ordinal);
        Assert.Contains("It presents kit WT-BAG-70, none of this report", first, StringComparison.Ordinal);
        Assert.Contains("No session handed in presents these kits", first, StringComparison.Ordinal);
        Assert.DoesNotContain("was handed in: nothing was measured", Unwrapped(run), StringComparison.Ordinal);
        Assert.EndsWith("presentation.json: session WT-2026-10-14-2 presents none of the kits to conclude, but WT-BAG-70; if that is not meant, correct the sheet.\n", run.Error, StringComparison.Ordinal);
        Assert.Equal(2, run.Error.Split('\n').Length);
        Assert.Equal("WT-BAG-70", json.RootElement.GetProperty("sessionsOfOtherKits")[0].GetProperty("kits")[0].GetString());
    }

    [Fact]
    public async Task A_session_of_another_kit_stands_beside_those_of_the_kit()
    {
        using var folder = new DemoFolder();
        Edit(folder, "presentation.json", static sheet => sheet["kits"] = new JsonArray("WT-BAG-70", "WT-BAG-71"));

        HostRun run = await HostRun.Of(folder.Args([Nacelle, Hub]));
        string first = Between(run, "1. Is the read any good?", "2. Settled");

        Assert.Contains("It presents kits WT-BAG-70, WT-BAG-71, none of this report", first, StringComparison.Ordinal);
        Assert.Contains("VALID session WT-2026-10-14-3", first, StringComparison.Ordinal);
        Assert.DoesNotContain("No session", first, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_session_whose_reads_all_lie_outside_it_says_so_beside_its_health()
    {
        using var folder = new DemoFolder();

        HostRun run = await HostRun.Of(folder.ArgsOfOneSession([Hub], "--reads", folder["reads-2.jsonl"]));

        Assert.Contains("All reads, 546, lie outside this session", Between(run, "1. Is the read any good?", "2. Settled"), StringComparison.Ordinal);
        Assert.Contains("stamped outside the presentation", Between(run, "9. What was read", "Cautions"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Reads_on_an_antenna_that_the_station_does_not_list_are_not_called_outside_the_presentation()
    {
        using var folder = new DemoFolder();
        string reads = File.ReadAllText(folder["reads.jsonl"]);
        string some = folder.Write("some.jsonl", Encoding.UTF8.GetBytes(reads.Replace("\"antenna\":2", "\"antenna\":7", StringComparison.Ordinal)));
        string all = folder.Write("all.jsonl", Encoding.UTF8.GetBytes(reads.Replace("\"antenna\":2", "\"antenna\":7", StringComparison.Ordinal).Replace("\"antenna\":1", "\"antenna\":7", StringComparison.Ordinal)));

        HostRun onSome = await HostRun.Of(folder.ArgsOfOneSession([Hub], "--reads", some));
        HostRun onAll = await HostRun.Of(folder.ArgsOfOneSession([Hub], "--reads", all));

        foreach (HostRun run in (HostRun[])[onSome, onAll])
        {
            string other = Between(run, "9. What was read", "Cautions");
            Assert.Contains("Reads on antenna 7, which is not one of the station's, were not used", Between(run, "1. Is the read any good?", "2. Settled"), StringComparison.Ordinal);
            Assert.Contains("UNLISTED ANTENNA", other, StringComparison.Ordinal);
            Assert.Contains("on an antenna that the station does not list (7)", other, StringComparison.Ordinal);
            Assert.DoesNotContain("stamped outside", other, StringComparison.Ordinal);
        }

        Assert.Contains("No read, of 539, is on an antenna that the station lists", Unwrapped(onAll), StringComparison.Ordinal);
        Assert.DoesNotContain("is on an antenna that the station lists", Unwrapped(onSome), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_kit_that_stood_nearby_all_the_time_is_told_with_the_health_of_the_session()
    {
        HostRun run = await HostRun.Of();

        Assert.Contains("kit WT-BAG-11 stood nearby in every pass", Between(run, "1. Is the read any good?", "2. Settled"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_person_who_signed_too_early_is_named_and_does_not_count()
    {
        using var folder = new DemoFolder();
        Edit(folder, "counts.json", static sheet =>
        {
            sheet["signatures"]!.AsArray().RemoveAt(1);
            sheet["signatures"]![0]!["at"] = "2026-10-14T15:45:00+02:00"; // the counts are of 15:50
        });

        string who = Between(await HostRun.Of(folder.Args([Hub])), "6. Who may sign", "7. Calibration");

        Assert.Contains("No: 0 different persons have signed", who, StringComparison.Ordinal);
        Assert.Contains("Signed the sheet: nobody. Signed, and does not count: P-017 15:45:00+02:00 (it is older than", who, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_summary_names_open_lines_in_the_order_of_the_manifest_and_a_count_says_how_many_of_what()
    {
        HostRun run = await HostRun.Of();

        Assert.Matches("open: line 4 .* line 5 .* line 10 .* line 13 .* line 15 ", Between(run, "Summary of 2 kits", "1. Is the read"));
        Assert.Contains("Next: count the 10 listed: Hex keys 1.5-10 mm, nine and the holder.", Unwrapped(run), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_policy_the_head_says_that_the_default_applies_and_whose_days_are_shown()
    {
        using var folder = new DemoFolder();
        string[] args = folder.Args([Hub]);
        int at = Array.IndexOf(args, "--policy");

        string without = Unwrapped(await HostRun.Of([.. args[..at], .. args[(at + 2)..]]));
        string with = Unwrapped(await HostRun.Of(args));

        Assert.Contains("No site policy was handed in: the default policy applies, and times and days are those of the calendar UTC.", without, StringComparison.Ordinal);
        Assert.DoesNotContain("No site policy", with, StringComparison.Ordinal);
    }

    private static void Edit(DemoFolder folder, string name, Action<JsonObject> change)
    {
        JsonObject sheet = JsonNode.Parse(File.ReadAllBytes(folder[name]))!.AsObject();
        change(sheet);
        folder.Write(name, Encoding.UTF8.GetBytes(sheet.ToJsonString()));
    }

    private static string Between(HostRun run, string from, string to)
    {
        string text = Unwrapped(run);
        int start = text.IndexOf(from, StringComparison.Ordinal), end = text.IndexOf(to, start + 1, StringComparison.Ordinal);
        return text[start..end];
    }

    private static string Unwrapped(HostRun run) => string.Join(' ', run.Output.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
