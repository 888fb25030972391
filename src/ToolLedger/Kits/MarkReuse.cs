using ToolLedger.Tools;

namespace ToolLedger.Kits;

/// <summary>A mark that a tool not found and a tool in force share.</summary>
/// <remarks>Immutable and thread-safe; equal if all parts are.</remarks>
/// <param name="NotFound">The tool that people have declared not found.</param>
/// <param name="Tool">The tool that carries its mark.</param>
/// <param name="Kit">The kit whose manifest lists that tool.</param>
/// <param name="Revision">The revision of the manifest.</param>
/// <param name="LineNumber">The number of the line.</param>
public sealed record MarkReuse(Tool NotFound, Tool Tool, KitId Kit, int Revision, int LineNumber);
