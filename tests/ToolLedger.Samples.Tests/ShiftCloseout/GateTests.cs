using System;
using System.IO;
using System.Text;
using System.Text.Json.Nodes;
using System.Threading.Tasks;
using Xunit;

namespace ToolLedger.Samples.Tests.ShiftCloseout;

/// <summary>--gate: whether the inventory satisfies the gate before operation, over the demo's files. The hub bag is complete and was opened after its evidence.</summary>
public sealed class GateTests
{
    private const string Nacelle = "manifest-nacelle-bag.json";
    private const string Hub = "manifest-hub-bag.json";

    [Fact]
    public async Task A_complete_kit_that_was_opened_since_returns_1_at_the_gate_and_0_without_it()
    {
        using var folder = new DemoFolder();

        HostRun asked = await HostRun.Of(folder.Args([Hub], "--gate"));
        HostRun notAsked = await HostRun.Of(folder.Args([Hub]));

        Assert.Equal((1, 0), (asked.ExitCode, notAsked.ExitCode));
        Assert.Contains("Before operation: NOT SATISFIED", asked.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Before operation", notAsked.Output, StringComparison.Ordinal);
    }

    // The opening stands beside the conclusion also where nobody asks for the gate.
    [Fact]
    public async Task An_opening_after_the_evidence_is_told_with_the_conclusion()
    {
        using var folder = new DemoFolder();

        string output = (await HostRun.Of(folder.Args([Hub]))).Output;
        int conclusion = output.IndexOf("COMPLETE. Of 11 lines", StringComparison.Ordinal);
        int opened = output.IndexOf("Noticed, all lines: the kit was opened at 15:58:00", StringComparison.Ordinal);

        Assert.True(conclusion >= 0 && opened > conclusion && opened < output.IndexOf("2. Settled", StringComparison.Ordinal), output);
    }

    [Fact]
    public async Task A_complete_kit_that_stayed_closed_returns_0_at_the_gate()
    {
        using var folder = new DemoFolder();
        JsonObject sheet = JsonNode.Parse(File.ReadAllBytes(folder["counts.json"]))!.AsObject();
        Assert.True(sheet.Remove("openings"));
        folder.Write("counts.json", Encoding.UTF8.GetBytes(sheet.ToJsonString()));

        HostRun run = await HostRun.Of(folder.Args([Hub], "--gate"));

        Assert.Equal(0, run.ExitCode);
        Assert.Contains("Before operation: SATISFIED", run.Output, StringComparison.Ordinal);
        Assert.Contains("no opening on record", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("last opening", run.Output, StringComparison.Ordinal);
        Assert.Contains("asks for no signature; 2 different persons have signed", Unwrapped(run), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_satisfied_gate_says_that_it_asks_for_no_signature_and_that_nobody_has_signed()
    {
        using var folder = new DemoFolder();
        JsonObject sheet = JsonNode.Parse(File.ReadAllBytes(folder["counts.json"]))!.AsObject();
        Assert.True(sheet.Remove("signatures"));
        sheet["openings"]![0]!["at"] = "2026-10-14T15:30:00+02:00"; // before the evidence
        folder.Write("counts.json", Encoding.UTF8.GetBytes(sheet.ToJsonString()));

        HostRun run = await HostRun.Of(folder.Args([Hub], "--gate"));

        Assert.Equal(0, run.ExitCode);
        Assert.Contains("after the last opening on record, that of 2026-10-14 15:30:00+02:00", Unwrapped(run), StringComparison.Ordinal);
        Assert.Contains("asks for no signature; two people have not signed, 0 have", Unwrapped(run), StringComparison.Ordinal);
        Assert.Contains("It asks for no signature", Unwrapped(await HostRun.Of("--help")), StringComparison.Ordinal);
    }

    // Whoever stops at "every line has a recorded basis" must have read that nothing may be operated.
    [Fact]
    public async Task A_complete_kit_at_a_shut_gate_carries_the_stop_sentence()
    {
        using var folder = new DemoFolder();

        string asked = Unwrapped(await HostRun.Of(folder.Args([Hub], "--gate")));
        string notAsked = Unwrapped(await HostRun.Of(folder.Args([Hub])));

        Assert.Contains("COMPLETE. Of 11 lines", asked, StringComparison.Ordinal);
        Assert.Contains("Every line has a recorded basis under the policy named below, at the time stated. Until people", asked, StringComparison.Ordinal);
        Assert.Contains("operate, close up or release nothing", asked, StringComparison.Ordinal);
        Assert.DoesNotContain("operate, close up or release nothing", notAsked, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_gate_never_lowers_the_code_of_a_kit()
    {
        using var folder = new DemoFolder();
        string empty = folder.Write("empty.jsonl", []);

        Assert.Equal(1, (await HostRun.Of(folder.Args([Hub, Nacelle], "--gate"))).ExitCode);
        Assert.Equal(2, (await HostRun.Of(folder.ArgsOfOneSession([Hub], "--gate", "--reads", empty))).ExitCode);
    }

    private static string Unwrapped(HostRun run) => string.Join(' ', run.Output.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
