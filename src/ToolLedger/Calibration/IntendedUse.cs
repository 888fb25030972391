using System;
using System.Runtime.InteropServices;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <summary>What is asked of a tool: when, with which function, at which value, on which job, and for how long.</summary>
/// <remarks>What is left out is not checked: a question without a value is about the tool, not about a measurement. Immutable and thread-safe.</remarks>
[StructLayout(LayoutKind.Auto)]
public readonly record struct IntendedUse
{
    /// <summary>Asks about an instant.</summary>
    /// <param name="at">The instant of use: the time of use, not the time of asking.</param>
    public IntendedUse(DateTimeOffset at) => At = at;

    /// <summary>The instant of use.</summary>
    public DateTimeOffset At { get; init; }

    /// <summary>What is known when the question is asked; the default value means <see cref="At"/>. What was entered later grants nothing to an earlier use, but a drop, a failed check or a shorter due date
    /// entered later counts against it.</summary>
    public DateTimeOffset KnownAt { get; init; }

    /// <summary>The end of a planned use or issue; the default value means none. The answer says if the calibration lapses before.</summary>
    public DateTimeOffset Until { get; init; }

    /// <summary>The function; null for the tool as a whole.</summary>
    public string? Function { get; init; }

    /// <summary>The value to be set or measured; null if not stated.</summary>
    public decimal? Value { get; init; }

    /// <summary>The unit of the value; empty if not stated. Units are compared, never converted.</summary>
    public Unit Unit { get; init; }

    /// <summary>The job; empty if not stated. Only an extension asks for it.</summary>
    public JobId Job { get; init; }

    /// <summary>True if it is not settled which tool this is: then no record is known to be its own. The default is false.</summary>
    public bool IsIdentityInDoubt { get; init; }

    internal DateTimeOffset Known => KnownAt > At ? KnownAt : At;
}
