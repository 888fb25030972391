using ToolLedger.Records;

namespace ToolLedger.Trials;

/// <summary>A trial that counted for no line of a kit although it may have been meant to, and why.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
/// <param name="Trial">The trial.</param>
/// <param name="Reason">Why it counted for nothing.</param>
public sealed record UnusedTrial(TagTrial Trial, Reason Reason);
