namespace ToolLedger.Tests.Reconciliation.Closeouts;

/// <summary>Where a tool of a simulated closeout truly is, and what is true of its tag.</summary>
internal enum TruePlace
{
    InTheBag,
    InTheBagShielded,
    InTheWetBag,
    InTheBagDeadTag,
    Absent,
    InAPocketBeside,
    InTheNeighboursBag,
}
