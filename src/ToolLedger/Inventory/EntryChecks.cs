using System;
using System.Collections.Generic;
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

    internal static Reason? Line(int lineNumber) => lineNumber is < 1 or > 9999 ? new Reason(InventoryRules.CountWithoutLine) : null;

    internal static Reason? Pieces(int? pieces) => pieces is < 0 or > MaxPieceCount
        ? new Reason(InventoryRules.PieceCountOutOfRange, ("pieces", pieces.Value.ToString(CultureInfo.InvariantCulture)))
        : null;

    internal static Reason? Witness(PersonId by, PersonId witness) => !witness.IsEmpty && witness == by
        ? new Reason(InventoryRules.WitnessIsCounter, ("person", by.Value))
        : null;

    /// <summary>Adds what is wrong, if anything, to the list.</summary>
    internal static void Note(List<RecordIssue> issues, string place, Reason? fault)
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
}
