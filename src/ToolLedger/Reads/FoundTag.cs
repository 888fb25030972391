using System.Runtime.InteropServices;

namespace ToolLedger.Reads;

/// <summary>Where a tag was found shortly before. The default value names entry 0 for hash 0: whoever takes an entry from here compares its tag.</summary>
/// <param name="Hash">The tag's hash.</param>
/// <param name="Index">The number of its entry.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct FoundTag(uint Hash, int Index);
