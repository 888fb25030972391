using System;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>That a tool was somewhere else, and when it was last known to be there.</summary>
internal sealed record ElsewhereEvidence(Reason Why, DateTimeOffset At);
