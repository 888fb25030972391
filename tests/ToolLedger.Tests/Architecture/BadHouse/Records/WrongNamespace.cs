namespace ToolLedger.Tests.Architecture.BadHouse.Kits;

/// <summary>It lies in one room and says that it belongs to another.</summary>
internal static class WrongNamespace;
