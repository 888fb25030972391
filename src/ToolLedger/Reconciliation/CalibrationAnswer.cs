using System.Linq;
using ToolLedger.Calibration;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>
/// The second answer of a line. While it is not known which tool is which, the label in hand may be the wrong tool's, and both answers are unknown (trade rules,
/// property 11); where none of the tools that may be meant is ever calibrated, there is no label to mistake.
/// </summary>
internal sealed class CalibrationAnswer(ReconciliationScope scope, KitTree tree)
{
    public CalibrationStatus Of(Tool tool, ToolReads reads)
    {
        CalibrationStatus own = scope.Input.Calibration.StatusOf(tool, scope.AsOf, scope.Policy.Calibration, scope.Policy.Calendar);
        return reads.IsIdentityUnknown && (own.State != CalibrationState.NotRequired || MayBeCalibrated(reads))
            ? CalibrationStatus.OfUnknownIdentity(own.SiteDate)
            : own;
    }

    /// <summary>
    /// True unless every tool that this one may be mistaken for is named and never calibrated. A quarantine alone, and a mark that no tool has, name none: then
    /// it may be any.
    /// </summary>
    private bool MayBeCalibrated(ToolReads reads) => reads.Mismatches.Count == 0
        || reads.Mismatches.Any(mismatch => IsCalibrated(mismatch.Claimed) || mismatch.Found is not { } found || IsCalibrated(found));

    private bool IsCalibrated(ToolId id)
    {
        Tool? tool = tree.Subject.FindLine(id)?.Line.Tool
            ?? scope.Input.Kits.ManifestsWith(id, scope.AsOf).Select(manifest => manifest.FindLine(id)?.Tool).FirstOrDefault(static found => found is not null);
        return tool is { NeedsCalibration: true } || scope.Input.Calibration.IsKnown(id, scope.AsOf, scope.Policy.Calendar);
    }
}
