namespace ToolLedger.Identifiers.Schemes;

/// <summary>How a kind of identity is written with GS1 application identifiers.</summary>
internal sealed class Gs1Key
{
    internal Gs1Key(int ai, Gs1Shape shape, int digits)
    {
        Ai = ai;
        Shape = shape;
        Digits = digits;
    }

    /// <summary>The application identifier of the key.</summary>
    internal int Ai { get; }

    internal Gs1Shape Shape { get; }

    /// <summary>The digits of prefix and reference together; for text the most characters.</summary>
    internal int Digits { get; }

    /// <summary>Whether two digits each for piece and total follow the check digit.</summary>
    internal bool HasPieces { get; set; }

    /// <summary>Whether the serial number stands behind the check digit in the same value.</summary>
    internal bool SerialInKey { get; set; }

    /// <summary>The application identifier that holds the serial number; 0 when none does.</summary>
    internal int QualifierAi { get; set; }

    /// <summary>Whether the serial number 0 means that there is none, and is left out (GS1 TDS 2.3, s.6.3.3).</summary>
    internal bool ZeroMeansNone { get; set; }

    /// <summary>The characters of the value that every key of this kind has.</summary>
    internal int FixedLength => Digits + 1 + (Shape == Gs1Shape.ZeroInFront ? 1 : 0) + (HasPieces ? 4 : 0);
}
