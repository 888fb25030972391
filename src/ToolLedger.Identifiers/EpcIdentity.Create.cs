using System;
using ToolLedger.Identifiers.Schemes;

namespace ToolLedger.Identifiers;

/// <content>Putting together and taking apart.</content>
public readonly partial struct EpcIdentity
{
    /// <summary>Puts components together.</summary>
    /// <param name="kind">The kind.</param>
    /// <param name="companyPrefix">The first component, see <see cref="CompanyPrefix"/>.</param>
    /// <param name="reference">The second component, see <see cref="Reference"/>; empty where the kind has none.</param>
    /// <param name="serial">The last component, see <see cref="Serial"/>; empty where the kind has none.</param>
    /// <param name="piece">The number of the piece; 0 where the kind has none.</param>
    /// <param name="total">The number of pieces; 0 where the kind has none.</param>
    /// <param name="identity">The identity, or the default value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether every component follows the rule of its kind.</returns>
    public static bool TryCreate(
        EpcKind kind,
        ReadOnlySpan<char> companyPrefix,
        ReadOnlySpan<char> reference,
        ReadOnlySpan<char> serial,
        int piece,
        int total,
        out EpcIdentity identity,
        out EpcFault fault)
    {
        identity = default;
        fault = default;
        IdentityBits bits = default;
        if (!KindList.Has(kind))
        {
            fault = new EpcFault(EpcRule.SchemeName, EpcField.Scheme, EpcPositionUnit.None, 0, (ulong)kind);
            return false;
        }

        if (!TryRead(companyPrefix, EpcField.CompanyPrefix, out bits.A, ref fault)
            || !TryRead(reference, EpcField.Reference, out bits.B, ref fault)
            || !TryRead(serial, EpcField.Serial, out bits.C, ref fault))
        {
            return false;
        }

        if (piece is < 0 or > 99 || total is < 0 or > 99)
        {
            fault = new EpcFault(EpcRule.FitsDigits, EpcField.Piece, EpcPositionUnit.None, 0, (ulong)Math.Max(piece, total));
            return false;
        }

        bits.Kind = kind;
        bits.Piece = (byte)piece;
        bits.Total = (byte)total;
        if (!KindList.Of(kind).Accepts(bits, ref fault))
        {
            return false;
        }

        identity = new EpcIdentity(bits);
        return true;
    }

    /// <summary>The typed value of the kind, such as <see cref="Giai"/>.</summary>
    /// <typeparam name="TKey">The type of the value.</typeparam>
    /// <param name="key">The typed value, or the default value when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the identity is of the kind that the type stands for.</returns>
    public bool TryGetKey<TKey>(out TKey key)
        where TKey : struct, IEpcKey<TKey> => default(TKey).TryFrom(this, out key);

    /// <summary>Codes the identity for a tag.</summary>
    /// <param name="scheme">A scheme that codes this kind of identity.</param>
    /// <param name="filter">The filter value; 0 for GID, which has none.</param>
    /// <param name="epc">The bits, or the empty value when the answer is <see langword="false"/>.</param>
    /// <param name="fault">Which rule is broken, when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the scheme can hold the identity.</returns>
    public bool TryEncode(EpcScheme scheme, int filter, out Epc epc, out EpcFault fault)
    {
        bool fits = EpcFields.TryCreate(this, scheme, filter, out EpcFields fields, out fault);
        epc = fits ? fields.ToEpc() : default;
        return fits;
    }

    private static bool TryRead(ReadOnlySpan<char> text, EpcField field, out EpcComponent component, ref EpcFault fault)
    {
        if (EpcComponent.TryCreate(text, out component))
        {
            return true;
        }

        if (text.Length > EpcComponent.MaxLength)
        {
            fault = new EpcFault(EpcRule.MaximumLength, field, EpcPositionUnit.None, 0, (ulong)text.Length);
            return false;
        }

        int at = 0;
        while (text[at] is > ' ' and <= '~')
        {
            at++;
        }

        fault = new EpcFault(EpcRule.CharacterSet, field, EpcPositionUnit.Character, at, text[at]);
        return false;
    }
}
