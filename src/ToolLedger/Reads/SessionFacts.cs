using System;
using System.Collections.Generic;

namespace ToolLedger.Reads;

/// <summary>What a builder hands to the session it closes; nothing of it changes afterwards.</summary>
internal sealed class SessionFacts
{
    internal required Presentation Presentation { get; init; }

    internal required SessionPolicy Policy { get; init; }

    internal required EvidenceStore Store { get; init; }

    /// <summary>By antenna number: when it heard anything.</summary>
    internal required ActivityMap?[] Activity { get; init; }

    /// <summary>By antenna number: whether there were reads on one that the station does not have.</summary>
    internal required bool[] Unlisted { get; init; }

    internal required LossTally Losses { get; init; }

    internal required List<long> PassStarts { get; init; }

    internal required DateTimeOffset To { get; init; }

    internal required TimeSpan? ClockOffsetAfter { get; init; }

    /// <summary>Kits nearby that were noted while the session was open; those of the presentation come first and are kept there.</summary>
    internal required IReadOnlyList<NearbyKit> NearbyKits { get; init; }

    /// <summary>Changes of the surroundings that were noted while the session was open.</summary>
    internal required IReadOnlyList<SurroundingsChange> SurroundingsChanges { get; init; }

    internal required long LastAccepted { get; init; }

    /// <summary>The earliest instant of a read outside the presentation, in corrected ticks.</summary>
    internal required long EarliestOutside { get; init; }

    /// <summary>The latest such instant.</summary>
    internal required long LatestOutside { get; init; }

    internal required bool IsLookLimitReached { get; init; }

    internal required long ReadCount { get; init; }

    internal required long RepeatCount { get; init; }

    internal required long OutsideCount { get; init; }

    /// <summary>Those of <see cref="OutsideCount"/> on an antenna that the station does not have.</summary>
    internal required long UnlistedCount { get; init; }

    internal required long OverLimitCount { get; init; }
}
