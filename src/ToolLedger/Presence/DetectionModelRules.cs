using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Presence;

/// <summary>What a detection model refuses, apart from numbers out of range.</summary>
public static class DetectionModelRules
{
    /// <summary>Strays that answer better than tags that are there would turn evidence around.</summary>
    public static ReasonKind StrayReadsBetter { get; } = new("detection-model.stray-reads-better",
        "A tag that is there must not answer worse than a stray: present ({presentA}, {presentB}) needs a first weight of at least, and a second of at most, that of stray ({strayA}, {strayB}).");

    /// <summary>Two models for the same tags.</summary>
    public static ReasonKind ModelTwice { get; } = new("detection-model.twice", "Station {station} has two models for tags of one mounting ({mounting}).");

    /// <summary>Every kind of detection models.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } = [StrayReadsBetter, ModelTwice];
}
