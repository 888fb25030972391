using ToolLedger.Kits;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Simulation;

/// <summary>What is true of one tag in a simulated session, whatever the reads say. Immutable and thread-safe.</summary>
public sealed class TagTruth
{
    internal TagTruth(TagId tag, TagPlacement placement)
    {
        Tag = tag;
        Placement = placement;
    }

    /// <summary>The tag.</summary>
    public TagId Tag { get; }

    /// <summary>Where it truly is.</summary>
    public TagPlacement Placement { get; }

    /// <summary>The tool that wears it; <see langword="null"/> for strays and control tags.</summary>
    public ToolId? Tool { get; internal init; }

    /// <summary>The kit whose manifest lists the tool; <see langword="null"/> for strays and control tags.</summary>
    public KitId? Kit { get; internal init; }

    /// <summary>Whether the tag lies where radio hardly reaches it.</summary>
    public bool IsObscured { get; internal init; }

    /// <summary>How many distinct reports the reader made of it; repeats of a report are not counted.</summary>
    public int ReportCount { get; internal init; }
}
