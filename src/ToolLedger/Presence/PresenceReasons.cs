using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Presence;

/// <summary>Reasons a presence policy gives.</summary>
public static class PresenceReasons
{
    /// <summary>The looks meet the policy.</summary>
    public static ReasonKind EnoughLooks { get; } = new("presence.enough-looks", "read in {looks} {looks:look|looks} on {antennas} {antennas:antenna|antennas} in {passes} {passes:pass|passes}");

    /// <summary>No look of any live tag in a usable session.</summary>
    public static ReasonKind NoLook { get; } = new("presence.no-look", "no read of its tag in a usable session");

    /// <summary>Fewer distinct looks than the policy asks for.</summary>
    public static ReasonKind FewLooks { get; } = new("presence.few-looks", "only {looks} {looks:look|looks}; the policy asks for {needed}");

    /// <summary>Enough looks, but neither on enough antennas nor in enough passes.</summary>
    public static ReasonKind OneView { get; } = new("presence.one-view", "seen on {antennas} {antennas:antenna|antennas} in {passes} {passes:pass|passes}; the policy asks for {antennasNeeded} antennas or {passesNeeded} passes");

    /// <summary>The station was degraded, so more separate passes are needed.</summary>
    public static ReasonKind DegradedStation { get; } = new("presence.degraded-station", "the session is degraded and shows it in {passes} pass(es); the policy asks for {passesNeeded} separate passes");

    /// <summary>The strongest look is well below the tag's usual strength.</summary>
    public static ReasonKind BelowBaseline { get; } = new("presence.below-baseline", "strongest look {decibels} dB below its usual strength");

    /// <summary>The tag often stays silent, which explains silence and accounts for nothing.</summary>
    public static ReasonKind PoorHistory { get; } = new("presence.poor-history", "its tag was read in {read} of {presented} past sessions: qualify the tag again");

    /// <summary>The tag is usually read, so its silence deserves the first look.</summary>
    public static ReasonKind GoodHistory { get; } = new("presence.good-history", "its tag was read in {read} of {presented} past sessions: look here first");

    /// <summary>No chip number was reported, so a copied tag could not have been noticed.</summary>
    public static ReasonKind EpcOnly { get; } = new("presence.epc-only", "identified by EPC only; copy check not made");

    /// <summary>The site does not accept identification by EPC alone.</summary>
    public static ReasonKind EpcOnlyNotAccepted { get; } = new("presence.epc-only-not-accepted", "identified by EPC only, which the policy does not accept");

    /// <summary>All kinds of this room.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
        [EnoughLooks, NoLook, FewLooks, OneView, DegradedStation, BelowBaseline, PoorHistory, GoodHistory, EpcOnly, EpcOnlyNotAccepted];
}
