using System.Collections.Generic;
using System.Linq;
using ToolLedger.Kits;

namespace ToolLedger.Reports;

/// <summary>The totals of a manifest in sentences.</summary>
internal sealed class ReportTotals(ReportVoice voice, ManifestTotals totals)
{
    private const int Named = 20;

    internal string Heading() => voice.Say(
        ReportSentences.Unseen,
        ("items", Items(totals.Kit)),
        ("tagged", ReportVoice.Text(totals.Kit.TaggedLineCount)),
        ("total", ReportVoice.Text(totals.Kit.LineCount)));

    internal IEnumerable<string> Sentences()
    {
        if (totals.Locations.Any(static place => place.Location is not null))
        {
            yield return voice.Say(ReportSentences.TotalsPlaces, ("places", voice.List(totals.Locations.Select(Place), totals.Locations.Count, Named)));
        }

        if (totals.Unresolved.Count > 0)
        {
            yield return voice.Say(
                ReportSentences.TotalsUnresolved,
                ("what", voice.List(totals.Unresolved.Select(static line => line.Description), totals.Unresolved.Count, Named)));
        }
    }

    private string Place(ManifestTotal total) => voice.Say(
        ReportSentences.TotalsPlace,
        ("place", total.Location ?? voice.Say(ReportSentences.TotalsNoPlace)),
        ("items", Items(total)));

    private string Items(ManifestTotal total)
        => total.Items.Count == 0 ? "0" : voice.List(total.Items.Select(static item => item.ToString()), total.Items.Count, Named);
}
