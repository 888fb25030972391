using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>The digest of one input a result was computed from.</summary>
/// <param name="Name">What it is, for example "manifest" or "session S-1".</param>
/// <param name="Digest">SHA-256 over its canonical form.</param>
public readonly record struct InputDigest(string Name, Digest Digest);
