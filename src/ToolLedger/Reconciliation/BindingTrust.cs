using System;
using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>How far reads of a tag speak for the tool it is bound to.</summary>
/// <param name="From">Sessions that began from this instant on speak for it; <see cref="DateTimeOffset.MinValue"/> where nobody ever doubted it,
/// <see cref="DateTimeOffset.MaxValue"/> while a doubt stands.</param>
/// <param name="Withheld">Why earlier reads account for nothing, or null.</param>
/// <param name="Doubts">What makes the tool's identity doubtful now.</param>
internal readonly record struct BindingTrust(DateTimeOffset From, Reason? Withheld, IReadOnlyList<IdentityDoubt> Doubts)
{
    /// <summary>True where past reads, and so the history of the tag, may be those of another tool.</summary>
    public bool IsSuspect => From == DateTimeOffset.MaxValue;
}
