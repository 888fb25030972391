using System.Globalization;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>Builds the next steps of the built-in rules.</summary>
internal static class Steps
{
    public static NextStep PresentAgain(ManifestLine line) => new(NextStepKind.PresentAgain, new Reason(ReconciliationReasons.StepPresentAgain, Mark(line)));

    public static NextStep LookInKit(ManifestLine line, string kit) => new(NextStepKind.LookInKit, new Reason(ReconciliationReasons.StepLookInKit, ("kit", kit), Mark(line)));

    public static NextStep SecondPass(ManifestLine line) => new(NextStepKind.SecondPass, new Reason(ReconciliationReasons.StepSecondPass, Mark(line)));

    /// <summary>What a policy with a stated risk proposes, in numbers.</summary>
    public static NextStep ByAdvice(ManifestLine line, PresenceRisk risk, PresenceAdvice advice)
    {
        // A pass settles only what is there; where that is not likely by the reads, a look for the tool comes first.
        bool isUnlikely = (1 - risk.Decision.Risk) * advice.Chance < 0.5;
        (string, string) looks = ("looks", LineConclusion.Text(advice.Looks)), percent = ("percent", LineConclusion.Text((int)(advice.Chance * 100)));
        return advice switch
        {
            { IsTagPoor: true } => QualifyTag(line),
            { Kind: PresenceAdviceKind.NewPasses } => new(
                NextStepKind.PresentAgain, new Reason(isUnlikely ? RiskReasons.StepLookOrPass : RiskReasons.StepNewPass, ("passes", LineConclusion.Text(advice.Passes)), looks, percent, Mark(line))),
            { Kind: PresenceAdviceKind.MoreLooks } => new(NextStepKind.PresentAgain, new Reason(RiskReasons.StepMoreLooks, looks, percent, Mark(line))),
            _ => SightTool(line),
        };
    }

    public static NextStep QualifyTag(ManifestLine line) => new(NextStepKind.SightTool, new Reason(RiskReasons.StepQualifyTag, Mark(line)));

    public static NextStep SightTool(ManifestLine line) => new(NextStepKind.SightTool, new Reason(ReconciliationReasons.StepSightTool, Mark(line)));

    public static NextStep CountItems(ManifestLine line) => new(NextStepKind.CountItems, new Reason(ReconciliationReasons.StepCountItems, HowMany(line), WhatToCount(line)));

    public static NextStep CountAgain(ManifestLine line) => new(NextStepKind.CountItems, new Reason(PeopleReasons.StepCountAgain, HowMany(line), WhatToCount(line)));

    public static NextStep SearchShortage(ManifestLine line) => new(NextStepKind.SearchShortage, new Reason(ReconciliationReasons.StepSearchShortage, ("what", line.Description)));

    public static NextStep ResolveSurplus(ManifestLine line) => new(NextStepKind.ResolveSurplus, new Reason(ReconciliationReasons.StepResolveSurplus, ("what", line.Description)));

    public static NextStep SettleIdentity(ManifestLine line) => new(NextStepKind.SettleIdentity, new Reason(ReconciliationReasons.StepSettleIdentity, Mark(line)));

    public static NextStep PresentAtStation(ManifestLine line) => new(NextStepKind.PresentAtStation, new Reason(ReconciliationReasons.StepPresentAtStation, Mark(line)));

    public static NextStep SettleSubKit(string lines, int count)
        => new(NextStepKind.SettleSubKit, new Reason(ReconciliationReasons.StepSettleSubKit, ("lines", lines), ("count", LineConclusion.Text(count))));

    public static NextStep HandInManifest(SubKitLine line)
        => new(NextStepKind.HandInManifest, new Reason(ReconciliationReasons.StepHandInManifest, ("kit", line.Kit.Value), ("revision", LineConclusion.Text(line.Revision))));

    /// <summary>The number on the manifest; single items need no unit.</summary>
    private static (string Name, string Value) HowMany(ManifestLine line)
        => ("amount", line.Expected.Unit == Unit.Each ? line.Expected.Amount.ToString(CultureInfo.InvariantCulture) : line.Expected.ToString());

    private static (string Name, string Value) WhatToCount(ManifestLine line) => ("what", line.Description);

    private static (string Name, string Value) Mark(ManifestLine line)
        => ("mark", line.Tool?.Mark is { } mark ? mark : "none on the manifest");
}
