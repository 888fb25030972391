using System.Collections.Generic;
using ToolLedger.Reads;

namespace ToolLedger.Reports;

/// <summary>The looks of one antenna in one pass.</summary>
/// <param name="Antenna">The antenna; the default value where the reader did not say.</param>
/// <param name="IsShownAtWork">Whether something shows that the antenna worked in that session.</param>
/// <param name="IsSaturated">Whether only the earliest looks were kept.</param>
/// <param name="Looks">The looks, in order.</param>
internal sealed record TimelineRow(AntennaPort Antenna, bool IsShownAtWork, bool IsSaturated, IReadOnlyList<Look> Looks);
