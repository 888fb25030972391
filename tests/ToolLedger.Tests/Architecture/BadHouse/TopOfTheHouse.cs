namespace ToolLedger.Tests.Architecture.BadHouse;

/// <summary>It lies beside the rooms, in none of them.</summary>
internal static class TopOfTheHouse;
