using System;
using System.IO;
using System.Text;
using System.Text.Json.Nodes;
using System.Threading.Tasks;
using Xunit;

namespace ToolLedger.Samples.Tests.ShiftCloseout;

/// <summary>The demo's shift under a policy that states its risk: the report says the chance of each open line, its terms and what settles it.</summary>
public sealed class StatedRiskTests
{
    [Fact]
    public async Task An_open_line_shows_its_chance_its_terms_and_what_settles_it()
    {
        using var folder = new DemoFolder();
        JsonObject policy = JsonNode.Parse(File.ReadAllBytes(folder["policy.json"]))!.AsObject();
        policy["presence"] = JsonNode.Parse("""{ "kind": "stated-risk", "model": { "obscuredShare": 0.05, "present": { "a": 3, "b": 60 }, "strayShare": 0.02, "stray": { "a": 0.2, "b": 60 } } }""");
        folder.Write("policy.json", Encoding.UTF8.GetBytes(policy.ToJsonString()));

        HostRun run = await HostRun.Of(folder.Args(["manifest-nacelle-bag.json"]));

        string text = string.Join(' ', run.Output.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
        Assert.Equal("", run.Error);
        Assert.Contains("by the model the chance that its tag is not there is at most", text, StringComparison.Ordinal);
        Assert.Contains("odds that it is there before the session 99 to 1", text, StringComparison.Ordinal);
        Assert.Contains("looks in pass", text, StringComparison.Ordinal);
        Assert.Contains("together", text, StringComparison.Ordinal);
        Assert.Contains("which settles it in", text, StringComparison.Ordinal);
        Assert.Contains("accounted for by reads alone is not there is", text, StringComparison.Ordinal);
    }
}
