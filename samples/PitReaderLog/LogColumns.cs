using System;
using System.Globalization;
using ToolLedger.Tools;

namespace PitReaderLog;

/// <summary>Where the columns stand. The header decides, because readers of different make-up write different sets.</summary>
internal sealed class LogColumns
{
    private static readonly string[] ArrivalForms = ["yyyy-MM-dd HH:mm:ss.FFF", "yyyy-MM-dd HH:mm:ss"];

    private readonly int _arrival, _duration, _timeReference, _tagType, _tag, _detectionCount;

    /// <exception cref="FormatException">A column is not named.</exception>
    public LogColumns(string[] header)
    {
        _arrival = Find(header, "ARR");
        _duration = Find(header, "DUR");
        _timeReference = Find(header, "TRF");
        _tagType = Find(header, "TTY");
        _tag = Find(header, "TAG");
        _detectionCount = Find(header, "NCD");
    }

    public bool TryRead(string[] cells, int lineNumber, out LogRow row, out string why)
    {
        row = default;
        why = "";
        int last = Math.Max(Math.Max(_arrival, _duration), Math.Max(Math.Max(_timeReference, _tagType), Math.Max(_tag, _detectionCount)));
        CultureInfo invariant = CultureInfo.InvariantCulture;
        if (cells.Length <= last)
        {
            why = "it has too few columns";
        }
        else if (!DateTime.TryParseExact(cells[_arrival], ArrivalForms, invariant, DateTimeStyles.None, out DateTime arrival)
            || arrival.Year is < 1970 or > 2998)
        {
            why = "ARR is not a date and time of the years 1970 to 2998";
        }
        else if (!TimeSpan.TryParse(cells[_duration], invariant, out TimeSpan duration) || duration < TimeSpan.Zero || duration > TimeSpan.FromDays(1))
        {
            why = "DUR is not a duration of up to a day";
        }
        else if (!int.TryParse(cells[_detectionCount], NumberStyles.None, invariant, out int count) || count < 1)
        {
            why = "NCD is not a number from 1 on";
        }
        else if (!TagId.TryParse("text:" + cells[_tag], out TagId tag))
        {
            why = "TAG is not 1 to 64 printable characters";
        }
        else
        {
            row = new LogRow(lineNumber, arrival, duration, cells[_timeReference], cells[_tagType], tag, count);
        }

        return why.Length == 0;
    }

    private static int Find(string[] header, string name)
    {
        int index = Array.IndexOf(header, name);
        return index >= 0 ? index : throw new FormatException($"line 1: the header names no column {name}; is this a log of such a reader?");
    }
}
