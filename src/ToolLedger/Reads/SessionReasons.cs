using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <summary>Why a session is what it is.</summary>
/// <remarks>No value of a reason counts delivered reads: order and repeats change no reason.</remarks>
public static class SessionReasons
{
    /// <summary>The session is shorter than the policy's shortest. Makes it invalid.</summary>
    public static ReasonKind WindowTooShort { get; } = new("session.window-too-short",
        "The session lasted {seconds} s; at least {minimum} s are needed.");

    /// <summary>The reader's clock was not compared with true time. Makes it invalid.</summary>
    public static ReasonKind ClockOffsetUnknown { get; } = new("session.clock-offset-unknown",
        "The offset of the reader's clock was not measured at the {end} of the session.");

    /// <summary>The reader's clock moved. Makes it invalid.</summary>
    public static ReasonKind ClockOffsetChanged { get; } = new("session.clock-offset-changed",
        "The offset of the reader's clock changed from {before} s to {after} s during the session.");

    /// <summary>The reader's clock is too far off to be corrected. Makes it invalid.</summary>
    public static ReasonKind ClockOffsetTooLarge { get; } = new("session.clock-offset-too-large",
        "The reader's clock was {seconds} s ahead of true time; at most {limit} s may be corrected.");

    /// <summary>Reads are stamped so far from the session that the reader's clock must have been reset. Makes it invalid.</summary>
    public static ReasonKind StampsFarOutside { get; } = new("session.stamps-far-outside",
        "Reads are stamped {stamp}, more than {days} days from the session: the reader's clock was reset or jumped, so stamps place nothing.");

    /// <summary>Times are the host's at arrival, which the policy does not accept. Makes it invalid.</summary>
    public static ReasonKind ArrivalTimesNotAccepted { get; } = new("session.arrival-times-not-accepted",
        "The times are those of arrival at the host, which the policy does not accept as times of reads.");

    /// <summary>Times are the host's at arrival, which the policy accepts. Makes it degraded.</summary>
    public static ReasonKind ArrivalTimes { get; } = new("session.arrival-times",
        "The times are those of arrival at the host; a report may have been made earlier.");

    /// <summary>Reads are later than the end of the session. Makes it invalid.</summary>
    public static ReasonKind ReadAfterClose { get; } = new("session.read-after-close",
        "Reads were taken in up to {last}, but the session was closed at {to}.");

    /// <summary>There were more tags than are kept. Makes it invalid.</summary>
    public static ReasonKind TagLimit { get; } = new("session.tag-limit",
        "More than {limit} different tags were read; not all of them could be kept.");

    /// <summary>There were more looks than are kept. Makes it invalid.</summary>
    public static ReasonKind LookLimit { get; } = new("session.look-limit",
        "More than {limit} looks were made; not all of them could be kept.");

    /// <summary>Nothing was read and there is no control tag to show that the reader worked. Makes it invalid.</summary>
    public static ReasonKind NothingRead { get; } = new("session.nothing-read",
        "Nothing was read, and no control tag shows that the reader worked.");

    /// <summary>A control tag was not seen where it must be. Makes it degraded, or invalid when no antenna is left.</summary>
    public static ReasonKind ControlTagMissing { get; } = new("session.control-tag-missing",
        "Control tag {tag} was not seen on antenna {antenna} near the {end} of the session.");

    /// <summary>The host reported a loss. Makes it degraded, or invalid when no antenna is left.</summary>
    public static ReasonKind Loss { get; } = new("session.loss",
        "Some reads did not arrive: {kind}, antenna {antenna}; reported {count} x, first at {at}.");

    /// <summary>A working antenna may have heard nothing for too long. Makes it degraded.</summary>
    public static ReasonKind SilenceGap { get; } = new("session.silence-gap",
        "Antenna {antenna} heard nothing for up to {seconds} s from {from} on; such silences: {count}.");

    /// <summary>The station has no control tags. Makes it degraded.</summary>
    public static ReasonKind NoControlTags { get; } = new("session.no-control-tags",
        "The station has no control tag, so silence cannot be told from absence.");

    /// <summary>An antenna has no control tag while others have. Makes it degraded.</summary>
    public static ReasonKind AntennaWithoutControlTag { get; } = new("session.antenna-without-control-tag",
        "Antenna {antenna} has no control tag.");

    /// <summary>Times were corrected by a known, constant offset. For information.</summary>
    public static ReasonKind ClockCorrected { get; } = new("session.clock-corrected",
        "The reader's clock was {seconds} s ahead of true time; times are corrected by that.");

    /// <summary>Reads came from an antenna the station does not have. For information: they are not used.</summary>
    public static ReasonKind UnlistedAntenna { get; } = new("session.unlisted-antenna",
        "Reads on antenna {antenna}, which is not one of the station's, were not used.");

    /// <summary>Every kind of this room's sessions.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
    [
        WindowTooShort, ClockOffsetUnknown, ClockOffsetChanged, ClockOffsetTooLarge, StampsFarOutside, ArrivalTimesNotAccepted, ArrivalTimes, ReadAfterClose, TagLimit, LookLimit, NothingRead, ControlTagMissing,
        Loss, SilenceGap, NoControlTags, AntennaWithoutControlTag, ClockCorrected, UnlistedAntenna,
    ];
}
