using System;
using System.Collections.Generic;
using System.Collections.ObjectModel;
using System.Globalization;
using System.Linq;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Presence;

/// <summary>What past sessions say of every tag, as of an instant: kept by a host between shifts and handed to the next reconciliation.</summary>
/// <remarks>Immutable and thread-safe; compared by reference, or by <see cref="Digest"/>.</remarks>
public sealed partial class TagHistoryRegister
{
    /// <summary>Most tags of one register.</summary>
    public const int MaxEntryCount = 2_000_000;

    private readonly Lazy<ReadOnlyDictionary<TagId, TagHistory>> _histories;

    /// <summary>Makes a register.</summary>
    /// <param name="asOf">Up to when sessions were counted, in the years 1970 to 2999: what ended by then is never counted again.</param>
    /// <param name="entries">One entry a tag, in any order, at most 2,000,000.</param>
    /// <exception cref="ArgumentNullException">The list or an entry is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    /// <exception cref="RecordException">A tag has two entries, or there are too many.</exception>
    public TagHistoryRegister(DateTimeOffset asOf, IEnumerable<TagHistoryEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        AsOf = RecordTime.Require(asOf, nameof(asOf));
        TagHistoryEntry[] copy = [.. entries.Take(MaxEntryCount + 1)];
        var issues = new IssueList();
        Check(copy, issues);
        if (issues.Reported > 0)
        {
            throw new RecordException(issues);
        }

        Array.Sort(copy, static (left, right) => left.Tag.CompareTo(right.Tag));
        Entries = Array.AsReadOnly(copy);
        _histories = new(() => new ReadOnlyDictionary<TagId, TagHistory>(copy.ToDictionary(static entry => entry.Tag, static entry => entry.History)));
    }

    /// <summary>Up to when sessions were counted.</summary>
    public DateTimeOffset AsOf { get; }

    /// <summary>The entries in order of their tags.</summary>
    public IReadOnlyList<TagHistoryEntry> Entries { get; }

    /// <summary>The histories by tag, as a reconciliation takes them.</summary>
    public IReadOnlyDictionary<TagId, TagHistory> Histories => _histories.Value;

    /// <summary>SHA-256 over the canonical form (RFC 8785) of <see cref="ToJson"/>; computed at each call.</summary>
    public Digest Digest => CanonicalJson.DigestOf(ToJson());

    /// <summary>A register that has counted nothing yet.</summary>
    /// <param name="asOf">From when on sessions are to be counted: those that ended later.</param>
    /// <returns>The register.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public static TagHistoryRegister Empty(DateTimeOffset asOf) => new(asOf, []);

    /// <summary>The register without some tags: those that were qualified again, whose histories begin anew.</summary>
    /// <param name="tags">The tags; those without a history are passed over.</param>
    /// <returns>A register as of the same instant.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="tags"/> is null.</exception>
    public TagHistoryRegister Without(IEnumerable<TagId> tags)
    {
        ArgumentNullException.ThrowIfNull(tags);
        HashSet<TagId> left = [.. tags];
        return new TagHistoryRegister(AsOf, Entries.Where(entry => !left.Contains(entry.Tag)));
    }

    private static void Check(TagHistoryEntry[] entries, IssueList issues)
    {
        if (entries.Length > MaxEntryCount)
        {
            issues.Report("$.tags", new Reason(RecordRules.TooLarge, ("limit", MaxEntryCount.ToString("N0", CultureInfo.InvariantCulture)), ("what", "tags")));
            return;
        }

        var seen = new HashSet<TagId>(entries.Length);
        for (int i = 0; i < entries.Length; i++)
        {
            ArgumentNullException.ThrowIfNull(entries[i], nameof(entries));
            if (!seen.Add(entries[i].Tag))
            {
                issues.Report(PlaceOf(i), new Reason(TagHistoryRules.TagTwice, ("tag", entries[i].Tag.ToString())));
            }
        }
    }

    private static string PlaceOf(int index) => string.Create(CultureInfo.InvariantCulture, $"$.tags[{index}]");
}
