namespace ToolLedger.Reads;

/// <summary>What became of a read that was added to a session.</summary>
public enum ReadPlacement
{
    /// <summary>It lies in the presentation and its looks are part of the evidence.</summary>
    Accepted,

    /// <summary>An equal report was delivered before, inside the repeat horizon. It adds nothing.</summary>
    Repeat,

    /// <summary>It lies outside the presentation: before its start, at or after its end, or on an antenna that is not one
    /// of the station's. It is counted for its tag and is no evidence.</summary>
    OutsideWindow,

    /// <summary>A limit of the policy on tags or looks was reached, so it could not be kept. The session becomes invalid.</summary>
    OverTagLimit,
}
