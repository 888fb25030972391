namespace ToolLedger.Tests.Holds;

/// <summary>What somebody tries to record about one of two holds.</summary>
public readonly record struct HoldCommand(int Kind, int Hold, int Person, bool SaysRole, int Ground)
{
    public override string ToString() => $"{(Kind switch { 0 => "missing", 1 => "found", 2 => "withdraw", 3 => "discontinue", 4 => "left", 5 => "narrow", 6 => "notify", _ => "release" })} M{Hold} by {Person}{(SaysRole ? " as authority" : "")} ground {Ground}";
}
