using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Reconciliation;

namespace ToolLedger.Testing.Laws;

/// <summary>An answer as text, for comparison.</summary>
internal static class ResultText
{
    /// <summary>Conclusions, bases, reasons, next steps and figures of every line and of the kit. Calibration is not among them.</summary>
    public static string Accounting(ReconciliationResult result) => string.Join('\n', result.Lines.Select(Line).Append(Kit(result)));

    /// <summary>The second answer, line by line.</summary>
    public static string Calibration(ReconciliationResult result) => string.Join('\n', result.Lines.Select(Calibration));

    public static string Calibration(LineConclusion line)
        => string.Create(CultureInfo.InvariantCulture, $"line {line.Line.Number} calibration {line.Calibration?.State.ToString() ?? "none"}: {line.Calibration?.Reason}");

    /// <summary>Everything but the digests of the inputs.</summary>
    public static string Whole(ReconciliationResult result) => string.Join('\n',
        new[] { Accounting(result), Calibration(result), "policy " + result.PolicyDigest }
            .Concat(result.Findings.Select(static finding => "finding " + finding.Level + ": " + finding.Reason))
            .Concat(result.Reads.Select(static read => string.Create(CultureInfo.InvariantCulture, $"read {read.Session} {read.Tag} {read.Kind} {read.ReadCount}: {read.Reason}")))
            .Append("persons " + string.Join(", ", result.Persons)));

    private static string Line(LineConclusion line)
    {
        LineEvidence evidence = line.Evidence;
        return string.Create(CultureInfo.InvariantCulture, $"{line}, also {string.Join(",", line.OtherBases)}, because {Join(line.Reasons)}; next {line.Next}; ")
            + string.Create(CultureInfo.InvariantCulture, $"looks {evidence.LookCount} antennas {evidence.AntennaCount} passes {evidence.PassCount} strongest {evidence.Strongest} last {evidence.LastSeen:O} ")
            + string.Create(CultureInfo.InvariantCulture, $"counted {evidence.Counted} by {evidence.By} at {evidence.At:O} witness {evidence.Witness} persons {string.Join(",", evidence.Persons)} epc only {line.IsEpcOnly} difference {line.IsPositiveDifference}");
    }

    private static string Kit(ReconciliationResult result) => result.Kit + " because " + Join(result.Kit.Reasons);

    private static string Join<T>(IEnumerable<T> parts) => string.Join("; ", parts);
}
