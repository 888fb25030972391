using System;
using System.Buffers;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using ToolLedger.Interchange;
using ToolLedger.Reads;
using ToolLedger.Records;

namespace ToolLedger.Tests.Interchange;

/// <summary>
/// What must hold for any bytes at all as a file of reads: nothing throws but what is promised, however the file is cut it says the same, every line says alone
/// what it says among others, and what was read can be written and read again.
/// </summary>
/// <remarks>A line alone is read with care, because the quick way keeps away from the end of what it has been given; among others the quick way takes whatever is
/// plain. So this holds both ways against each other. The first byte chooses the form.</remarks>
internal static class AnyFile
{
    private const int LengthMax = 200;

    // Local times of a site that changed its clocks twice in 2026.
    private static readonly SiteCalendar Site = new(
        "Depot",
        TimeSpan.FromHours(1),
        [
            new OffsetChange(new DateTimeOffset(2026, 3, 29, 1, 0, 0, TimeSpan.Zero), TimeSpan.FromHours(2)),
            new OffsetChange(new DateTimeOffset(2026, 10, 25, 1, 0, 0, TimeSpan.Zero), TimeSpan.FromHours(1)),
        ]);

    internal static ReadFileOptions OptionsOf(byte choice)
    {
        var form = (ReadTimeForm)((choice >> 1) % 5);
        return new ReadFileOptions
        {
            TimeForm = form,
            Calendar = form == ReadTimeForm.Iso8601Local ? Site : null,
            TagForm = (ReadTagForm)((choice >> 4) % 3),
            Delimiter = ",; |"[choice >> 6],
            LineLengthMax = LengthMax,
        };
    }

    internal static bool IsJson(byte choice) => (choice & 1) == 0;

    internal static void Check(ReadOnlySpan<byte> input)
    {
        if (input.Length == 0)
        {
            return;
        }

        byte choice = input[0];
        byte[] file = input[1..].ToArray();

        // Blank lines, so that the end of the file is far from the last line.
        byte[] whole = [.. file, .. Enumerable.Repeat((byte)'\n', 600)];
        List<TagRead> reads = [];
        List<string> rows = Rows(note => Open(whole, choice, note), reads);
        Must(rows.SequenceEqual(Rows(note => Open(new PieceStream(whole, choice, 700), choice, note), [])), "cuts change the file");
        Must(Alone(file, choice) is not { } alone || rows.SequenceEqual(alone), "a line says something else among others");
        WriteAndRead(reads, choice);
    }

    private static ReadFileReader Open(byte[] file, byte choice, Action<BadRow> note) =>
        IsJson(choice) ? ReadFile.OpenJsonLines(file, OptionsOf(choice), note) : ReadFile.OpenCsv(file, OptionsOf(choice), note);

    private static ReadFileReader Open(Stream file, byte choice, Action<BadRow> note) =>
        IsJson(choice) ? ReadFile.OpenJsonLinesStream(file, OptionsOf(choice), note) : ReadFile.OpenCsvStream(file, OptionsOf(choice), note);

    // Reads first and refusals behind them: many reads come at once, and what is refused between them is told while they are read.
    private static List<string> Rows(Func<Action<BadRow>, ReadFileReader> open, List<TagRead> reads)
    {
        List<string> bad = [];
        ReadFileReader reader = open(row => bad.Add(Text(row)));
        int before = reads.Count;
        Exhaust(reader, reads, bad);
        Must(reader.ReadCount == reads.Count - before, "the reader counts other reads");
        return [.. reads.Select(read => read.ToString()), .. bad];
    }

    private static void Exhaust(ReadFileReader reader, List<TagRead> reads, List<string> bad)
    {
        var batch = new TagRead[7];
        try
        {
            int count;
            while ((count = reader.Read(batch)) > 0)
            {
                reads.AddRange(batch.AsSpan(0, count));
            }
        }
        catch (ReadFileException exception)
        {
            bad.Add("ended: " + Text(exception.Row!));
        }
    }

    private static string Text(BadRow row) => string.Create(CultureInfo.InvariantCulture, $"{row.Rule} {row.Column} {row.Reason} {row.Excerpt}");

    // Null where the header is not on the first line.
    private static List<string>? Alone(byte[] file, byte choice)
    {
        List<byte[]> lines = Lines(file);
        byte[] start = IsJson(choice) ? [] : [.. lines[0], (byte)'\n'];
        if (!IsJson(choice) && start.All(unit => unit is (byte)' ' or (byte)'\r' or (byte)'\n' or 0xEF or 0xBB or 0xBF))
        {
            return null;
        }

        var reads = new List<TagRead>();
        var bad = new List<string>();
        for (int i = 0; i < lines.Count && (bad.Count == 0 || !bad[^1].StartsWith("ended", StringComparison.Ordinal)); i++)
        {
            byte[] alone = IsJson(choice) ? i == 0 ? lines[0] : [(byte)'\n', .. lines[i]] : i == 0 ? start : [.. start, .. lines[i]];
            Exhaust(Open(alone, choice, row => bad.Add(Text(row))), reads, bad);
        }

        return [.. reads.Select(read => read.ToString()), .. bad];
    }

    private static List<byte[]> Lines(byte[] file)
    {
        var lines = new List<byte[]>();
        int at = 0;
        int length;
        while ((length = file.AsSpan(at).IndexOf((byte)'\n')) >= 0)
        {
            lines.Add(file[at..(at + length)]);
            at += length + 1;
        }

        lines.Add(file[at..]);
        return lines;
    }

    private static void WriteAndRead(List<TagRead> reads, byte choice)
    {
        var output = new ArrayBufferWriter<byte>();
        ReadFileWriter writer = IsJson(choice) ? ReadFileWriter.JsonLines(output, OptionsOf(choice)) : ReadFileWriter.Csv(output, OptionsOf(choice));
        var written = new List<TagRead>();
        foreach (TagRead read in reads)
        {
            if (writer.TryWrite(read, out Reason? refusal))
            {
                written.Add(read);
            }
            else
            {
                // The writer escapes more than it must, so that a line may become longer than it was.
                Must(refusal.Kind == ReadFileRules.LineTooLong, "what was read cannot be written");
            }
        }

        List<TagRead> again = [];
        Rows(note => Open(output.WrittenSpan.ToArray(), choice, note), again);
        Must(again.SequenceEqual(written), "what was written is read as something else");
    }

    private static void Must(bool holds, string what)
    {
        if (!holds)
        {
            throw new InvalidOperationException(what);
        }
    }
}
