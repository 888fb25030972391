namespace ToolLedger.Testing.Simulation;

/// <summary>Where a tag truly is during a simulated session.</summary>
public enum TagPlacement
{
    /// <summary>In the kit that is presented.</summary>
    Present,

    /// <summary>Expected in the kit that is presented, and somewhere out of reach.</summary>
    Absent,

    /// <summary>On a tool of another kit that stands within reach of the station.</summary>
    Neighbour,

    /// <summary>Foreign: on no list at all, passing through the field.</summary>
    Stray,

    /// <summary>A control tag fixed at the station.</summary>
    Control,
}
