using System;
using System.Collections.Generic;
using System.Runtime.InteropServices;

namespace ToolLedger.Calibration;

/// <summary>The error as found at a value: interpolated between points, never carried beyond them.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct FoundError
{
    /// <summary>The deviation in a straight line between the points next to the value.</summary>
    internal decimal? Value { get; private init; }

    /// <summary>The larger deviation of these points, without sign: what an unseen bend between them is covered by.</summary>
    internal decimal Worst { get; private init; }

    internal decimal? Uncertainty { get; private init; }

    internal static FoundError At(decimal value, IReadOnlyList<CalibrationPoint> points)
    {
        CalibrationPoint? below = null;
        CalibrationPoint? above = null;
        foreach (CalibrationPoint point in points)
        {
            // Of several readings at one nominal value the one furthest off counts.
            if (point.Nominal <= value && (below is null || point.Nominal > below.Nominal || (point.Nominal == below.Nominal && IsWorse(point, below))))
            {
                below = point;
            }

            if (point.Nominal >= value && (above is null || point.Nominal < above.Nominal || (point.Nominal == above.Nominal && IsWorse(point, above))))
            {
                above = point;
            }
        }

        if (below is null || above is null)
        {
            return default;
        }

        decimal width = above.Nominal - below.Nominal;
        decimal error = width == 0 ? below.Deviation : below.Deviation + ((above.Deviation - below.Deviation) * (value - below.Nominal) / width);
        return new FoundError
        {
            Value = decimal.Round(error, EventJson.MaxDecimalCount),
            Worst = Math.Max(decimal.Abs(below.Deviation), decimal.Abs(above.Deviation)),
            Uncertainty = below.ExpandedUncertainty is { } one && above.ExpandedUncertainty is { } other ? Math.Max(one, other) : null,
        };
    }

    private static bool IsWorse(CalibrationPoint one, CalibrationPoint other) => decimal.Abs(one.Deviation) > decimal.Abs(other.Deviation);
}
