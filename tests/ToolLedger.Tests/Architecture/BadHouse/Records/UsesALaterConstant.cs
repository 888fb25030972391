using ToolLedger.Tests.Architecture.BadHouse.Kits;

namespace ToolLedger.Tests.Architecture.BadHouse.Records;

/// <summary>A constant of a later room: only the using directive shows it.</summary>
internal static class UsesALaterConstant
{
    public const int Limit = Later.Limit;
}
