using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Records;

namespace ToolLedger.Holds;

/// <summary>What a line, a tool or a kit could have been left in, as of an instant: everything it was near since it was last positively accounted for.</summary>
/// <remarks>It gets less only by a positive accounting. Immutable and thread-safe.</remarks>
public sealed class Exposure
{
    internal Exposure(DateTimeOffset asOf, DateTimeOffset? since, IReadOnlyList<ExposureItem> items)
    {
        AsOf = asOf;
        Since = since;
        Items = items;
    }

    /// <summary>The instant the answer is for.</summary>
    public DateTimeOffset AsOf { get; }

    /// <summary>The last positive accounting; null if there is none on record, and then everything on record counts.</summary>
    public DateTimeOffset? Since { get; }

    /// <summary>What it was near since, in time order.</summary>
    public IReadOnlyList<ExposureItem> Items { get; }

    /// <summary>How long ago the last positive accounting is; null if there is none.</summary>
    public TimeSpan? Elapsed => AsOf - Since;

    /// <summary>What could hold it, each once, in the order first met.</summary>
    public IReadOnlyList<AffectedThing> Things => [.. Items.Select(static item => item.Thing).Where(static thing => !thing.IsEmpty).Distinct()];

    /// <summary>For example "since 2026-03-02T08:00:00Z: A, job J1 from ... until ...; between jobs, with P from ...".</summary>
    /// <returns>Text for people: every item, in time order.</returns>
    public override string ToString()
    {
        string since = Since is { } at ? "since " + RecordTime.ToText(at) : "since its first entry, as no positive accounting is on record";
        return $"{since}: {(Items.Count == 0 ? "near nothing on record, which limits nothing" : string.Join("; ", Items))}";
    }
}
