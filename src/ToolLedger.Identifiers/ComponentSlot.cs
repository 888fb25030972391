namespace ToolLedger.Identifiers;

/// <summary>Where a component of an identity is kept.</summary>
internal enum ComponentSlot
{
    A,
    B,
    C,
    Piece,
    Total,
}
