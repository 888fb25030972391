using System;
using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <summary>Whether a session can be used as evidence, and why not or with what reserve.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class SessionHealth
{
    /// <summary>States the health of a session.</summary>
    /// <param name="state">The state.</param>
    /// <param name="reasons">What led to it, and what else should be said, for example a corrected clock.</param>
    /// <exception cref="ArgumentNullException">The reasons are null.</exception>
    public SessionHealth(SessionState state, IEnumerable<Reason> reasons)
    {
        ArgumentNullException.ThrowIfNull(reasons);
        State = state;
        Reasons = Array.AsReadOnly<Reason>([.. reasons]);
    }

    /// <summary>The state.</summary>
    public SessionState State { get; }

    /// <summary>The reasons, the gravest first. A valid session has only such as are for information.</summary>
    public IReadOnlyList<Reason> Reasons { get; }

    /// <summary>The state and the sentences of the reasons.</summary>
    /// <returns>One line of text.</returns>
    public override string ToString() => Reasons.Count == 0 ? State.ToString() : $"{State}: {string.Join(" ", Reasons)}";
}
