using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>The kinds of identities (GS1 TDS 2.3, chapter 6): the one list to touch when a kind is added.</summary>
internal static class KindList
{
    private static readonly KindGrammar[] All =
    [
        new(EpcKind.Sgtin, "sgtin", Prefix(), Rest(13), Text(EpcField.Serial, 20))
        {
            Gs1 = new(Ai.Of(1, 2), Gs1Shape.FirstDigitInFront, 13) { QualifierAi = Ai.Of(21, 2) },
        },
        new(EpcKind.Sscc, "sscc", Prefix(), Rest(17))
        {
            Gs1 = new(Ai.Of(0, 2), Gs1Shape.FirstDigitInFront, 17),
        },
        new(EpcKind.Sgln, "sgln", Prefix(), Rest(12), Text(EpcField.Serial, 20))
        {
            Gs1 = new(Ai.Of(414, 3), Gs1Shape.Digits, 12) { QualifierAi = Ai.Of(254, 3), ZeroMeansNone = true },
        },
        new(EpcKind.Grai, "grai", Prefix(), Rest(12), Text(EpcField.Serial, 16))
        {
            Gs1 = new(Ai.Of(8003, 4), Gs1Shape.ZeroInFront, 12) { SerialInKey = true },
        },
        new(EpcKind.Giai, "giai", Prefix(), Shared(ComponentForm.Characters82))
        {
            Gs1 = new(Ai.Of(8004, 4), Gs1Shape.Text, 30),
        },
        new(EpcKind.Gsrn, "gsrn", Prefix(), Rest(17))
        {
            Gs1 = new(Ai.Of(8018, 4), Gs1Shape.Digits, 17),
        },
        new(EpcKind.Gsrnp, "gsrnp", Prefix(), Rest(17))
        {
            Gs1 = new(Ai.Of(8017, 4), Gs1Shape.Digits, 17),
        },
        new(EpcKind.Gdti, "gdti", Prefix(), Rest(12), Text(EpcField.Serial, 17))
        {
            Gs1 = new(Ai.Of(253, 3), Gs1Shape.Digits, 12) { SerialInKey = true },
        },
        new(EpcKind.Cpi, "cpi", Prefix(), Shared(ComponentForm.Characters39), Number(ComponentSlot.C, EpcField.Serial, 12))
        {
            Gs1 = new(Ai.Of(8010, 4), Gs1Shape.Text, 30) { QualifierAi = Ai.Of(8011, 4) },
        },
        new(EpcKind.Sgcn, "sgcn", Prefix(), Rest(12), new(ComponentSlot.C, EpcField.Serial, ComponentForm.Digits, 12))
        {
            Gs1 = new(Ai.Of(255, 3), Gs1Shape.Digits, 12) { SerialInKey = true },
        },
        new(
            EpcKind.Itip,
            "itip",
            Prefix(),
            Rest(13),
            new(ComponentSlot.Piece, EpcField.Piece, ComponentForm.FixedDigits, 2),
            new(ComponentSlot.Total, EpcField.Total, ComponentForm.FixedDigits, 2),
            Text(EpcField.Serial, 20))
        {
            Gs1 = new(Ai.Of(8006, 4), Gs1Shape.FirstDigitInFront, 13) { HasPieces = true, QualifierAi = Ai.Of(21, 2) },
        },
        new(
            EpcKind.Gid,
            "gid",
            Number(ComponentSlot.A, EpcField.ManagerNumber, 9, (1UL << 28) - 1),
            Number(ComponentSlot.B, EpcField.ObjectClass, 8, (1UL << 24) - 1),
            Number(ComponentSlot.C, EpcField.Serial, 11, (1UL << 36) - 1)),
        new(EpcKind.Usdod, "usdod", Cage(), Number(ComponentSlot.B, EpcField.Serial, 11, (1UL << 36) - 1)),
        new(
            EpcKind.Adi,
            "adi",
            Cage(),
            new(ComponentSlot.B, EpcField.PartNumber, ComponentForm.PartNumber, 32, minimum: 0),
            new(ComponentSlot.C, EpcField.Serial, ComponentForm.MarkedSerial, 30)),
        new(EpcKind.Upui, "upui", Prefix(), Rest(13), Text(EpcField.Serial, 28))
        {
            Gs1 = new(Ai.Of(1, 2), Gs1Shape.FirstDigitInFront, 13) { QualifierAi = Ai.Of(235, 3) },
        },
        new(EpcKind.Ginc, "ginc", Prefix(), Shared(ComponentForm.Characters82))
        {
            Gs1 = new(Ai.Of(401, 3), Gs1Shape.Text, 30),
        },
        new(EpcKind.Gsin, "gsin", Prefix(), Rest(16))
        {
            Gs1 = new(Ai.Of(402, 3), Gs1Shape.Digits, 16),
        },
        new(EpcKind.Pgln, "pgln", Prefix(), Rest(12))
        {
            Gs1 = new(Ai.Of(417, 3), Gs1Shape.Digits, 12),
        },
        new(EpcKind.Lgtin, "lgtin", Prefix(), Rest(13), Text(EpcField.Lot, 20))
        {
            Gs1 = new(Ai.Of(1, 2), Gs1Shape.FirstDigitInFront, 13) { QualifierAi = Ai.Of(10, 2) },
        },
        new(EpcKind.Bic, "bic", new ComponentRule(ComponentSlot.A, EpcField.Reference, ComponentForm.ContainerNumber, 11)),
        new(EpcKind.Imovn, "imovn", new ComponentRule(ComponentSlot.A, EpcField.Reference, ComponentForm.FixedDigits, 7)),
    ];

    private static readonly KindGrammar?[] ByKind = Index();

    internal static ReadOnlySpan<KindGrammar> Grammars => All;

    /// <summary>The grammar of a kind that is in the list.</summary>
    internal static KindGrammar Of(EpcKind kind) => ByKind[(int)kind]!;

    internal static KindGrammar? OfName(ReadOnlySpan<byte> name)
    {
        foreach (KindGrammar grammar in All)
        {
            ReadOnlySpan<byte> own = grammar.UriStart;
            if (own.Length > name.Length + 1 && own.Slice(own.Length - name.Length - 1, name.Length).SequenceEqual(name)
                && own[own.Length - name.Length - 2] == ':')
            {
                return grammar;
            }
        }

        return null;
    }

    internal static bool Has(EpcKind kind) => (uint)kind < (uint)ByKind.Length && ByKind[(int)kind] is not null;

    private static ComponentRule Prefix() => new(ComponentSlot.A, EpcField.CompanyPrefix, ComponentForm.CompanyPrefix, 12);

    private static ComponentRule Rest(int total) => new(ComponentSlot.B, EpcField.Reference, ComponentForm.Remainder, total);

    private static ComponentRule Text(EpcField field, int maximum) =>
        new(ComponentSlot.C, field, ComponentForm.Characters82, maximum);

    // The prefix counts into the 30 characters that the GS1 key may have.
    private static ComponentRule Shared(ComponentForm form) =>
        new(ComponentSlot.B, EpcField.Reference, form, 30) { SharedWithPrefix = true };

    private static ComponentRule Number(ComponentSlot slot, EpcField field, int digits, ulong maximum = ulong.MaxValue) =>
        new(slot, field, ComponentForm.Number, digits) { MaximumNumber = maximum };

    private static ComponentRule Cage() => new(ComponentSlot.A, EpcField.Cage, ComponentForm.Cage, 6);

    private static KindGrammar?[] Index()
    {
        var index = new KindGrammar?[(int)EpcKind.Imovn + 1];
        foreach (KindGrammar grammar in All)
        {
            index[(int)grammar.Kind] = grammar;
        }

        return index;
    }
}
