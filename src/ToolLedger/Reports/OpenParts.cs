namespace ToolLedger.Reports;

/// <summary>What a row about open lines says: which lines, why they are open, and what settles them, alone and as a sentence.</summary>
internal sealed record OpenParts(string Lines, string Why, string Next, string NextSentence);
