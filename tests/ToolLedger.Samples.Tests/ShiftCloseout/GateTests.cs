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
    }

    [Fact]
    public async Task The_gate_never_lowers_the_code_of_a_kit()
    {
        using var folder = new DemoFolder();
        string empty = folder.Write("empty.jsonl", []);

        Assert.Equal(1, (await HostRun.Of(folder.Args([Hub, Nacelle], "--gate"))).ExitCode);
        Assert.Equal(2, (await HostRun.Of(folder.ArgsOfOneSession([Hub], "--gate", "--reads", empty))).ExitCode);
    }
}
