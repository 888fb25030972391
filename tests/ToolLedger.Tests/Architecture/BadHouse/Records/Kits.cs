namespace ToolLedger.Tests.Architecture.BadHouse.Records;

/// <summary>It has the name of a room.</summary>
internal static class Kits;
