using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reports;

/// <summary>Says things in the words of the host and by the clock of the site.</summary>
internal sealed class ReportVoice(Wording wording, SiteCalendar calendar, string? today = null)
{
    /// <summary>The same voice, which leaves out the date of times of that day.</summary>
    internal ReportVoice On(DateTimeOffset at) => new(wording, calendar, Day(at) + " ");

    internal string Say(Reason reason) => wording.Say(today is null ? reason : WithoutDate(reason, today));

    internal string Say(ReasonKind kind, params ReadOnlySpan<(string Name, string Value)> values) => wording.Say(new Reason(kind, values));

    /// <summary>Several reasons one after the other, without the last full stop: phrases joined by semicolons, sentences by full stops.</summary>
    internal string Join(IEnumerable<Reason> reasons)
    {
        var joined = new StringBuilder();
        foreach (Reason reason in reasons)
        {
            string text = Say(reason).TrimEnd('.');
            if (joined.Length > 0)
            {
                joined.Append(text.Length > 0 && char.IsUpper(text[0]) ? ". " : "; ");
            }

            joined.Append(text);
        }

        return joined.ToString();
    }

    /// <summary>A phrase as a sentence of its own.</summary>
    internal static string Sentence(string phrase) => phrase.Length == 0 ? phrase : char.ToUpperInvariant(phrase[0]) + phrase[1..] + ".";

    /// <summary>A time as the site's clocks show it, to the second, with its offset.</summary>
    internal string Time(DateTimeOffset at) => WithoutDate(calendar.ToSite(at).ToString("yyyy-MM-dd HH:mm:sszzz", CultureInfo.InvariantCulture), today);

    /// <summary>An instant by the site's clocks.</summary>
    internal DateTimeOffset Clock(DateTimeOffset at) => calendar.ToSite(at);

    internal string Day(DateTimeOffset at) => calendar.DateAt(at).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>Some of many, and how many more there are.</summary>
    internal string List(IEnumerable<string> items, int count, int limit) =>
        string.Join(", ", items.Take(limit)) + (count > limit ? ", " + Say(ReportSentences.AndMore, ("count", Text(count - limit))) : "");

    /// <summary>What stands on a line: its description and, for a tool, the mark to look for.</summary>
    internal string What(ManifestLine line) => line is SetLine set
        ? Say(ReportSentences.SetIn, ("container", What(set.Container)), ("contents", set.Contents))
        : line is SubKitLine { Case: { } part }
        ? Say(ReportSentences.SubKitIn, ("case", What(part)), ("kit", line.Description))
        : line.Tool is { } tool ? What(tool) : line.Description;

    /// <summary>A tool and the mark to look for.</summary>
    internal static string What(Tool tool) => tool.Mark is { } mark ? $"{tool.Description} [{mark}]" : tool.Description;

    internal static string Text(long number) => number.ToString(CultureInfo.InvariantCulture);

    private static string WithoutDate(string time, string? today) => today is not null && time.StartsWith(today, StringComparison.Ordinal) ? time[today.Length..] : time;

    /// <summary>The reason with its times cut; only values named "at" are times, anything else may be a name that looks like one.</summary>
    private static Reason WithoutDate(Reason reason, string today) => new(
        reason.Kind,
        [.. reason.Values.Select(pair => (pair.Key, string.Equals(pair.Key, "at", StringComparison.Ordinal) ? WithoutDate(pair.Value, today) : pair.Value))]);
}
