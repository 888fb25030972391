namespace ToolLedger.Tests.Reconciliation;

/// <summary>A job record drawn at random.</summary>
public sealed record UseDraw(int Job, int Used, int Scrapped, int Minutes);
