using System.Runtime.InteropServices;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>A file or message that the host read to make the inputs, and the digest of its bytes.</summary>
/// <param name="Name">What the host calls it, such as a file name.</param>
/// <param name="Digest">SHA-256 of its bytes.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct SourceDigest(string Name, Digest Digest);
