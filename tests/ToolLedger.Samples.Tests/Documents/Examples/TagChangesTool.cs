using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
// <example>
using ToolLedger.Identifiers;
using ToolLedger.Identifiers.Schemes;
using ToolLedger.Records;
using ToolLedger.Tools;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The example of docs/tools.md: one tag on two tools over a year, a doubt, a re-encoded tag, and a refusal.</summary>
internal static class TagChangesTool
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        _ = File;
        // <example>
        TagId tag = TagId.Parse("epc:3414257BF40000000000162E");
        DateTimeOffset march = new(2026, 3, 1, 7, 0, 0, TimeSpan.FromHours(1));
        DateTimeOffset september = new(2026, 9, 1, 7, 0, 0, TimeSpan.FromHours(2));
        var first = new TagBinding { Tag = tag, Tool = new ToolId("B7-05"), From = march, Until = september };
        var second = new TagBinding { Tag = tag, Tool = new ToolId("B8-02"), From = september };
        var doubt = new BindingQuarantine
        {
            Tag = tag,
            Tool = second.Tool,
            From = september.AddDays(10),
            By = new PersonId("P-021"),
            Reason = "the tool with this tag bears the mark 07-05",
        };
        var register = new TagRegister([first, second], [doubt]);

        // Asked for the instant of the read, not for today.
        foreach (DateTimeOffset at in new[] { march.AddDays(1), september.AddDays(1), september.AddDays(20) })
        {
            TagBinding live = register.FindLive(tag, at)!;
            Console.WriteLine($"{live}, doubted then: {register.QuarantinesOf(live).Any(quarantine => quarantine.StandsAt(at))}");
        }

        // The same identity written anew with another filter value: other words, so it is bound to nothing, and still no stranger.
        if (tag.Epc.TryGetKey(out Giai asset) && asset.Identity.TryEncode(EpcScheme.Giai96, 3, out Epc rewritten, out _))
        {
            TagId answer = TagId.FromEpc(rewritten);
            Console.WriteLine($"{answer}: bound: {register.FindLive(answer, september) is not null}, identity of {register.ToolByDecodedIdentity(answer, september)}");
        }

        // One tag on two tools at one time is refused.
        var overlap = new TagBinding { Tag = tag, Tool = new ToolId("B9-01"), From = september.AddDays(5) };
        if (!TagRegister.TryCreate([first, second, overlap], out _, out IReadOnlyList<RecordIssue> issues))
        {
            Console.WriteLine(issues[0]);
        }
        // </example>
    }
}
