using System;
using System.Runtime.InteropServices;

namespace ToolLedger.Calibration;

/// <summary>A measured value with its standard uncertainty, for a normal model (JCGM 106:2012, clause 7).</summary>
/// <remarks>Immutable and thread-safe.</remarks>
[StructLayout(LayoutKind.Auto)]
public readonly record struct MeasuredValue
{
    /// <summary>Makes a measured value.</summary>
    /// <param name="value">The estimate, within ±1e15.</param>
    /// <param name="standardUncertainty">The standard uncertainty u; 0 to 1e15.</param>
    /// <exception cref="ArgumentOutOfRangeException">The uncertainty is negative, or a number beyond 1e15.</exception>
    public MeasuredValue(decimal value, decimal standardUncertainty)
    {
        if (standardUncertainty < 0)
        {
            throw new ArgumentOutOfRangeException(nameof(standardUncertainty), standardUncertainty, "An uncertainty must be 0 or more.");
        }

        Conformity.RequireWithin(value, nameof(value));
        Conformity.RequireWithin(standardUncertainty, nameof(standardUncertainty));
        Value = value;
        StandardUncertainty = standardUncertainty;
    }

    /// <summary>The estimate.</summary>
    public decimal Value { get; }

    /// <summary>The standard uncertainty u, in the unit of the value.</summary>
    public decimal StandardUncertainty { get; }

    /// <summary>The expanded uncertainty for a coverage factor of 2, which stands for about 95 % here.</summary>
    public decimal U95 => 2 * StandardUncertainty;

    /// <summary>From an expanded uncertainty.</summary>
    /// <param name="value">The estimate.</param>
    /// <param name="expandedUncertainty">The expanded uncertainty U; 0 to 1e15.</param>
    /// <param name="coverageFactor">The coverage factor k; 1e-9 to 1e9.</param>
    /// <returns>The measured value.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The uncertainty is negative, a number is beyond 1e15, or the factor is not 1e-9 to 1e9.</exception>
    public static MeasuredValue FromExpanded(decimal value, decimal expandedUncertainty, decimal coverageFactor)
    {
        Conformity.RequireWithin(expandedUncertainty, nameof(expandedUncertainty));
        return coverageFactor is >= 0.000000001m and <= 1_000_000_000m
            ? new MeasuredValue(value, expandedUncertainty / coverageFactor)
            : throw new ArgumentOutOfRangeException(nameof(coverageFactor), coverageFactor, "A coverage factor must be 1e-9 to 1e9.");
    }
}
