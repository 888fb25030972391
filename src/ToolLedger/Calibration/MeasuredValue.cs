using System;
using System.Runtime.InteropServices;

namespace ToolLedger.Calibration;

/// <summary>A measured value with its standard uncertainty, for a normal model (JCGM 106:2012, clause 7).</summary>
/// <remarks>Immutable and thread-safe.</remarks>
[StructLayout(LayoutKind.Auto)]
public readonly record struct MeasuredValue
{
    /// <summary>Makes a measured value.</summary>
    /// <param name="value">The estimate.</param>
    /// <param name="standardUncertainty">The standard uncertainty u; 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The uncertainty is negative.</exception>
    public MeasuredValue(decimal value, decimal standardUncertainty)
    {
        if (standardUncertainty < 0)
        {
            throw new ArgumentOutOfRangeException(nameof(standardUncertainty), standardUncertainty, "An uncertainty must be 0 or more.");
        }

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
    /// <param name="expandedUncertainty">The expanded uncertainty U; 0 or more.</param>
    /// <param name="coverageFactor">The coverage factor k; above 0.</param>
    /// <returns>The measured value.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The uncertainty is negative, or the factor not above 0.</exception>
    public static MeasuredValue FromExpanded(decimal value, decimal expandedUncertainty, decimal coverageFactor) => coverageFactor > 0
        ? new MeasuredValue(value, expandedUncertainty / coverageFactor)
        : throw new ArgumentOutOfRangeException(nameof(coverageFactor), coverageFactor, "A coverage factor must be above 0.");
}
