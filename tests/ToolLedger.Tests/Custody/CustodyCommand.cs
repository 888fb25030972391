namespace ToolLedger.Tests.Custody;

/// <summary>What somebody tries to record: a kind, who, what, and how long after the one before.</summary>
public readonly record struct CustodyCommand(int Kind, int Kit, int Tool, int Person, int Other, int Minutes)
{
    public override string ToString() => $"{(Kind switch { 0 => "issue", 1 => "turn-in", 2 => "transfer", 3 => "loan", 4 => "close", _ => "visit" })} K{Kit} T{Tool} {Person}->{Other} +{Minutes}";
}
