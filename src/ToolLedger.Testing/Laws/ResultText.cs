using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using ToolLedger.Reconciliation;

namespace ToolLedger.Testing.Laws;

/// <summary>An answer as text, for comparison.</summary>
internal static class ResultText
{
    /// <summary>Conclusions, bases, reasons, next steps and figures of every line and of the kit. Calibration is not among them.</summary>
    public static string Accounting(ReconciliationResult result) => string.Join('\n', result.AllLines.Select(Line).Concat(result.NotExpected.Select(static line => $"line {line.Label} not expected: {line.Reason}")).Append(Kit(result)));

    /// <summary>The second answer, line by line.</summary>
    public static string Calibration(ReconciliationResult result) => string.Join('\n', result.AllLines.Select(Calibration));

    public static string Calibration(LineConclusion line)
        => string.Create(CultureInfo.InvariantCulture, $"line {line.Label} calibration {(line.Calibration is { } status ? $"{status.State}: {status.Reason}" : "none")}");

    /// <summary>Everything but the digests of the inputs.</summary>
    public static string Whole(ReconciliationResult result) => string.Join('\n',
        new[] { Accounting(result), Calibration(result), "policy " + result.PolicyDigest }
            .Concat(result.Findings.Select(static finding => "finding " + finding.Level + ": " + finding.Reason))
            .Concat(result.Reads.Select(static read => string.Create(CultureInfo.InvariantCulture, $"read {read.Session} {read.Tag} {read.Kind} {read.ReadCount}: {read.Reason}")))
            .Append("persons " + string.Join(", ", result.Persons)));

    /// <summary>The conclusion of one line with its reasons, its next step and its figures.</summary>
    public static string Line(LineConclusion line)
    {
        LineEvidence evidence = line.Evidence;
        var text = new StringBuilder(line.ToString());
        Add(text, ", also ", string.Join(", ", line.OtherBases));
        Add(text, ", because ", Join(line.Reasons));
        Add(text, "; next: ", line.Next?.ToString());
        text.Append(CultureInfo.InvariantCulture, $"; looks {evidence.LookCount} antennas {evidence.AntennaCount} passes {evidence.PassCount}");
        Add(text, " not counted ", evidence.LooksNotCounted > 0 ? evidence.LooksNotCounted.ToString(CultureInfo.InvariantCulture) : null);
        Add(text, " strongest ", evidence.Strongest?.ToString());
        Add(text, " last ", Text(evidence.LastSeen));
        Add(text, " counted ", evidence.Counted?.ToString());
        Add(text, " by ", evidence.By?.ToString());
        Add(text, " at ", Text(evidence.At));
        Add(text, " witness ", evidence.Witness?.ToString());
        Add(text, " persons ", string.Join(", ", evidence.Persons));
        return text.Append(line.IsEpcOnly ? ", EPC only" : "").Append(line.IsPositiveDifference ? ", a difference" : "").ToString();
    }

    /// <summary>Nothing is written of what there is nothing of.</summary>
    private static void Add(StringBuilder text, string what, string? value)
    {
        if (!string.IsNullOrEmpty(value))
        {
            text.Append(what).Append(value);
        }
    }

    private static string? Text(DateTimeOffset? time) => time?.ToString("O", CultureInfo.InvariantCulture);

    /// <summary>The conclusion of the kit with its reasons.</summary>
    public static string Kit(ReconciliationResult result)
        => result.Kit.Reasons.Count == 0 ? $"{result.Kit}" : $"{result.Kit} because {Join(result.Kit.Reasons)}";

    private static string Join<T>(IEnumerable<T> parts) => string.Join("; ", parts);
}
