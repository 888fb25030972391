namespace ToolLedger.Identifiers;

/// <summary>
/// The components of an identity while it is being made, by slot: A the company prefix (or manager, CAGE), B the reference,
/// C the serial number. Which slots a kind uses, and what may stand in them, is said by its grammar.
/// </summary>
internal struct IdentityBits
{
    internal EpcComponent A;
    internal EpcComponent B;
    internal EpcComponent C;
    internal EpcKind Kind;
    internal EpcScheme Scheme;
    internal byte Filter;
    internal byte Piece;
    internal byte Total;

    internal readonly EpcComponent Get(ComponentSlot slot) => slot switch
    {
        ComponentSlot.A => A,
        ComponentSlot.B => B,
        ComponentSlot.C => C,
        ComponentSlot.Piece => new EpcComponent(Piece, 2),
        _ => new EpcComponent(Total, 2),
    };

    internal void Set(ComponentSlot slot, in EpcComponent component)
    {
        switch (slot)
        {
            case ComponentSlot.A: A = component; break;
            case ComponentSlot.B: B = component; break;
            case ComponentSlot.C: C = component; break;
            case ComponentSlot.Piece: Piece = (byte)component.Number; break;
            default: Total = (byte)component.Number; break;
        }
    }

    internal void SetDigits(ComponentSlot slot, ulong number, int count)
    {
        switch (slot)
        {
            case ComponentSlot.A: A = new EpcComponent(number, count); break;
            case ComponentSlot.B: B = new EpcComponent(number, count); break;
            case ComponentSlot.C: C = new EpcComponent(number, count); break;
            case ComponentSlot.Piece: Piece = (byte)number; break;
            default: Total = (byte)number; break;
        }
    }
}
