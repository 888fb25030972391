using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>The kinds of identities (GS1 TDS 2.3, chapter 6): the one list to touch when a kind is added.</summary>
internal static class KindList
{
    private static readonly KindGrammar[] All =
    [
        new(EpcKind.Sgtin, "sgtin", Prefix(), Rest(13), Text(EpcField.Serial, 20)),
        new(EpcKind.Sscc, "sscc", Prefix(), Rest(17)),
        new(EpcKind.Sgln, "sgln", Prefix(), Rest(12), Text(EpcField.Serial, 20)),
        new(EpcKind.Grai, "grai", Prefix(), Rest(12), Text(EpcField.Serial, 16)),
        new(EpcKind.Giai, "giai", Prefix(), Shared(ComponentForm.Characters82)),
        new(EpcKind.Gsrn, "gsrn", Prefix(), Rest(17)),
        new(EpcKind.Gsrnp, "gsrnp", Prefix(), Rest(17)),
        new(EpcKind.Gdti, "gdti", Prefix(), Rest(12), Text(EpcField.Serial, 17)),
        new(EpcKind.Cpi, "cpi", Prefix(), Shared(ComponentForm.Characters39), Number(ComponentSlot.C, EpcField.Serial, 12)),
        new(EpcKind.Sgcn, "sgcn", Prefix(), Rest(12), new(ComponentSlot.C, EpcField.Serial, ComponentForm.Digits, 12)),
        new(
            EpcKind.Itip,
            "itip",
            Prefix(),
            Rest(13),
            new(ComponentSlot.Piece, EpcField.Piece, ComponentForm.FixedDigits, 2),
            new(ComponentSlot.Total, EpcField.Total, ComponentForm.FixedDigits, 2),
            Text(EpcField.Serial, 20)),
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
        new(EpcKind.Upui, "upui", Prefix(), Rest(13), Text(EpcField.Serial, 28)),
        new(EpcKind.Ginc, "ginc", Prefix(), Shared(ComponentForm.Characters82)),
        new(EpcKind.Gsin, "gsin", Prefix(), Rest(16)),
        new(EpcKind.Pgln, "pgln", Prefix(), Rest(12)),
        new(EpcKind.Lgtin, "lgtin", Prefix(), Rest(13), Text(EpcField.Lot, 20)),
        new(EpcKind.Bic, "bic", new ComponentRule(ComponentSlot.A, EpcField.Reference, ComponentForm.ContainerNumber, 11)),
        new(EpcKind.Imovn, "imovn", new ComponentRule(ComponentSlot.A, EpcField.Reference, ComponentForm.FixedDigits, 7)),
    ];

    private static readonly KindGrammar?[] ByKind = Index();

    internal static ReadOnlySpan<KindGrammar> Grammars => All;

    /// <summary>The grammar of a kind that is in the list.</summary>
    internal static KindGrammar Of(EpcKind kind) => ByKind[(int)kind]!;

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
