using System.Text.Json;
using ToolLedger.Presence;
using ToolLedger.Reconciliation;
using ToolLedger.Statistics;

namespace ToolLedger.Reports;

/// <summary>Writes what a policy with a stated risk says as numbers: whole steps of log-odds, which are exact, and probabilities rounded from them.</summary>
internal sealed class RiskWriter(Utf8JsonWriter writer, ReportVoice voice)
{
    private const int Decimals = 12;

    /// <summary>The risk of signing the kit.</summary>
    public void Write(KitRisk risk)
    {
        writer.WriteStartObject("risk");
        writer.WriteNumber("joint", RoundedUp(risk.Joint));
        writer.WriteNumber("limit", Rounded(risk.Limit));
        writer.WriteBoolean("isWithinLimit", risk.IsWithinLimit);
        writer.WriteNumber("lines", risk.LineCount);
        if (risk.HeaviestLine is { } heaviest)
        {
            writer.WriteString("heaviestLine", heaviest);
            writer.WriteNumber("jointWithoutHeaviest", RoundedUp(risk.JointWithoutHeaviest));
        }

        writer.WriteEndObject();
    }

    /// <summary>The risk of one line.</summary>
    public void Write(PresenceRisk risk)
    {
        PresenceDecision decision = risk.Decision;
        writer.WriteStartObject("risk");
        writer.WriteNumber("stepsPerUnit", PassScores.StepsPerUnit);
        writer.WriteNumber("steps", decision.Score);
        writer.WriteNumber("risk", RoundedUp(decision.Risk));
        writer.WriteNumber("exactRisk", RoundedUp(risk.ExactRisk));
        if (decision.Threshold != int.MaxValue)
        {
            writer.WriteNumber("cutSteps", decision.Prior + decision.Threshold);
        }

        writer.WriteNumber("cut", Rounded(decision.Cut));
        writer.WriteNumber("lines", risk.LineCount);
        writer.WriteNumber("absentShare", DetectionModel.Plain(risk.AbsentShare));
        if (risk.AbsentShareWhy is { } why)
        {
            writer.WritePropertyName("absentShareReason");
            ShiftReportWriter.WriteReason(writer, why, voice);
        }

        writer.WriteStartObject("corner");
        writer.WriteNumber("obscuredShare", Rounded(risk.ObscuredShare));
        writer.WriteNumber("strayShare", Rounded(risk.StrayShare));
        writer.WriteEndObject();
        writer.WriteStartArray("terms");
        foreach (PresenceTerm term in risk.Terms)
        {
            Write(term);
        }

        writer.WriteEndArray();
        if (risk.Advice is { } advice)
        {
            Write(advice);
        }

        writer.WriteEndObject();
    }

    private void Write(PresenceTerm term)
    {
        writer.WriteStartObject();
        writer.WriteString("kind", term.Kind switch
        {
            PresenceTermKind.Prior => "prior",
            PresenceTermKind.Read => "read",
            PresenceTermKind.ReadPass => "read-pass",
            PresenceTermKind.SilentPass => "silent-pass",
            _ => "silence",
        });
        writer.WriteNumber("steps", (int)(term.LogOdds * PassScores.StepsPerUnit));
        writer.WriteNumber("factor", Figures(Elementary.Exp(term.LogOdds)));
        if (term.Kind is PresenceTermKind.Prior or PresenceTermKind.Read)
        {
            writer.WriteEndObject();
            return;
        }

        if (!term.Session.IsEmpty)
        {
            writer.WriteString("session", term.Session.Value);
            writer.WriteNumber("pass", term.Pass);
            writer.WriteNumber("model", term.Model);
            writer.WriteNumber("obscuredShare", Rounded(term.ObscuredShare));
        }

        writer.WriteNumber("looks", term.Looks);
        writer.WriteNumber("reads", term.Reads);
        writer.WriteBoolean("isBounded", term.IsBounded);
        writer.WriteBoolean("isDegraded", term.IsDegraded);
        writer.WriteEndObject();
    }

    private void Write(PresenceAdvice advice)
    {
        writer.WriteStartObject("advice");
        writer.WriteString("kind", advice.Kind switch
        {
            PresenceAdviceKind.NewPasses => "new-passes",
            PresenceAdviceKind.MoreLooks => "more-looks",
            _ => "sighting",
        });
        writer.WriteNumber("passes", advice.Passes);
        writer.WriteNumber("looks", advice.Looks);
        writer.WriteNumber("chance", Rounded(advice.Chance));
        writer.WriteBoolean("isTagPoor", advice.IsTagPoor);
        writer.WriteEndObject();
    }

    /// <summary>A probability to 12 decimals: the steps beside it are exact.</summary>
    // A risk is never told as none.
    private static decimal RoundedUp(double risk)
    {
        const decimal Steps = 1_000_000_000_000;
        decimal steps = decimal.Ceiling((decimal)risk * Steps);
        return DetectionModel.Plain((steps == 0 && risk > 0 ? 1 : steps) / Steps);
    }

    private static decimal Rounded(double chance) => DetectionModel.Plain(decimal.Round((decimal)chance, Decimals));

    /// <summary>A factor between e^-64 and e^64 to six digits that count, as far as a decimal number has them.</summary>
    private static decimal Figures(double value)
    {
        const int MostDecimals = 28;
        decimal number = (decimal)value;
        decimal scale = 1;
        while (number / scale >= 1_000_000)
        {
            scale *= 10;
        }

        int decimals = 0;
        for (decimal one = 1; number < one * 100_000 && decimals < MostDecimals; one /= 10)
        {
            decimals++;
        }

        return scale > 1 ? decimal.Round(number / scale) * scale : DetectionModel.Plain(decimal.Round(number, decimals));
    }
}
