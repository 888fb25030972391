// Pit reader log: an adapter for the tab-separated log of a half-duplex (134.2 kHz) reader, and a closeout over it.
//
//   dotnet run --project samples/PitReaderLog -- <log> <marker tag> <marker interval, s> <kit tag> [window, min] [clock ahead, s]
//   dotnet run --project samples/PitReaderLog -- reader_3.txt 0000_000000004978 60 0000_000000000001
//
// What it is for. Such readers carry a marker tag that is fixed at the antenna and fires at a known interval. It is what the library calls a
// control tag: as long as it is heard, silence about other tags means something. The program cuts the log into windows, takes each for one
// presentation of a kit of one tag, and prints the health of the session and what is concluded.
//
// What an integrator can take from it. LogReader turns foreign rows into TagRead values and refuses, with a count, what is no evidence:
// rows whose clock was not referenced (TRF = U) and rows the reader itself calls phantoms (TTY = P). LogCloseout shows a station with one
// antenna and a policy whose "near start and end" fits the marker's interval.
//
// What only the caller knows: the log's times carry no offset from UTC (taken as UTC here), and how far the reader's clock is ahead.
//
// Logs of such readers with their licence (MIT) lie in tests/ToolLedger.Samples.Tests/data.
using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using PitReaderLog;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Tools;

CultureInfo invariant = CultureInfo.InvariantCulture;
double window = 30, ahead = 0;
if (args.Length is < 4 or > 6
    || !double.TryParse(args[2], NumberStyles.Float, invariant, out double interval) || interval is not (>= 1 and <= 1400)
    || (args.Length > 4 && (!double.TryParse(args[4], NumberStyles.Float, invariant, out window) || window is not (>= 1 and <= 1440)))
    || (args.Length > 5 && (!double.TryParse(args[5], NumberStyles.Float, invariant, out ahead) || ahead is not (>= -86_400 and <= 86_400))))
{
    Console.Error.WriteLine("usage: PitReaderLog <log> <marker tag> <marker interval, 1 to 1400 s> <kit tag> [window, 1 to 1440 min] [clock ahead, s]");
    return 64;
}

if (!File.Exists(args[0]))
{
    Console.Error.WriteLine($"{args[0]}: there is no such file.");
    return 64;
}

try
{
    var refused = new List<RefusedRow>();
    using var log = new StreamReader(args[0]);
    TagRead[] reads = [.. LogReader.Reads(log, TimeSpan.Zero, refused)];
    Console.WriteLine(string.Create(invariant, $"{reads.Length} reads, {refused.Count} rows refused"));
    foreach (IGrouping<string, RefusedRow> rows in refused.GroupBy(row => row.Why, StringComparer.Ordinal))
    {
        Console.WriteLine(string.Create(invariant, $"  {rows.Count()} because {rows.Key}, first in line {rows.First().LineNumber}"));
    }

    if (reads.Length == 0)
    {
        return 65;
    }

    var closeout = new LogCloseout(reads, TagId.FromText(args[1]), TagId.FromText(args[3]), TimeSpan.FromSeconds(interval), TimeSpan.FromSeconds(ahead));
    for (DateTimeOffset from = closeout.Span.First; from < closeout.Span.Last; from += TimeSpan.FromMinutes(window))
    {
        ReconciliationResult result = closeout.Conclude(from, from + TimeSpan.FromMinutes(window));
        Console.WriteLine(string.Create(invariant, $"{from.UtcDateTime:yyyy-MM-dd HH:mm}Z  {result.Sessions[0].Session.Health.State,-8}  {result.Kit}"));
        foreach (ReadExplanation read in result.Reads.Where(read => read.Kind == ReadExplanationKind.Unknown))
        {
            Console.WriteLine(string.Create(invariant, $"                   unknown tag {read.Tag.Text}, {read.ReadCount} reads"));
        }
    }

    return 0;
}
catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or FormatException)
{
    Console.Error.WriteLine($"{args[0]}: {error.Message}");
    return 65;
}
