using System.Runtime.InteropServices;

namespace ToolLedger.Reads;

/// <summary>Where a tag was found shortly before. Whoever takes an entry from here compares its tag.</summary>
/// <param name="Hash">The tag's hash.</param>
/// <param name="Number">The number of its entry plus 1; 0 for none.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct FoundTag(uint Hash, int Number);
