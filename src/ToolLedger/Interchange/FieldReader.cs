using System;
using System.Text;
using ToolLedger.Identifiers;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Interchange;

/// <summary>Reads one field of a row into the draft, by its column. The same for CSV and JSON Lines.</summary>
internal sealed class FieldReader
{
    private const int TidDigitsMax = Tid.MaxBitCount / 4;

    private const int DigitsInWord = 4;

    private readonly TimeText _time;
    private readonly TagTextCache? _tags;

    internal FieldReader(ReadFileOptions options)
    {
        _time = new TimeText(options);
        _tags = options.TagForm == ReadTagForm.EpcHex ? null : new TagTextCache(options.TagForm);
    }

    /// <summary>Whether a number is as good as text for the tag: not for EPC digits, whose leading zeros would be lost.</summary>
    internal bool TakesNumberAsTag => _tags is not null;

    /// <summary>Null when read, otherwise the rule that was broken.</summary>
    internal ReasonKind? Read(ref ReadDraft draft, ReadColumn column, ReadOnlySpan<byte> text)
    {
        switch (column)
        {
            case ReadColumn.Tag:
                draft.Give(column);
                return !ReadTag(text, out draft.Tag) ? ReadFileRules.BadTag : IsWholeWords(text, draft.Tag) ? null : ReadFileRules.TagNotWholeWords;
            case ReadColumn.FirstSeen:
                draft.Give(column);
                return _time.Read(text, out draft.FirstTicks);
            case ReadColumn.LastSeen:
                draft.Give(column);
                return _time.Read(text, out draft.LastTicks);
            case ReadColumn.Antenna:
                draft.Give(column);
                return NumberText.TryReadPort(text, out draft.Antenna) ? null : ReadFileRules.BadAntenna;
            case ReadColumn.Rssi:
                draft.Give(column);
                return NumberText.TryReadHundredths(text, out draft.Strength) ? null : ReadFileRules.BadStrength;
            default:
                return ReadRare(ref draft, column, text);
        }
    }

    /// <summary>Null when the row has what every row must have, otherwise the rule that was broken and the column.</summary>
    internal static ReasonKind? Complete(in ReadDraft draft, out ReadColumn column)
    {
        column = !draft.Has(ReadColumn.Tag) ? ReadColumn.Tag
            : !draft.Has(ReadColumn.FirstSeen) ? ReadColumn.FirstSeen
            : ReadColumn.LastSeen;
        return column switch
        {
            ReadColumn.Tag => ReadFileRules.MissingTag,
            ReadColumn.FirstSeen => ReadFileRules.MissingTime,
            _ => draft.Has(ReadColumn.LastSeen) && draft.LastTicks < draft.FirstTicks ? ReadFileRules.TimesReversed : null,
        };
    }

    private bool ReadTag(ReadOnlySpan<byte> text, out TagId tag) =>
        _tags is null ? TagId.TryParseEpcHex(text, out tag) : _tags.TryRead(text, out tag);

    // A tag answers in whole words of 16 bits. Digits that are none were cut off, and padded with zeros they could be those of another tool's tag.
    private static bool IsWholeWords(ReadOnlySpan<byte> text, in TagId tag) =>
        tag.Kind != TagIdKind.Epc || (text.StartsWith("epc:"u8) ? text.Length - "epc:"u8.Length : text.Length) % DigitsInWord == 0;

    private static ReasonKind? ReadRare(ref ReadDraft draft, ReadColumn column, ReadOnlySpan<byte> text)
    {
        draft.Give(column);
        switch (column)
        {
            case ReadColumn.Count:
                bool isCount = NumberText.TryReadInt64(text, out long count) && count is >= 1 and <= int.MaxValue;
                draft.Count = isCount ? (int)count : 0;
                return isCount ? null : ReadFileRules.BadCount;
            case ReadColumn.ReportId:
                return NumberText.TryReadInt64(text, out draft.ReportId) ? null : ReadFileRules.BadReportId;
            default:
                return ReadTid(text, out draft.Tid) ? null : ReadFileRules.BadTid;
        }
    }

    private static bool ReadTid(ReadOnlySpan<byte> text, out Tid tid)
    {
        tid = default;
        if (text.Length > TidDigitsMax)
        {
            return false;
        }

        Span<char> digits = stackalloc char[TidDigitsMax];
        Encoding.Latin1.GetChars(text, digits);
        return Tid.TryParse(digits[..text.Length], out tid);
    }
}
