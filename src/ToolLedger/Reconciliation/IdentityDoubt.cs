using System;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>A reason to doubt a tool's identity and the time of the read or word that raised it.</summary>
internal readonly record struct IdentityDoubt(Reason Reason, DateTimeOffset At)
{
    /// <summary>True where it is not known which tool is which, so that calibration records may belong to the wrong one.</summary>
    public bool IsWhichTool { get; init; }

    /// <summary>True where it is known who the tool is but not where it belongs: only a sighting that says in which kit it was settles that.</summary>
    public bool StandsWithoutKit { get; init; }

    /// <summary>The session that cannot be used and alone says so, or null: then it is no finding about the tool, and withholds all the same until somebody has looked.</summary>
    public ReadSession? Unusable { get; init; }

    /// <summary>The tag that was read after it was retired, where that is the doubt; empty for every other.</summary>
    public TagId RetiredTag { get; init; }

    /// <summary>The same, said by what a session heard.</summary>
    public IdentityDoubt SaidBy(ReadSession session) => this with { Unusable = session.IsUsable ? null : session };
}
