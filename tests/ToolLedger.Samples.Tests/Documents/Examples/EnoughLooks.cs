using System.IO;
using System.Linq;
// <example>
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Tools;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The example of docs/presence.md: what the default policy says of five pieces of evidence, and what a stricter one says.</summary>
internal static class EnoughLooks
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        _ = File;
        // <example>
        // Looks of one tag: in each pass so many, spread over so many antennas of one station.
        PresenceEvidence Looks(int[] byPass, int antennas, bool isDegraded = false, TagHistory? history = null) => new()
        {
            Tag = TagId.Parse("epc:3414257BF400000000000067"),
            Passes = [.. byPass.Select((looks, index) => new PassEvidence(new SessionId("S-1"), index + 1, isDegraded, looks, LookLimit: 240))],
            Antennas = [.. Enumerable.Range(1, antennas).Select(port => new AntennaEvidence(new StationId("R1"), new AntennaPort((byte)port), isDegraded, 1))],
            HasTid = true,
            History = history,
        };

        var policy = new CountingPolicy(); // 3 looks, and 2 antennas or 2 passes
        void Judge(string what, PresenceEvidence evidence)
        {
            PresenceJudgement judgement = policy.Judge(evidence);
            Console.WriteLine($"{what}: {judgement.State}: {string.Join("; ", judgement.Reasons)}");
        }

        Judge("50 looks from one side", Looks([50], antennas: 1));
        Judge("3 looks from two sides", Looks([3], antennas: 2));
        Judge("3 looks in two passes", Looks([2, 1], antennas: 1));
        Judge("the same, an antenna broken", Looks([3], antennas: 2, isDegraded: true));
        Judge("silent, usually heard", Looks([0, 0], antennas: 0, history: new TagHistory(sessionsPresented: 20, sessionsRead: 20)));
        policy = new CountingPolicy { LooksNeeded = 6, PassesNeeded = 3 };
        Judge("a stricter site", Looks([2, 1], antennas: 1));
        // </example>
    }
}
