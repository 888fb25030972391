using System;
using System.Globalization;
using ToolLedger.Tools;

namespace ToolLedger.Interchange;

/// <summary>The fields of a read as text that <see cref="FieldReader"/> reads back to the same values.</summary>
internal sealed class ReadRowText
{
    private readonly ReadFileOptions _options;

    internal ReadRowText(ReadFileOptions options) => _options = options;

    /// <summary>Whether numbers of this column are written as numbers where a form tells them from text.</summary>
    internal bool IsNumber(ReadColumn column) => column switch
    {
        ReadColumn.Tag or ReadColumn.Tid => false,
        ReadColumn.FirstSeen or ReadColumn.LastSeen => _options.TimeForm is not (ReadTimeForm.Iso8601WithOffset or ReadTimeForm.Iso8601Local),
        _ => true,
    };

    /// <summary>The text of a tag, or null where the form has none that is read back.</summary>
    internal string? Tag(in TagId tag) => _options.TagForm switch
    {
        ReadTagForm.TagIdText => tag.Kind != TagIdKind.Epc || tag.Epc.BitCount % 4 == 0 ? tag.ToString() : null,
        ReadTagForm.PlainText => tag.Kind == TagIdKind.Text ? tag.Text : null,
        _ => tag.Kind == TagIdKind.Epc && tag.Epc.BitCount % 4 == 0 && !tag.IsEmpty ? tag.Epc.ToString() : null,
    };

    /// <summary>The text of an instant, or null where the form has none that is read back.</summary>
    internal string? Time(long ticks)
    {
        if (ticks < TimeText.FirstTicks || ticks >= TimeText.EndTicks)
        {
            return null;
        }

        long since = ticks - TimeText.FirstTicks;
        return _options.TimeForm switch
        {
            ReadTimeForm.Iso8601WithOffset => Iso(ticks) + "Z",
            ReadTimeForm.Iso8601Local => Local(new DateTimeOffset(ticks, TimeSpan.Zero)),
            ReadTimeForm.EpochSeconds => Decimal(since, TimeSpan.TicksPerSecond),
            ReadTimeForm.EpochMilliseconds => Decimal(since, TimeSpan.TicksPerMillisecond),
            _ => Decimal(since, TimeSpan.TicksPerMicrosecond),
        };
    }

    /// <summary>Hundredths of a dBm as dBm.</summary>
    internal static string Strength(short hundredths) => (hundredths / 100m).ToString("0.##", CultureInfo.InvariantCulture);

    private static string Iso(long ticks) => new DateTime(ticks, DateTimeKind.Unspecified).ToString("yyyy-MM-dd'T'HH:mm:ss.FFFFFFF", CultureInfo.InvariantCulture);

    // An instant whose local time the clocks showed twice has no text: the other instant has the same.
    private string? Local(DateTimeOffset instant)
    {
        DateTime local = _options.Calendar!.ToSite(instant).DateTime;
        return _options.Calendar.TryFromLocal(local, out DateTimeOffset back, out _) && back == instant ? Iso(local.Ticks) : null;
    }

    private static string Decimal(long ticks, long unit) => ((decimal)ticks / unit).ToString("0.#######", CultureInfo.InvariantCulture);
}
