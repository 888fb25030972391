using System;
using ToolLedger.Custody;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Calibration;

/// <summary>A tool was used to set or measure a value on a job: what a reverse trace looks through. Made from the records of use of the room <c>Custody</c>, or from a host's own.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class MeasuredUse
{
    private const decimal MaxValue = EventJson.MaxValue;

    /// <summary>The host's key of the use, unique within a trace: 1 to 64 printable characters.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Id { get; init => field = IdText.Require(value, nameof(value)); }

    /// <summary>The tool; not empty.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required ToolId Tool { get; init => field = value.IsEmpty ? throw new ArgumentException("A use needs its tool.", nameof(value)) : value; }

    /// <summary>When it was used, in the years 1970 to 2999.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public required DateTimeOffset At { get; init => field = RecordTime.Require(value, nameof(value)); }

    /// <summary>When the use ended; null (the default) if it was at one instant.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public DateTimeOffset? Until { get; init => field = RecordTime.RequireOrNull(value, nameof(value)); }

    /// <summary>The job; not empty.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required JobId Job { get; init => field = value.IsEmpty ? throw new ArgumentException("A use needs its job.", nameof(value)) : value; }

    /// <summary>What was worked on; empty (the default) if not stated.</summary>
    public EquipmentId Equipment { get; init; }

    /// <summary>Who used it; empty (the default) if not stated.</summary>
    public PersonId By { get; init; }

    /// <summary>The function; null (the default) if it has only one or it was not stated.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public string? Function { get; init => field = RecordText.RequireOrNull(value, IdText.MaxLength, nameof(value)); }

    /// <summary>The value that was set or measured; null (the default) if not stated.</summary>
    /// <value>-1,000,000,000 to 1,000,000,000.</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public decimal? Value { get; init => field = value is null or (>= -MaxValue and <= MaxValue) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "A value lies between -1,000,000,000 and 1,000,000,000."); }

    /// <summary>The unit of the value; empty (the default) if not stated.</summary>
    public Unit Unit { get; init; }

    /// <summary>By how much the work may differ from the value, either way, in its unit; null (the default) if not stated.</summary>
    /// <value>0 or more.</value>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is negative or too large.</exception>
    public decimal? Tolerance { get; init => field = value is null or (>= 0 and <= MaxValue) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "A tolerance is 0 or more."); }

    /// <summary>From the record of use of the room <c>Custody</c>.</summary>
    /// <param name="use">The record; its id becomes the key.</param>
    /// <param name="tolerance">By how much the work may differ from the value, either way; null if not known.</param>
    /// <returns>The use.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is negative or too large.</exception>
    public static MeasuredUse Of(ToolUse use, decimal? tolerance = null)
    {
        ArgumentNullException.ThrowIfNull(use);
        return new MeasuredUse
        {
            Id = use.Id.Value,
            Tool = use.Tool,
            At = use.At,
            Until = use.Until,
            Job = use.Job,
            Equipment = use.Equipment,
            By = use.By,
            Function = use.Function,
            Value = use.Value,
            Unit = use.Unit,
            Tolerance = tolerance,
        };
    }

    internal IntendedUse Asked(DateTimeOffset knownAt) => new(At)
    {
        KnownAt = knownAt,
        Until = Until ?? default,
        Function = Function,
        Value = Value,
        Unit = Unit,
        Job = Job,
    };
}
