using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <summary>Which local date and time an instant is at a site. The offset changes are handed in, so that the answer does not
/// depend on the time zone data of a machine.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed partial class SiteCalendar
{
    /// <summary>The most offset changes a calendar can hold.</summary>
    public const int MaxChangeCount = 10_000;

    private const int NameLength = 64;
    private static readonly TimeSpan OffsetLimit = TimeSpan.FromHours(14);
    private readonly OffsetChange[] _changes;

    /// <summary>Describes a site.</summary>
    /// <param name="name">What to call it: 1 to 64 printable characters.</param>
    /// <param name="baseOffset">Site time minus UTC before the first change: whole minutes, at most 14 h either way.</param>
    /// <param name="changes">The changes in order of time, each later than the one before; at most 10,000.</param>
    /// <exception cref="ArgumentNullException">The name or the changes are null.</exception>
    /// <exception cref="ArgumentException">The name is not such a text, the changes do not ascend, or there are too many.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An offset is out of range.</exception>
    public SiteCalendar(string name, TimeSpan baseOffset, IEnumerable<OffsetChange> changes)
    {
        ArgumentNullException.ThrowIfNull(changes);
        Name = RecordText.Require(name, NameLength, nameof(name));
        BaseOffset = CheckOffset(baseOffset, nameof(baseOffset));
        _changes = [.. changes.Take(MaxChangeCount + 1)];
        if (_changes.Length > MaxChangeCount || !_changes.Zip(_changes.Skip(1)).All(pair => pair.First.From < pair.Second.From))
        {
            throw new ArgumentException("Offset changes ascend in time, and a calendar holds at most 10,000.", nameof(changes));
        }

        foreach (OffsetChange change in _changes)
        {
            CheckOffset(change.Offset, nameof(changes));
            RecordTime.Require(change.From, nameof(changes));
        }
    }

    /// <summary>A site that keeps UTC.</summary>
    public static SiteCalendar Utc { get; } = Fixed("UTC", TimeSpan.Zero);

    /// <summary>What the site is called.</summary>
    public string Name { get; }

    /// <summary>Site time minus UTC before the first change.</summary>
    public TimeSpan BaseOffset { get; }

    /// <summary>The changes in order of time.</summary>
    public IReadOnlyList<OffsetChange> Changes => Array.AsReadOnly(_changes);

    /// <summary>A site whose offset never changes.</summary>
    /// <param name="name">What to call it: 1 to 64 printable characters.</param>
    /// <param name="offset">Site time minus UTC: whole minutes, at most 14 h either way.</param>
    /// <returns>The calendar.</returns>
    /// <exception cref="ArgumentException">The name is not such a text.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The offset is out of range.</exception>
    public static SiteCalendar Fixed(string name, TimeSpan offset) => new(name, offset, []);

    /// <summary>Site time minus UTC at an instant.</summary>
    /// <param name="at">The instant.</param>
    /// <returns>The offset.</returns>
    public TimeSpan OffsetAt(DateTimeOffset at)
    {
        int low = 0;
        int high = _changes.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = _changes[middle].From <= at ? (middle + 1, high) : (low, middle);
        }

        return low == 0 ? BaseOffset : _changes[low - 1].Offset;
    }

    /// <summary>The same instant, shown in site time.</summary>
    /// <param name="at">The instant.</param>
    /// <returns>The instant with the site's offset.</returns>
    public DateTimeOffset ToSite(DateTimeOffset at) => at.ToOffset(OffsetAt(at));

    /// <summary>The site's date at an instant.</summary>
    /// <param name="at">The instant.</param>
    /// <returns>The date; at the ends of what a date can hold the first or the last one.</returns>
    public DateOnly DateAt(DateTimeOffset at) =>
        DateOnly.FromDayNumber((int)(Math.Clamp(at.UtcTicks + OffsetAt(at).Ticks, DateTime.MinValue.Ticks, DateTime.MaxValue.Ticks) / TimeSpan.TicksPerDay));

    private static bool IsOffset(TimeSpan offset) =>
        offset <= OffsetLimit && offset >= -OffsetLimit && offset.Ticks % TimeSpan.TicksPerMinute == 0;

    private static TimeSpan CheckOffset(TimeSpan offset, string name) => IsOffset(offset)
        ? offset
        : throw new ArgumentOutOfRangeException(name, offset, "An offset is whole minutes, at most 14 h either way.");
}
