using System;
using System.Collections.Generic;
using System.IO;
using ToolLedger.Reads;

namespace PitReaderLog;

/// <summary>Turns the tab-separated log into reads. Rows that prove nothing are refused and counted, never dropped in silence.</summary>
internal static class LogReader
{
    /// <summary>The reader has one antenna, and the log does not number it.</summary>
    public static readonly AntennaPort Antenna = new(1);

    /// <param name="log">The file.</param>
    /// <param name="utcOffset">The log's times carry no offset from UTC: only the caller knows it.</param>
    /// <param name="refused">Gets one entry a refused row.</param>
    /// <exception cref="FormatException">The first line does not name the columns.</exception>
    public static IEnumerable<TagRead> Reads(TextReader log, TimeSpan utcOffset, ICollection<RefusedRow> refused)
    {
        string[] header = Cells(log.ReadLine() ?? "");
        var columns = new LogColumns(header);
        int lineNumber = 1;
        for (string? line = log.ReadLine(); line is not null; line = log.ReadLine())
        {
            lineNumber++;
            if (line.Length == 0)
            {
                continue;
            }

            if (!columns.TryRead(Cells(line), lineNumber, out LogRow row, out string why) || !IsEvidence(row, out why))
            {
                refused.Add(new RefusedRow(lineNumber, why));
                continue;
            }

            var first = new DateTimeOffset(row.Arrival, utcOffset);
            yield return new TagRead(row.Tag, Antenna, first) { LastSeen = first + row.Duration, Count = row.DetectionCount };
        }
    }

    /// <summary>A clock that is not referenced places a read nowhere in time, and a phantom is what the reader itself does not believe.</summary>
    private static bool IsEvidence(LogRow row, out string why)
    {
        why = row.TimeReference == "U" ? "the reader's clock was not referenced (TRF = U)"
            : row.TagType == "P" ? "the reader calls it a phantom (TTY = P)"
            : "";
        return why.Length == 0;
    }

    private static string[] Cells(string line) => Array.ConvertAll(line.TrimEnd('\r').Split('\t'), cell => cell.Trim('"').Trim());

}
