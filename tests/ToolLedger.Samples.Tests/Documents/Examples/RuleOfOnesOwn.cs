using System.IO;
// <example>
using ToolLedger.Kits;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Testing.Laws;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The example of docs/reconciliation.md: a rule that a site adds, and how it is put to the laws.</summary>
internal static class RuleOfOnesOwn
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        _ = File;
        // <example>
        var settings = new LawSettings { CaseCount = 200, Seed = 1 };
        LawReport good = ReconciliationLaws.Check(new MeasuringToolsNeedEyes(), settings);
        Console.WriteLine(good.Holds ? "measuring tools need eyes: every law holds" : good.ToString());

        LawReport bad = ReconciliationLaws.Check(new SuspectsEagerTags(), settings);
        foreach (ReconciliationLaw law in bad.Broken)
        {
            Console.WriteLine($"suspects eager tags: breaks {law}");
        }
        // </example>
    }

    // <example>
    // A site's own rule: what has to be calibrated is handled and looked at, so that its label is seen as well. Reads alone do not settle it.
    private sealed class MeasuringToolsNeedEyes : IReconciliationRule
    {
        private static readonly ReasonKind NotSeen = new("site.measuring-tool-not-seen", "a measuring tool; nobody has looked at it yet");
        private static readonly ReasonKind Look = new("site.look-at-it", "look at it, read its mark {mark} and its label");

        public string Name => "site-measuring-tools-need-eyes";

        public string Version => "1";

        public string Settings => "";

        public Verdict Judge(in LineFacts facts)
        {
            if (facts.Line is not ToolLine { Tool: { NeedsCalibration: true } tool } || facts.Sighting is not null)
            {
                return Verdict.NoObjection; // one rule only withholds; the others still have their say
            }

            var step = new NextStep(NextStepKind.SightTool, new Reason(Look, ("mark", tool.Mark ?? "none on the manifest")));
            return Verdict.Withhold(LineState.Weak, new Reason(NotSeen), step);
        }
    }
    // </example>

    // <example>
    // It means well, and turns the evidence around: with every further read of a tool it believes less that the tool is there.
    private sealed class SuspectsEagerTags : IReconciliationRule
    {
        private static readonly ReasonKind TooOften = new("site.too-often", "its tag was seen suspiciously often");
        private static readonly ReasonKind Look = new("site.look-at-it", "look at it");

        public string Name => "site-suspects-eager-tags";

        public string Version => "1";

        public string Settings => "";

        public Verdict Judge(in LineFacts facts) => facts.BestEvidence is { LookCount: > 5 }
            ? Verdict.Withhold(LineState.Weak, new Reason(TooOften), new NextStep(NextStepKind.SightTool, new Reason(Look)))
            : Verdict.NoObjection;
    }
    // </example>
}
