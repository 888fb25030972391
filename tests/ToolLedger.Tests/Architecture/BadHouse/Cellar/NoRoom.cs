namespace ToolLedger.Tests.Architecture.BadHouse.Cellar;

/// <summary>Its folder is not in the list of rooms.</summary>
internal static class NoRoom;
