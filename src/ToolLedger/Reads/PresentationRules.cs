using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <summary>What can be wrong with a presentation, apart from what can be wrong with any record.</summary>
public static class PresentationRules
{
    /// <summary>The stated end is not later than the start.</summary>
    public static ReasonKind EndBeforeStart { get; } = new("presentation.end-before-start", "The end {until} is not later than the start {from}.");

    /// <summary>The passes do not lie one after another inside the presentation.</summary>
    public static ReasonKind PassOutOfOrder { get; } = new("presentation.pass-out-of-order",
        "The pass start {at} is not later than the start before it, or not before the end.");

    /// <summary>More passes than a presentation can have.</summary>
    public static ReasonKind TooManyPasses { get; } = new("presentation.too-many-passes", "There are {count} passes; at most {limit} are allowed.");

    /// <summary>More kits than a presentation can name.</summary>
    public static ReasonKind TooManyKits { get; } = new("presentation.too-many-kits", "There are {count} kits; at most {limit} are allowed.");

    /// <summary>A kit is named twice.</summary>
    public static ReasonKind SameKitTwice { get; } = new("presentation.same-kit-twice", "Kit {kit} is named twice.");

    /// <summary>More losses than a presentation can list.</summary>
    public static ReasonKind TooManyLosses { get; } = new("presentation.too-many-losses", "There are {count} losses; at most {limit} are allowed.");

    /// <summary>The antennas are not 1 to 64 different ones.</summary>
    public static ReasonKind StationAntennas { get; } = new("presentation.station-antennas",
        "A station has 1 to {limit} different antennas; found {count}, of them {distinct} different.");

    /// <summary>The control tags are too many, or one is named twice.</summary>
    public static ReasonKind StationControlTags { get; } = new("presentation.station-control-tags",
        "A station has at most {limit} different control tags; found {count}, of them {distinct} different.");

    /// <summary>A tag that cannot be read as one.</summary>
    public static ReasonKind BadTag { get; } = new("presentation.bad-tag", "\"{found}\" is not a tag.");

    /// <summary>A control tag is meant for an antenna that the station does not have.</summary>
    public static ReasonKind ControlTagAntenna { get; } = new("presentation.control-tag-antenna",
        "Control tag {tag} is meant for antenna {antenna}, which the station does not have.");

    /// <summary>More kits nearby than a presentation can list.</summary>
    public static ReasonKind TooManyNearbyKits { get; } = new("presentation.too-many-nearby-kits", "There are {count} kits nearby; at most {limit} are allowed.");

    /// <summary>More changes of the surroundings than a presentation can list.</summary>
    public static ReasonKind TooManySurroundingsChanges { get; } = new("presentation.too-many-surroundings-changes",
        "There are {count} changes of the surroundings; at most {limit} are allowed.");

    /// <summary>A kit is presented and said to be only nearby.</summary>
    public static ReasonKind NearbyKitPresented { get; } = new("presentation.nearby-kit-presented", "Kit {kit} is presented; it cannot stand nearby as well.");

    /// <summary>A kit nearby was moved away before or when it came.</summary>
    public static ReasonKind NearbyEndBeforeStart { get; } = new("presentation.nearby-end-before-start", "The kit was moved away at {until}, not after it stood there from {from} on.");

    /// <summary>An offset of the reader's clock is stated although the host stamped the reads.</summary>
    public static ReasonKind OffsetOfArrivalTimes { get; } = new("presentation.offset-of-arrival-times",
        "The times are the host's at arrival, so an offset of the reader's clock must not be stated: it would be taken off them.");

    /// <summary>Every kind of presentations.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
    [
        EndBeforeStart, PassOutOfOrder, TooManyPasses, TooManyKits, SameKitTwice, TooManyLosses, StationAntennas, StationControlTags,
        BadTag, ControlTagAntenna, TooManyNearbyKits, TooManySurroundingsChanges, NearbyKitPresented, NearbyEndBeforeStart, OffsetOfArrivalTimes,
    ];
}
