namespace ToolLedger.Calibration;

/// <summary>What a named person decided about a use of a tool that was out of tolerance.</summary>
public enum UseDecision
{
    /// <summary>No effect on the work.</summary>
    NoEffect,

    /// <summary>The work is accepted as it is, with the deviation.</summary>
    AcceptedAsIs,

    /// <summary>The work was measured or done again with a good tool.</summary>
    DoneAgain,

    /// <summary>The work has to be done again; the use stays open until that is recorded.</summary>
    ToBeDoneAgain,

    /// <summary>What was worked on was rejected.</summary>
    WorkRejected,
}
