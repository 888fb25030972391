using System;
using ToolLedger.Tests.Architecture.BadHouse.Records;

namespace ToolLedger.Tests.Architecture.BadHouse.Kits;

/// <summary>What the bad house's first room reaches for although it comes later. Using an earlier room, as here, is right.</summary>
internal static class Later
{
    public const int Limit = 3;

    public static string Name => Sound.Name;

    internal interface IThing;

    internal class Thing;

    internal readonly struct Number;

    internal sealed class FaultException : Exception;

    [AttributeUsage(AttributeTargets.All)]
    internal sealed class MarkAttribute : Attribute;
}
