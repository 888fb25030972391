using System;
using System.Runtime.InteropServices;

namespace ToolLedger.Calibration;

/// <summary>The days around a due date in which a calibration counts as done on it.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
/// <param name="First">The first day.</param>
/// <param name="Last">The last day.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct DueWindow(DateOnly First, DateOnly Last)
{
    private const int DaysPerMonth = 30;

    /// <summary>The window of an interval in months: a share of its days below 12 months, a month counted as 30 days, and a number of days from 12 months on.</summary>
    /// <param name="due">The due date.</param>
    /// <param name="months">The interval; 1 to 120 months.</param>
    /// <param name="policy">The share and the days.</param>
    /// <returns>The window.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The interval is not 1 to 120 months.</exception>
    public static DueWindow Around(DateOnly due, int months, CalibrationPolicy policy)
    {
        ArgumentNullException.ThrowIfNull(policy);
        if (months is < 1 or > CalibrationRecord.MaxIntervalMonths)
        {
            throw new ArgumentOutOfRangeException(nameof(months), months, "An interval must be 1 to 120 months.");
        }

        int days = months < 12 ? months * DaysPerMonth * policy.WindowPercent / 100 : policy.WindowDays;
        return new DueWindow(due.AddDays(-days), due.AddDays(days));
    }

    /// <summary>Whether a day lies in the window, its ends included.</summary>
    /// <param name="day">The day.</param>
    /// <returns>True if it does.</returns>
    public bool Contains(DateOnly day) => day >= First && day <= Last;

    /// <summary>The next due date after a calibration: counted from the old due date inside the window, from the calibration outside.</summary>
    /// <param name="due">The due date.</param>
    /// <param name="months">The interval; 1 to 120 months.</param>
    /// <param name="done">The day of calibration.</param>
    /// <param name="policy">The window.</param>
    /// <returns>The next due date.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The interval is not 1 to 120 months.</exception>
    public static DateOnly Next(DateOnly due, int months, DateOnly done, CalibrationPolicy policy) =>
        (Around(due, months, policy).Contains(done) ? due : done).AddMonths(months);
}
