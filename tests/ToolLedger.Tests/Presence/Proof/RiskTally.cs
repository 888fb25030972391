namespace ToolLedger.Tests.Presence.Proof;

/// <summary>What came of the kits of one stratum.</summary>
internal sealed class RiskTally
{
    public int Kits { get; set; }

    public long Lines { get; set; }

    /// <summary>Kits with an accounted tool that is not there, complete or not.</summary>
    public int WrongKits { get; set; }

    public int CompleteKits { get; set; }

    public int WrongComplete { get; set; }

    public int There { get; set; }

    public int ThereOpen { get; set; }

    public int AbsentTools { get; set; }

    public int AbsentAccounted { get; set; }
}
