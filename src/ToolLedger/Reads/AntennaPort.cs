using System;
using System.Globalization;

namespace ToolLedger.Reads;

/// <summary>The number of an antenna port at a read station, as its reader counts them.</summary>
/// <remarks>The default value means "not known": some readers do not report the antenna. Immutable.</remarks>
public readonly record struct AntennaPort : IComparable<AntennaPort>
{
    /// <summary>Names a port.</summary>
    /// <param name="number">The number, 1 to 255.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is 0.</exception>
    public AntennaPort(byte number) => Number = number > 0
        ? number
        : throw new ArgumentOutOfRangeException(nameof(number), number, "Antenna ports are numbered from 1 to 255.");

    /// <summary>The number, 1 to 255; 0 when the antenna is not known.</summary>
    public byte Number { get; }

    /// <summary>Whether the antenna is known.</summary>
    public bool IsKnown => Number != 0;

    // Trusted: 0 stands for "not known".
    internal static AntennaPort FromNumber(byte number) => number == 0 ? default : new AntennaPort(number);

    /// <summary>Compares by number; "not known" comes first.</summary>
    /// <param name="other">The other port.</param>
    /// <returns>Less than zero, zero or more than zero.</returns>
    public int CompareTo(AntennaPort other) => Number.CompareTo(other.Number);

    /// <summary>The number, or "not known".</summary>
    /// <returns>The text.</returns>
    public override string ToString() => IsKnown ? Number.ToString(CultureInfo.InvariantCulture) : "not known";

    /// <summary>Whether the left port has the smaller number.</summary>
    /// <param name="left">One port.</param>
    /// <param name="right">The other port.</param>
    /// <returns>The answer.</returns>
    public static bool operator <(AntennaPort left, AntennaPort right) => left.CompareTo(right) < 0;

    /// <summary>Whether the left port has the larger number.</summary>
    /// <param name="left">One port.</param>
    /// <param name="right">The other port.</param>
    /// <returns>The answer.</returns>
    public static bool operator >(AntennaPort left, AntennaPort right) => left.CompareTo(right) > 0;

    /// <summary>Whether the left port has the smaller number or both are equal.</summary>
    /// <param name="left">One port.</param>
    /// <param name="right">The other port.</param>
    /// <returns>The answer.</returns>
    public static bool operator <=(AntennaPort left, AntennaPort right) => left.CompareTo(right) <= 0;

    /// <summary>Whether the left port has the larger number or both are equal.</summary>
    /// <param name="left">One port.</param>
    /// <param name="right">The other port.</param>
    /// <returns>The answer.</returns>
    public static bool operator >=(AntennaPort left, AntennaPort right) => left.CompareTo(right) >= 0;
}
