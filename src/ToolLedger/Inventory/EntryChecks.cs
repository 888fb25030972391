using System;
using System.Globalization;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>The checks of one value of an entry; null means that the value keeps the rule.</summary>
internal static class EntryChecks
{
    internal const int MaxMarkLength = 32;
    internal const int MaxPieceCount = 999;

    internal static Reason? Present(bool isEmpty, ReasonKind rule) => isEmpty ? new Reason(rule) : null;

    internal static Reason? Time(DateTimeOffset at, ReasonKind rule) => RecordTime.IsInRange(at) ? null : new Reason(rule);

    internal static Reason? Mark(string? mark) => string.IsNullOrEmpty(mark)
        ? new Reason(InventoryRules.SightingWithoutMark)
        : RecordText.Check(mark, MaxMarkLength) is { } fault
            ? new Reason(InventoryRules.BadMark, ("fault", fault.ToString()))
            : null;

    internal static Reason? Line(int lineNumber, ReasonKind rule) => lineNumber is < 1 or > 9999 ? new Reason(rule) : null;

    internal static Reason? Amount(decimal amount) => Quantity.IsAmount(amount)
        ? null
        : new Reason(InventoryRules.CountOutOfRange, ("quantity", amount.ToString(CultureInfo.InvariantCulture)));

    internal static Reason? Established(int pieces) => pieces < 1 ? OutOfRange(pieces) : Pieces(pieces);

    internal static Reason? Parts(int parts, int least) => parts < least || parts > MaxPieceCount ? OutOfRange(parts) : null;

    internal static Reason? Wholes(int wholes) => wholes is < 1 or > MaxPieceCount / 2 ? OutOfRange(wholes) : null;

    internal static Reason? Pieces(int? pieces) => pieces is < 0 or > MaxPieceCount ? OutOfRange(pieces.Value) : null;

    internal static Reason? Sealing(SealRecord seal) => seal.InventoriedAt <= seal.At ? null : new Reason(InventoryRules.SealBeforeInventory);

    internal static Reason? Witness(PersonId by, PersonId witness) => !witness.IsEmpty && witness == by
        ? new Reason(InventoryRules.WitnessIsCounter, ("person", by.Value))
        : null;

    internal static Reason? Limit(int count, int limit) => count <= limit ? null : new Reason(
        InventoryRules.TooManyEntries,
        ("limit", limit.ToString(CultureInfo.InvariantCulture)),
        ("count", count.ToString(CultureInfo.InvariantCulture)));

    /// <summary>Only a shortage says how much, and then more than nothing.</summary>
    internal static Reason? ShortBy(Annotation annotation) => annotation.Kind == AnnotationKind.Shortage == annotation.ShortBy.Amount > 0
        ? null
        : new Reason(InventoryRules.ShortageWithoutQuantity);

    internal static Reason? Joining(JoiningStatement joining) => joining.Wholes * 2 <= joining.Parts ? null : new Reason(
        InventoryRules.TooFewParts,
        ("parts", joining.Parts.ToString(CultureInfo.InvariantCulture)),
        ("wholes", joining.Wholes.ToString(CultureInfo.InvariantCulture)));

    internal static Reason? Touched(UnlistedItemReport report)
    {
        foreach (Place place in report.TouchedSince)
        {
            if (place.IsEmpty)
            {
                return new Reason(RecordRules.TextEmpty);
            }
        }

        return Limit(report.TouchedSince.Count, UnlistedItemReport.MaxTouchedCount);
    }

    /// <summary>Adds what is wrong, if anything, to the list.</summary>
    internal static void Note(IssueList issues, string place, Reason? fault)
    {
        if (fault is not null)
        {
            issues.Report(place, fault);
        }
    }

    /// <summary>Returns the value, or throws if it breaks a rule.</summary>
    internal static T Checked<T>(T value, Reason? fault, string name) => fault is null
        ? value
        : throw new ArgumentException($"{fault} ({fault.Code})", name);

    private static Reason OutOfRange(int pieces) => new(InventoryRules.PieceCountOutOfRange, ("pieces", pieces.ToString(CultureInfo.InvariantCulture)));
}
