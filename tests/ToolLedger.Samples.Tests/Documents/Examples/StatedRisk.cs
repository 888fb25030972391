using System.IO;
using System.Linq;
// <example>
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Tools;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The second example of docs/presence.md: what two passes prove of one tool of a kit of twenty.</summary>
internal static class StatedRisk
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        _ = File;
        // <example>
        // An invented station: a tag that is there is covered in 5 of 100 passes, and 5 of 100 tools that are not there lie near enough to be read.
        var policy = new StatedRiskPolicy
        {
            Model = new DetectionModel(obscuredShare: 0.05m, present: new BetaRate(2.5m, 2.5m), strayShare: 0.05m, stray: new BetaRate(0.6m, 8)),
            KitRiskLimit = 0.001m,
        };

        void Judge(string what, params int[] reads)
        {
            PresenceJudgement judgement = policy.Judge(new PresenceEvidence
            {
                Tag = TagId.Parse("epc:3414257BF400000000000067"),
                Passes = [.. reads.Select((count, index) => new PassEvidence(new SessionId("S-1"), index + 1, IsDegraded: false, count, LookLimit: 20))],
                Antennas = [],
                HasTid = true,
                KitLineCount = 20,
            });
            Console.WriteLine($"{what}: {judgement.State}\n  {string.Join("\n  ", judgement.Reasons)}");
        }

        Judge("Read in both passes", 9, 7);
        Judge("Read in one", 6, 0);
        Judge("Silent", 0, 0);

        PresencePlan plan = policy.Plan(passes: 3, looks: 20, lineCount: 20);
        Console.WriteLine($"Three passes settle {plan.ChanceSettled:P1} of the tools that are there.");
        // </example>
    }
}
