using System;
using System.Collections.Generic;
using System.Globalization;
using System.Text;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>What stands on the margins of printed pages (CSS Paged Media Level 3, 5): the kit, its instant and the digest of its result, and the number of the page.</summary>
internal sealed class HtmlPrint(ReportVoice voice)
{
    // Stand in a sentence where a counter is put.
    private const string PageMark = "<page>";
    private const string PagesMark = "<pages>";

    internal string Rules(IReadOnlyList<HtmlKit> kits)
    {
        var rules = new StringBuilder();
        rules.Append("@page{@bottom-right{content:").Append(Number()).Append("}}\n");
        for (int index = 0; index < kits.Count; index++)
        {
            Reconciliation.ReconciliationResult result = kits[index].Result;
            string head = voice.Say(
                PageSentences.PrintedHead,
                ("kit", SafeText.Excerpt(result.Manifest.Id.Value)),
                ("revision", ReportVoice.Text(result.Manifest.Revision)),
                ("at", voice.Time(result.AsOf)),
                ("digest", kits[index].Digest.ToShortString()));
            rules.Append(CultureInfo.InvariantCulture, $"@page kit-{index + 1}{{@top-left{{content:{HtmlText.StyleString(head)}}}}}\n.kit-{index + 1}{{page:kit-{index + 1}}}\n");
        }

        return rules.ToString();
    }

    /// <summary>The number of the page in the words of the host: what stands for the numbers in the string is cut out of it.</summary>
    private string Number() => HtmlText.StyleString(voice.Say(PageSentences.PrintedNumber, ("page", PageMark), ("pages", PagesMark)))
        .Replace(Inside(PageMark), "\" counter(page) \"", StringComparison.Ordinal)
        .Replace(Inside(PagesMark), "\" counter(pages) \"", StringComparison.Ordinal);

    private static string Inside(string mark) => HtmlText.StyleString(mark)[1..^1];
}
