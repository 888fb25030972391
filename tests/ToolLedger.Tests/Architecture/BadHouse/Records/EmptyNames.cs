namespace ToolLedger.Tests.Architecture.BadHouse.Records;

/// <summary>Names that say nothing about the job.</summary>
internal static class EmptyNames
{
    internal sealed class ToolUtils;

    internal sealed class ToolHelper;

    internal sealed class ToolManager;

    internal sealed class ToolService<T>;
}
