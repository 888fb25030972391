using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using ToolLedger.Reads;

namespace WornTagTrials;

/// <summary>Reads the comma-separated file of trials. It holds nothing that needs quoting, so a plain split is enough.</summary>
internal static class TrialFile
{
    private const string Header = "trial,time_s,antenna,rssi_dbm,phase_rad,frequency_mhz,activity";

    /// <exception cref="FormatException">The header is another one, or a row cannot be read; the message names the line.</exception>
    public static IEnumerable<TrialRow> Rows(TextReader file)
    {
        if (file.ReadLine()?.TrimEnd('\r') != Header)
        {
            throw new FormatException($"line 1: the header must be {Header}.");
        }

        int lineNumber = 1;
        for (string? line = file.ReadLine(); line is not null; line = file.ReadLine())
        {
            lineNumber++;
            string[] cells = line.Split(',');
            CultureInfo invariant = CultureInfo.InvariantCulture;
            if (cells.Length != 7
                || !double.TryParse(cells[1], NumberStyles.AllowDecimalPoint, invariant, out double seconds) || !(seconds <= 86_400)
                || !byte.TryParse(cells[2], NumberStyles.None, invariant, out byte antenna) || antenna == 0
                || !double.TryParse(cells[3], NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, invariant, out double dbm)
                || !(Math.Abs(dbm) <= 200))
            {
                throw new FormatException($"line {lineNumber}: wanted trial, seconds (0 to 86,400), antenna (1 to 255), dBm (-200 to 200) and three more columns.");
            }

            // The file is rounded to milliseconds at most, so milliseconds lose nothing.
            yield return new TrialRow(cells[0], TimeSpan.FromMilliseconds(Math.Round(seconds * 1000)), new AntennaPort(antenna), Rssi.FromDbm(dbm));
        }
    }
}
