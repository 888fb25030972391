using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>What became known of a kit after an instant, such as that of its first signature.</summary>
internal static class LaterEvents
{
    /// <summary>A count or sighting cannot be among these: a signature older than one does not count at all, and is told under what was noticed.</summary>
    internal static IEnumerable<Reason> Than(DateTimeOffset signed, ReportVoice voice, ReconciliationResult result)
    {
        foreach (KitOpening opening in result.Openings.Where(opening => opening.At > signed))
        {
            yield return new Reason(ReportSentences.ChangedOpening, ("what", ExposureSection.Say(voice, opening)));
        }

        foreach (SessionSummary summary in result.Sessions.Where(summary => summary.Session.To > signed && summary.Session.To <= result.AsOf))
        {
            yield return new Reason(ReportSentences.ChangedSession, ("session", summary.Session.Id.Value), ("at", voice.Time(summary.Session.To)));
        }

        foreach (LineNotExpected line in result.NotExpected.Where(line => line.Annotation?.SignedBy.At > signed))
        {
            Signature by = line.Annotation!.SignedBy;
            yield return new Reason(ReportSentences.ChangedAnnotation, ("line", line.Label), ("at", voice.Time(by.At)), ("by", by.By.Value));
        }

        foreach (UnlistedItemReport report in result.UnlistedItems.Where(report => report.At > signed))
        {
            yield return new Reason(ReportSentences.ChangedUnlisted, ("what", ExposureSection.Say(voice, report)));
        }
    }
}
