using System;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>Who answers from when to when, and by which entry.</summary>
/// <remarks>The spans of one kit or tool follow each other without gap and without overlap. Immutable and thread-safe.</remarks>
public sealed class CustodySpan
{
    /// <summary>Who or what answers.</summary>
    public required CustodyHolder Holder { get; init; }

    /// <summary>From when on, that instant included; the smallest time for "as far back as records go".</summary>
    public required DateTimeOffset From { get; init; }

    /// <summary>Until when, that instant excluded; null while it goes on.</summary>
    public DateTimeOffset? Until { get; init; }

    /// <summary>The entry that began it; null for what was never signed out.</summary>
    public CustodyEntry? Entry { get; init; }

    /// <summary>When it is to be back; null if not stated.</summary>
    public DateTimeOffset? Due { get; init; }

    /// <summary>Holder and times.</summary>
    /// <returns>Text for people.</returns>
    public override string ToString() => Until is { } until
        ? $"{Holder} from {RecordTime.ToText(From)} until {RecordTime.ToText(until)}"
        : $"{Holder} since {RecordTime.ToText(From)}";
}
