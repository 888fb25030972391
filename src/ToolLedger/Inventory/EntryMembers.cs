using System;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>Reads the members of a stored entry; what is left out or empty is told by the rule of this room, what is malformed by the rules of all records.</summary>
internal static class EntryMembers
{
    internal static string? Id(RecordReader reader, JsonText text, string place, string member, ReasonKind rule) =>
        IsSaid(reader, text, place, member, rule) ? reader.OptionalText(text, place, member, IdText.MaxLength) : null;

    internal static DateTimeOffset? Time(RecordReader reader, JsonText text, string place, string member, ReasonKind rule) =>
        IsSaid(reader, text, place, member, rule) ? reader.OptionalTime(text, place, member) : null;

    internal static string? Mark(RecordReader reader, JsonText text, string place, string member)
    {
        if (!IsSaid(reader, text, place, member, InventoryRules.SightingWithoutMark) || !reader.IsString(text, place, member))
        {
            return null;
        }

        if (EntryChecks.Mark(text.Value) is { } fault)
        {
            reader.Report($"{place}.{member}", fault);
            return null;
        }

        return text.Value;
    }

    internal static int? Line(RecordReader reader, JsonNumber number, string place, string member, ReasonKind rule)
    {
        if (number.IsAbsent || number.Found == JsonTokenType.Null)
        {
            reader.Report($"{place}.{member}", new Reason(rule));
            return null;
        }

        return reader.OptionalInt32(number, place, member, 1, 9999);
    }

    internal static decimal? Amount(RecordReader reader, JsonNumber number, string place, string member)
    {
        if (number.IsAbsent || number.Found == JsonTokenType.Null)
        {
            reader.Report($"{place}.{member}", new Reason(InventoryRules.CountWithoutQuantity));
            return null;
        }

        if (!reader.IsNumber(number, place, member))
        {
            return null;
        }

        if (number.Value is { } amount && Quantity.IsAmount(amount))
        {
            return amount;
        }

        reader.Report($"{place}.{member}", new Reason(InventoryRules.CountOutOfRange, ("quantity", RecordReader.TextOf(number))));
        return null;
    }

    /// <summary>The number of pieces; null where it is said not to be known, or after an issue.</summary>
    internal static int? Pieces(RecordReader reader, JsonNumber number, string place, string member)
    {
        if (number.IsAbsent)
        {
            reader.Report($"{place}.{member}", new Reason(InventoryRules.PieceCountWithoutNumber));
            return null;
        }

        if (number.Found == JsonTokenType.Null || !reader.IsNumber(number, place, member))
        {
            return null;
        }

        if (number.Value is { } value && decimal.Truncate(value) == value && value is >= 0 and <= EntryChecks.MaxPieceCount)
        {
            return (int)value;
        }

        reader.Report($"{place}.{member}", new Reason(InventoryRules.PieceCountOutOfRange, ("pieces", RecordReader.TextOf(number))));
        return null;
    }

    /// <summary>Who signed an entry and when; both must be said.</summary>
    internal static Signature? SignedBy(RecordReader reader, SignatureRecord? record, string place)
    {
        if (record is null)
        {
            reader.Report($"{place}.signedBy", new Reason(InventoryRules.EntryNotSigned));
            return null;
        }

        return record.Read(reader, $"{place}.signedBy");
    }

    private static bool IsSaid(RecordReader reader, JsonText text, string place, string member, ReasonKind rule)
    {
        bool isSaid = !text.IsAbsent && text.Found != JsonTokenType.Null && (text.Found != JsonTokenType.String || !string.IsNullOrEmpty(text.Value));
        if (!isSaid)
        {
            reader.Report($"{place}.{member}", new Reason(rule));
        }

        return isSaid;
    }
}
