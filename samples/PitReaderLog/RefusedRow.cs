using System.Runtime.InteropServices;

namespace PitReaderLog;

/// <summary>A row that is no evidence, and why.</summary>
/// <param name="LineNumber">Line of the file.</param>
/// <param name="Why">The reason, for people.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct RefusedRow(int LineNumber, string Why);
