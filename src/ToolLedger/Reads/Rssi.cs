using System;
using System.Globalization;

namespace ToolLedger.Reads;

/// <summary>The received signal strength of a read in hundredths of a dBm.</summary>
/// <remarks>Comparable between reads of one reader only: readers are not calibrated against each other. The default
/// value is 0 dBm, far above anything a tag returns; "no strength reported" is a null <c>Rssi?</c>. Immutable.</remarks>
public readonly record struct Rssi : IComparable<Rssi>
{
    /// <summary>Takes hundredths of a dBm.</summary>
    /// <param name="centiDbm">-32,768 to 32,767 hundredths of a dBm.</param>
    public Rssi(short centiDbm) => CentiDbm = centiDbm;

    /// <summary>Hundredths of a dBm.</summary>
    public short CentiDbm { get; }

    /// <summary>Takes dBm, rounded to the nearest hundredth (halves away from zero).</summary>
    /// <param name="dbm">-327.68 to 327.67 dBm.</param>
    /// <returns>The strength.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is not a number or out of range.</exception>
    public static Rssi FromDbm(double dbm) => TryFromDbm(dbm, out Rssi rssi)
        ? rssi
        : throw new ArgumentOutOfRangeException(nameof(dbm), dbm, "A signal strength is -327.68 to 327.67 dBm.");

    internal static bool TryFromDbm(double dbm, out Rssi rssi)
    {
        double hundredths = Math.Round(dbm * 100, MidpointRounding.AwayFromZero);
        bool fits = hundredths is >= short.MinValue and <= short.MaxValue;
        rssi = fits ? new Rssi((short)hundredths) : default;
        return fits;
    }

    /// <summary>The strength in dBm.</summary>
    /// <returns>dBm.</returns>
    public double ToDbm() => CentiDbm / 100.0;

    /// <summary>Compares by strength: the weaker comes first.</summary>
    /// <param name="other">The other strength.</param>
    /// <returns>Less than zero, zero or more than zero.</returns>
    public int CompareTo(Rssi other) => CentiDbm.CompareTo(other.CentiDbm);

    /// <summary>The strength with its unit, for example "-61.50 dBm".</summary>
    /// <returns>The text.</returns>
    public override string ToString() => ToDbm().ToString("F2", CultureInfo.InvariantCulture) + " dBm";

    /// <summary>Whether the left strength is weaker.</summary>
    /// <param name="left">One strength.</param>
    /// <param name="right">The other strength.</param>
    /// <returns>The answer.</returns>
    public static bool operator <(Rssi left, Rssi right) => left.CentiDbm < right.CentiDbm;

    /// <summary>Whether the left strength is stronger.</summary>
    /// <param name="left">One strength.</param>
    /// <param name="right">The other strength.</param>
    /// <returns>The answer.</returns>
    public static bool operator >(Rssi left, Rssi right) => left.CentiDbm > right.CentiDbm;

    /// <summary>Whether the left strength is weaker or both are equal.</summary>
    /// <param name="left">One strength.</param>
    /// <param name="right">The other strength.</param>
    /// <returns>The answer.</returns>
    public static bool operator <=(Rssi left, Rssi right) => left.CentiDbm <= right.CentiDbm;

    /// <summary>Whether the left strength is stronger or both are equal.</summary>
    /// <param name="left">One strength.</param>
    /// <param name="right">The other strength.</param>
    /// <returns>The answer.</returns>
    public static bool operator >=(Rssi left, Rssi right) => left.CentiDbm >= right.CentiDbm;
}
