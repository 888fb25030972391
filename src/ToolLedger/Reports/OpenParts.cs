using System.Collections.Generic;

namespace ToolLedger.Reports;

/// <summary>What a row about open lines says: which lines, why they are open, and what settles them, as a sentence.</summary>
internal sealed record OpenParts(IReadOnlyList<string> Lines, string Why, string Next);
