using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>What a supervisor reads at the end of a shift and signs: is the read good, what is settled and by whom, what is open and what settles it, what no reader
/// can see, what is known of exposed equipment, who may sign and who did, calibration as a second answer, what changed after sign-off, what else was read; then cautions,
/// and the digests of everything it rests on.</summary>
/// <remarks>
/// A record-keeping aid: it does not decide that equipment is safe, and it never says missing, lost or found. The same input gives the same bytes under any culture, time
/// zone and machine. Every status is a word. Immutable and thread-safe.
/// </remarks>
public sealed class ShiftReport
{
    /// <summary>The narrowest text, in columns.</summary>
    public const int MinWidth = 40;

    /// <summary>The widest text, in columns.</summary>
    public const int MaxWidth = 400;

    /// <summary>The schema of the JSON form.</summary>
    public const string Schema = "toolledger/shift-report/1";

    private readonly ShiftReportInput input;
    private readonly IReadOnlyList<SessionTally> sessions;
    private readonly IReadOnlyList<Reads.ReadSession> foreign;

    /// <summary>Makes a report.</summary>
    /// <param name="input">What it shows.</param>
    /// <exception cref="ArgumentNullException">The input is null.</exception>
    /// <exception cref="ArgumentException">There is no result to report, or a kit stands twice, or a gate is not that of a kit of the report, or the rules are not those of a result.</exception>
    public ShiftReport(ShiftReportInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        if (input.Results.Count == 0)
        {
            throw new ArgumentException("A report needs the result of at least one kit.", nameof(input));
        }

        if (input.Results.DistinctBy(static result => result.Manifest.Id).Count() < input.Results.Count)
        {
            throw new ArgumentException("A report shows every kit once; a kit stands twice among the results.", nameof(input));
        }

        HashSet<KitId> open = [.. input.Results.Select(static result => result.Manifest.Id)];
        if (input.Gates.Any(gate => !open.Remove(gate.Kit)))
        {
            throw new ArgumentException("A gate is answered once for a kit of the report; one names another kit, or a kit stands twice among the gates.", nameof(input));
        }

        if (input.Rules.Count > 0 && !PolicyRules.AreThoseOf(input.Results, input.Rules))
        {
            throw new ArgumentException("The rules handed in must be those that every result was made with: by its digest, a result has others.", nameof(input));
        }

        this.input = input;
        sessions = SessionTally.Of(input.Results);
        HashSet<Reads.SessionId> told = [.. sessions.Select(static tally => tally.Session.Id)];
        foreign = [.. input.Sessions.Where(session => !told.Contains(session.Id))
            .OrderBy(static session => session.From).ThenBy(static session => session.Id.Value, StringComparer.Ordinal)];
    }

    /// <summary>Writes the report as plain text: lines ended by LF, no colour, no tab, no control character.</summary>
    /// <param name="width">The most columns of a line, 40 to 400. The default is 100.</param>
    /// <returns>The text.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The width is outside the range.</exception>
    public string ToText(int width = 100) => width is >= MinWidth and <= MaxWidth
        ? new ReportComposer(input, sessions, foreign, new TextPage(width)).Compose()
        : throw new ArgumentOutOfRangeException(nameof(width), width, "The width of a text must be 40 to 400 columns.");

    /// <summary>Writes the report as Markdown with tables in pipe form; every text that came in is escaped.</summary>
    /// <returns>The Markdown.</returns>
    public string ToMarkdown() => new ReportComposer(input, sessions, foreign, new MarkdownPage()).Compose();

    /// <summary>Writes the report as one HTML page that needs nothing else: no script, no font, no picture from elsewhere, and its own policy forbids it to load any. Beside the sentences of the text it draws
    /// the looks at every tagged line over antennas and passes, with the same in words, and shows the terms of a stated risk.</summary>
    /// <param name="language">The language of <see cref="ShiftReportInput.Wording"/> as a language tag (BCP 47): letters, digits and hyphens, 2 to 35. The default is "en".</param>
    /// <returns>The page, lines ended by LF. At most 200,000 looks are drawn; what is left out is said.</returns>
    /// <exception cref="ArgumentNullException">The language is null.</exception>
    /// <exception cref="ArgumentException">The language is no such tag.</exception>
    public string ToHtml(string language = "en")
    {
        ArgumentNullException.ThrowIfNull(language);
        return HtmlDocument.IsLanguage(language)
            ? new HtmlComposer(input, sessions, foreign).Compose(language)
            : throw new ArgumentException("A language is named by 2 to 35 letters, digits and hyphens.", nameof(language));
    }

    /// <summary>Writes the report as JSON: indented UTF-8 in a fixed order of members, with whole digests and every read that is not of the kits.</summary>
    /// <returns>The bytes.</returns>
    public byte[] ToJson() => RecordJson.Write(new ShiftReportWriter(input, sessions, foreign).Write);
}
