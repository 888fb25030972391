namespace ToolLedger.Identifiers.Schemes;

/// <summary>How prefix and reference of an identity make up a GS1 key (GS1 TDS 2.3, chapter 7).</summary>
internal enum Gs1Shape
{
    /// <summary>The first digit of the reference, the prefix, the rest of the reference, a check digit.</summary>
    FirstDigitInFront,

    /// <summary>Prefix, reference, check digit.</summary>
    Digits,

    /// <summary>A zero, then as <see cref="Digits"/>.</summary>
    ZeroInFront,

    /// <summary>Prefix and a reference of characters, no check digit.</summary>
    Text,
}
