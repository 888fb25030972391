using System;
using ToolLedger.Custody;
using ToolLedger.Records;

namespace ToolLedger.Holds;

/// <summary>One piece of equipment, job or place that a thing could have been left in, from when to when.</summary>
/// <remarks>Equal when all parts are. Immutable and thread-safe.</remarks>
public sealed record ExposureItem
{
    /// <summary>How.</summary>
    public required ExposureKind Kind { get; init; }

    /// <summary>What it could be in; empty where only the time and the holder are known.</summary>
    public AffectedThing Thing { get; init; }

    /// <summary>From when on.</summary>
    public required DateTimeOffset From { get; init; }

    /// <summary>Until when; null while it goes on.</summary>
    public DateTimeOffset? Until { get; init; }

    /// <summary>Who answered then.</summary>
    public CustodyHolder Holder { get; init; }

    /// <summary>The entry that says so; empty if none does.</summary>
    public EntryId Entry { get; init; }

    /// <summary>For example "A, job J1 from 2026-03-02T08:00:00Z until ...".</summary>
    /// <returns>Text for people.</returns>
    public override string ToString()
    {
        string what = Thing.IsEmpty ? $"with {Holder}" : Thing.ToString();
        string until = Until is { } end ? $" until {RecordTime.ToText(end)}" : "";
        return $"{Kind switch { ExposureKind.Between => "between jobs, ", ExposureKind.Stored => "stored, ", ExposureKind.Receipt => "on a receipt, ", ExposureKind.Said => "said, ", _ => "" }}{what} from {RecordTime.ToText(From)}{until}";
    }
}
