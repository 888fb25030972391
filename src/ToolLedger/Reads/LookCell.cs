namespace ToolLedger.Reads;

/// <summary>How often one tag was looked at in one pass on one antenna.</summary>
/// <remarks>The default value is no look in pass 0. Immutable.</remarks>
/// <param name="Pass">The number of the pass, from 1.</param>
/// <param name="Antenna">The antenna; the default value when the reader did not say.</param>
/// <param name="LookCount">The number of distinct time slots with a read, at most <see cref="SessionPolicy.LooksKept"/>.</param>
/// <param name="IsSaturated">Whether the count stands at that limit, so that there may have been more.</param>
public readonly record struct LookCell(int Pass, AntennaPort Antenna, int LookCount, bool IsSaturated);
