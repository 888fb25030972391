namespace ToolLedger.Tests.Reconciliation;

/// <summary>A read drawn for a property: which tag, which antenna, which half second of the window (some lie behind its end).</summary>
/// <param name="Tag">Index into the tags of <see cref="ShiftCase"/>.</param>
/// <param name="Antenna">1 or 2.</param>
/// <param name="HalfSecond">0 to 65; the window ends at 60.</param>
public readonly record struct ReadDraw(int Tag, int Antenna, int HalfSecond);
