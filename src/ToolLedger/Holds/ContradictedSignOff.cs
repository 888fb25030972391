using ToolLedger.Reconciliation;

namespace ToolLedger.Holds;

/// <summary>A sign-off that accounted for a tool which was found elsewhere.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
/// <param name="SignOff">What was signed.</param>
/// <param name="Line">The line that claimed the tool.</param>
/// <param name="Found">The declaration that contradicts it.</param>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed record ContradictedSignOff(SignedReconciliation SignOff, SignedLine Line, FoundDeclaration Found);
