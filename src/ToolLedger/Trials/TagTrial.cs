using System;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Trials;

/// <summary>How often a tag on a tool was presented in one setting, and in how many of these presentations it was read.</summary>
/// <remarks>A presentation is one whole showing of the tool as it is shown at work, not one answer of the tag: answers of one showing are no trials of their own. Immutable and thread-safe; compared by reference.</remarks>
public sealed class TagTrial
{
    /// <summary>The most presentations of one trial.</summary>
    public const int MaxPresented = 1_000_000;

    /// <summary>The longest description of a setting, in characters.</summary>
    public const int MaxSettingLength = 64;

    /// <summary>Records a trial.</summary>
    /// <param name="tag">The tag; not empty.</param>
    /// <param name="tool">The tool it sat on; not empty.</param>
    /// <param name="presented">Presentations; 1 to 1,000,000.</param>
    /// <param name="read">Those in which it was read; 0 to <paramref name="presented"/>.</param>
    /// <param name="at">When the trial was made, or ended.</param>
    /// <exception cref="ArgumentException">The tag or the tool is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number or the year is out of its range.</exception>
    public TagTrial(TagId tag, ToolId tool, int presented, int read, DateTimeOffset at)
    {
        Tag = tag.IsEmpty ? throw new ArgumentException("A trial needs a tag.", nameof(tag)) : tag;
        Tool = tool.IsEmpty ? throw new ArgumentException("A trial needs the tool that the tag sat on.", nameof(tool)) : tool;
        Presented = presented is >= 1 and <= MaxPresented ? presented : throw new ArgumentOutOfRangeException(nameof(presented), presented, "The presentations must be 1 to 1,000,000.");
        Read = read >= 0 && read <= presented ? read : throw new ArgumentOutOfRangeException(nameof(read), read, "The presentations with a read must be 0 to all of them.");
        At = RecordTime.Require(at, nameof(at));
    }

    /// <summary>The tag.</summary>
    public TagId Tag { get; }

    /// <summary>The tool it sat on.</summary>
    public ToolId Tool { get; }

    /// <summary>Presentations.</summary>
    public int Presented { get; }

    /// <summary>Those in which the tag was read.</summary>
    public int Read { get; }

    /// <summary>When the trial was made, or ended.</summary>
    public DateTimeOffset At { get; }

    /// <summary>Who made it; the default value means "not stated".</summary>
    public PersonId By { get; init; }

    /// <summary>Whether the tool lay in its full kit, closed as it is when it is presented. On a bench a tag meets neither the metal around it nor the lid.</summary>
    /// <value>The default is false: on the bench. Such a trial qualifies nothing.</value>
    public bool IsInFullKit { get; init; }

    /// <summary>The setting in the words of the site, such as "wet" or "worst way round"; 1 to 64 printable characters, or null for the usual one.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public string? Setting { get; init => field = RecordText.RequireOrNull(value, MaxSettingLength, nameof(value)); }

    /// <summary>The antenna alone that counted, or the default for the station as a whole. A trial of one antenna is told and qualifies nothing.</summary>
    public AntennaPort Antenna { get; init; }

    /// <summary>Tag, tool, setting and figures.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() =>
        $"{Tool}, {Tag}: read in {Read.ToString(System.Globalization.CultureInfo.InvariantCulture)} of {CountText.Of(Presented, "presentation")}, {(IsInFullKit ? "in its full kit" : "on the bench")}{(Setting is null ? "" : ", " + Setting)}{(Antenna == default ? "" : $", antenna {Antenna}")}, at {RecordTime.ToText(At)}";
}
