using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation.Rules;

/// <summary>A box is not its contents: a sub-kit is accounted for when its case and every line inside are.</summary>
internal sealed class SubKitRule : IReconciliationRule
{
    private const int LinesNamed = 20;

    public string Name => "sub-kit";

    public string Version => "1";

    public string Settings => "";

    public Verdict Judge(in LineFacts facts)
    {
        if (facts.Line is not SubKitLine line)
        {
            return Verdict.NoObjection;
        }

        List<LineConclusion> inside = [.. facts.Inner.SelectMany(static inner => inner.WithInner())];
        List<LineConclusion> open = [.. inside.Where(static inner => !inner.IsAccounted)];
        List<LineConclusion> different = [.. open.Where(static inner => inner.IsPositiveDifference && !inner.Inner.Any(static deeper => deeper.IsPositiveDifference))];
        if (different.Count > 0)
        {
            return Verdict.Withhold(
                LineState.Partial,
                [new Reason(ReconciliationReasons.SubKitDiffers, ("lines", Labels(different)), ("count", LineConclusion.Text(different.Count)))],
                Steps.SettleSubKit(Labels(open), open.Count),
                isPositiveDifference: true);
        }

        if (facts.SubKitDoubt is { } doubt)
        {
            return Verdict.Withhold(LineState.NotAssessed, doubt, Steps.HandInManifest(line));
        }

        if (inside.Count == 0 && line.Case is null)
        {
            return Verdict.Withhold(LineState.NotAssessed, new Reason(ReconciliationReasons.SubKitNothingExpected), Steps.HandInManifest(line));
        }

        if (open.Count == 0)
        {
            return Verdict.NoObjection;
        }

        // Nothing of it is shown: then it stands where the least known of its lines does.
        bool isPartShown = facts.Bases.Count > 0 || open.Count < inside.Count;
        return Verdict.Withhold(
            isPartShown ? LineState.Partial : open.Min(static inner => inner.State),
            new Reason(
                ReconciliationReasons.SubKitOpen,
                ("open", open.Count.ToString(CultureInfo.InvariantCulture)),
                ("total", inside.Count.ToString(CultureInfo.InvariantCulture))),
            Steps.SettleSubKit(Labels(open), open.Count));
    }

    private static string Labels(List<LineConclusion> lines) =>
        string.Join(", ", lines.Take(LinesNamed).Select(static line => line.Label))
        + (lines.Count > LinesNamed ? ", and " + (lines.Count - LinesNamed).ToString(CultureInfo.InvariantCulture) + " more" : "");
}
