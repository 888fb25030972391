using System.Globalization;
using ToolLedger.Presence;
using ToolLedger.Reconciliation;

namespace ToolLedger.Reports;

/// <summary>Says by which rule reads account for a line, and at what risk, or that the rule states none.</summary>
internal sealed class HtmlRule(ReportVoice voice, HtmlPage page, ReconciliationResult result)
{
    internal void Put()
    {
        page.Heading(3, voice.Say(PageSentences.Rule));
        PutRule();
        if (result.Policy.Presence is not StatedRiskPolicy)
        {
            return;
        }

        string stated = Stated();
        page.Paragraph(stated.Length > 0 ? stated : voice.Say(PageSentences.RuleNoLine));
    }

    /// <summary>The stated risk of the kit as a sentence; empty where none is stated.</summary>
    internal string Stated() => RiskTable.StatedOf(result) is { } stated ? ReportVoice.Sentence(voice.Say(stated).TrimEnd('.')) : "";

    private void PutRule()
    {
        switch (result.Policy.Presence)
        {
            case CountingPolicy counting:
                page.Paragraph(voice.Say(
                    PageSentences.RuleCounting,
                    ("looks", ReportVoice.Text(counting.LooksNeeded)),
                    ("antennas", ReportVoice.Text(counting.AntennasNeeded)),
                    ("passes", ReportVoice.Text(counting.PassesNeeded)),
                    ("degraded", ReportVoice.Text(int.Max(counting.DegradedPassesNeeded, counting.PassesNeeded)))));
                break;
            case StatedRiskPolicy risk:
                DetectionModel model = risk.Model;
                page.Paragraph(voice.Say(
                    PageSentences.RuleRisk, ("limit", Percent(risk.KitRiskLimit)), ("line", Percent(risk.LineRiskMax)), ("factor", Figure(risk.RobustnessFactor))));
                if (risk.Models.Count > 0)
                {
                    new HtmlModels(voice, page, result, risk).Put();
                    break;
                }

                page.Paragraph(voice.Say(
                    PageSentences.RuleModel,
                    ("absent", Percent(risk.AbsentShare)),
                    ("obscured", Percent(model.ObscuredShare)),
                    ("a", Figure(model.Present.A)),
                    ("b", Figure(model.Present.B)),
                    ("stray", Percent(model.StrayShare)),
                    ("strayA", Figure(model.Stray.A)),
                    ("strayB", Figure(model.Stray.B))));
                break;
        }
    }

    internal static string Percent(decimal share) => Figure(share * 100);

    internal static string Figure(decimal value) => value.ToString("0.#########", CultureInfo.InvariantCulture);
}
