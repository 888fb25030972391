using System;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Presence;

/// <summary>What was counted of one tag on one tool over past sessions, so that more can be added to it later.</summary>
/// <remarks>Immutable and thread-safe; compared by reference.</remarks>
public sealed class TagHistoryEntry
{
    /// <summary>The most sessions that are counted; a history of so many says all it can.</summary>
    public const int MaxSessionCount = 65_535;

    /// <summary>Sessions with a strength that make a baseline (ours): fewer may all have been lucky ones.</summary>
    public const int BaselineSessionCount = 5;

    /// <summary>Counts a tag.</summary>
    /// <param name="tag">The tag; not empty.</param>
    /// <param name="tool">The tool it is on; not empty. On another tool a tag begins anew.</param>
    /// <param name="sessionsPresented">Sessions in which it was certainly presented, 0 to 65,535.</param>
    /// <param name="sessionsRead">Those in which it was read, 0 to <paramref name="sessionsPresented"/>.</param>
    /// <param name="strengthCount">Those with a strength, 0 to <paramref name="sessionsRead"/>.</param>
    /// <param name="strengthSumCentiDbm">The sum of the strongest looks of those, in hundredths of dBm; 0 where there are none.</param>
    /// <exception cref="ArgumentException">The tag or the tool is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public TagHistoryEntry(TagId tag, ToolId tool, int sessionsPresented, int sessionsRead, int strengthCount, int strengthSumCentiDbm)
    {
        Tag = tag.IsEmpty ? throw new ArgumentException("A history needs a tag.", nameof(tag)) : tag;
        Tool = tool.IsEmpty ? throw new ArgumentException("A history needs a tool.", nameof(tool)) : tool;
        SessionsPresented = InRange(sessionsPresented, MaxSessionCount, nameof(sessionsPresented));
        SessionsRead = InRange(sessionsRead, sessionsPresented, nameof(sessionsRead));
        StrengthCount = InRange(strengthCount, sessionsRead, nameof(strengthCount));
        StrengthSumCentiDbm = strengthSumCentiDbm >= strengthCount * short.MinValue && strengthSumCentiDbm <= strengthCount * short.MaxValue
            ? strengthSumCentiDbm
            : throw new ArgumentOutOfRangeException(nameof(strengthSumCentiDbm), strengthSumCentiDbm, "So many strengths cannot have that sum.");
    }

    /// <summary>The tag.</summary>
    public TagId Tag { get; }

    /// <summary>The tool it is on.</summary>
    public ToolId Tool { get; }

    /// <summary>Sessions in which it was certainly presented.</summary>
    public int SessionsPresented { get; }

    /// <summary>Those of them in which it was read.</summary>
    public int SessionsRead { get; }

    /// <summary>Those of them in which a strength was reported.</summary>
    public int StrengthCount { get; }

    /// <summary>The sum of the strongest looks of those, in hundredths of dBm: a sum can be added to, a mean cannot.</summary>
    public int StrengthSumCentiDbm { get; }

    /// <summary>The sum of a <see cref="TagFadingWatch"/> over its sessions, 0 (the default) to 1,000. Once at the limit of the watch it stays there: a single good day makes no good tag.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public int FadingSum { get; init => field = InRange(value, TagFadingWatch.MaxLimit, nameof(value)); }

    /// <summary>What a reconciliation uses of it. The baseline is the mean of the strongest looks, rounded to the lower hundredth of dBm; there is none below
    /// <see cref="BaselineSessionCount"/> strengths.</summary>
    public TagHistory History
    {
        get
        {
            Rssi? baseline = StrengthCount < BaselineSessionCount ? null : new Rssi((short)Math.Floor((decimal)StrengthSumCentiDbm / StrengthCount));
            return new TagHistory(SessionsPresented, SessionsRead, baseline) { FadingSum = FadingSum };
        }
    }

    private static int InRange(int value, int max, string name) =>
        value >= 0 && value <= max ? value : throw new ArgumentOutOfRangeException(name, value, "A count is 0 up to the count it is a part of, or its limit.");
}
