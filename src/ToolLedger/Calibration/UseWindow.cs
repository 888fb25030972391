using System;
using System.Runtime.InteropServices;

namespace ToolLedger.Calibration;

/// <summary>The count of hours or cycles around a due count in which a calibration counts as done on it.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
/// <param name="First">The lowest count.</param>
/// <param name="Last">The highest count.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct UseWindow(decimal First, decimal Last)
{
    /// <summary>The window around a due count.</summary>
    /// <param name="due">The due count.</param>
    /// <param name="width">How far it reaches either way; 0 or more. US Army TM 1-1500-328-23, as published: 5 hours for intervals of 50 hours and more.</param>
    /// <returns>The window.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The width is negative.</exception>
    public static UseWindow Around(decimal due, decimal width) => width >= 0
        ? new UseWindow(due - width, due + width)
        : throw new ArgumentOutOfRangeException(nameof(width), width, "A window must be 0 or wider.");

    /// <summary>Whether a count lies in the window, its ends included.</summary>
    /// <param name="count">The count.</param>
    /// <returns>True if it does.</returns>
    public bool Contains(decimal count) => count >= First && count <= Last;

    /// <summary>The next due count after a calibration: counted from the old due count inside the window, from the calibration outside.</summary>
    /// <param name="due">The due count.</param>
    /// <param name="interval">The interval; above 0.</param>
    /// <param name="done">The count at the calibration.</param>
    /// <param name="width">How far the window reaches either way; 0 or more.</param>
    /// <returns>The next due count.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The interval is not above 0, or the width negative.</exception>
    public static decimal Next(decimal due, decimal interval, decimal done, decimal width)
    {
        if (interval <= 0)
        {
            throw new ArgumentOutOfRangeException(nameof(interval), interval, "An interval must be above 0.");
        }

        return (Around(due, width).Contains(done) ? due : done) + interval;
    }
}
