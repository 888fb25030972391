using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;

namespace CalibrationDesk;

/// <summary>A file of comma-separated values with a header line (RFC 4180; a quoted field may not hold a line end). Every fault names its line.</summary>
internal sealed class CsvTable
{
    private const int MaxRowCount = 200_000;
    private const int MaxLineLength = 10_000;
    private const int MaxShownLength = 80;

    private readonly string path;
    private readonly string[] header;

    private CsvTable(string path, string[] header, List<(int Line, string[] Cells)> rows)
    {
        this.path = path;
        this.header = header;
        Rows = rows;
    }

    internal IReadOnlyList<(int Line, string[] Cells)> Rows { get; }

    /// <exception cref="DeskException">The file cannot be opened, or is refused.</exception>
    internal static CsvTable Read(string path, string[] needed, string[] known)
    {
        string[] lines;
        try
        {
            lines = [.. File.ReadLines(path, new UTF8Encoding(false, throwOnInvalidBytes: true)).Take(MaxRowCount + 2)];
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new DeskException(ExitCodes.Usage, $"{path} cannot be read: {problem.Message}");
        }
        catch (DecoderFallbackException)
        {
            throw new DeskException(ExitCodes.BadInput, $"{path} is not UTF-8.");
        }

        if (lines.Length is 0 or > MaxRowCount + 1)
        {
            throw new DeskException(ExitCodes.BadInput, string.Create(CultureInfo.InvariantCulture, $"{path} must hold a header and at most {MaxRowCount} rows."));
        }

        string[] names = Cut(path, 1, lines[0].TrimStart('\uFEFF'));
        if (needed.FirstOrDefault(name => !names.Contains(name, StringComparer.Ordinal)) is { } missing)
        {
            throw new DeskException(ExitCodes.BadInput, $"{path}, line 1: the column {missing} is missing. The header, cut at commas, has: {string.Join(" | ", names.Select(Shown))}.");
        }

        if (names.FirstOrDefault(name => !known.Contains(name, StringComparer.Ordinal)) is { } unknown)
        {
            throw new DeskException(ExitCodes.BadInput, $"{path}, line 1: the column {unknown} is not known here. Known: {string.Join(", ", known)}.");
        }

        if (names.Distinct(StringComparer.Ordinal).Count() < names.Length)
        {
            throw new DeskException(ExitCodes.BadInput, $"{path}, line 1: a column stands twice.");
        }

        var rows = new List<(int, string[])>();
        for (int index = 1; index < lines.Length; index++)
        {
            if (lines[index].Length == 0)
            {
                continue;
            }

            string[] cells = Cut(path, index + 1, lines[index]);
            rows.Add(cells.Length == names.Length
                ? (index + 1, cells)
                : throw new DeskException(ExitCodes.BadInput, string.Create(CultureInfo.InvariantCulture, $"{path}, line {index + 1}: {cells.Length} fields, but the header has {names.Length}.")));
        }

        return new CsvTable(path, names, rows);
    }

    /// <summary>The text of a column; null where it is empty or the file has no such column.</summary>
    internal string? Text(string[] cells, string column)
    {
        int index = Array.IndexOf(header, column);
        return index < 0 || cells[index].Length == 0 ? null : cells[index];
    }

    internal DeskException Wrong(int line, string message) => new(ExitCodes.BadInput, string.Create(CultureInfo.InvariantCulture, $"{path}, line {line}: {message}"));

    /// <summary>The same, with what the column holds.</summary>
    internal DeskException Wrong(int line, string[] cells, string column, string rule) =>
        Wrong(line, Text(cells, column) is { } found ? $"{column} {rule}; found \"{Shown(found)}\"." : $"{column} {rule}; it is empty.");

    /// <summary>At most 80 characters, and none that could move a cursor.</summary>
    private static string Shown(string text) =>
        new([.. (text.Length > MaxShownLength ? text[..MaxShownLength] : text).Select(static one => char.IsControl(one) || char.IsSurrogate(one) ? '?' : one)]);

    private static string[] Cut(string path, int number, string line)
    {
        if (line.Length > MaxLineLength)
        {
            throw new DeskException(ExitCodes.BadInput, string.Create(CultureInfo.InvariantCulture, $"{path}, line {number}: longer than {MaxLineLength} characters."));
        }

        var cells = new List<string>();
        int at = 0;
        while (true)
        {
            if (at < line.Length && line[at] == '"')
            {
                int end = at + 1;
                while (end < line.Length && (line[end] != '"' || (end + 1 < line.Length && line[end + 1] == '"')))
                {
                    end += line[end] == '"' ? 2 : 1;
                }

                if (end >= line.Length || (end + 1 < line.Length && line[end + 1] != ','))
                {
                    throw new DeskException(ExitCodes.BadInput, string.Create(CultureInfo.InvariantCulture, $"{path}, line {number}: quotation marks do not enclose a whole field."));
                }

                cells.Add(line[(at + 1)..end].Replace("\"\"", "\"", StringComparison.Ordinal));
                at = end + 1;
            }
            else
            {
                int end = line.IndexOf(',', at);
                end = end < 0 ? line.Length : end;
                cells.Add(line[at..end].Trim());
                at = end;
            }

            if (at >= line.Length)
            {
                return [.. cells];
            }

            at++;
        }
    }
}
