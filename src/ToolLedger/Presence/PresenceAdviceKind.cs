namespace ToolLedger.Presence;

/// <summary>What settles a line fastest, by the model.</summary>
public enum PresenceAdviceKind
{
    /// <summary>More looks in the position it is in.</summary>
    MoreLooks,

    /// <summary>New passes in other positions: moved, opened, turned.</summary>
    NewPasses,

    /// <summary>No reasonable number of looks: a person has to see it.</summary>
    Sighting,
}
