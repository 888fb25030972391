using System;
using System.Buffers;
using ToolLedger.Calibration;
using ToolLedger.Records;

namespace ToolLedger.Interchange;

/// <summary>How a calendar feed is written.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class CalendarFeedOptions
{
    private const int MaxDomainLength = 64;

    private static readonly SearchValues<char> DomainCharacters = SearchValues.Create("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789.-");

    /// <summary>What stands right of the @ in the ids of entries: a domain of the site, so that ids are unique in the world (RFC 5545, 3.8.4.7). Letters, digits, dots and hyphens; at most 64.</summary>
    /// <exception cref="ArgumentException">The text has another form.</exception>
    public required string Domain
    {
        get;
        init => field = IsDomain(value) ? value : throw new ArgumentException("A domain is 1 to 64 letters, digits, dots and hyphens.", nameof(value));
    }

    /// <summary>Whether forecasts from average use are written; their summary says that they are forecasts. The default is true.</summary>
    public bool HasForecasts { get; init; } = true;

    /// <summary>Makes the summary of an entry; null (the default) for "Calibration due: T4 torque (Torque wrench)".</summary>
    public Func<DueItem, string>? SummaryOf { get; init; }

    private static bool IsDomain(string? value) => value is { Length: > 0 and <= MaxDomainLength } && RecordText.Check(value, MaxDomainLength) is null
        && !value.AsSpan().ContainsAnyExcept(DomainCharacters);
}
