using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using System.Text.Unicode;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Interchange;

/// <summary>Reads the header and the rows of one master inventory list.</summary>
internal sealed class MasterListReader
{
    private const int MaxColumnCount = 4_096;
    private const int Unused = -1;

    private readonly LineBuffer _lines;
    private readonly MasterListOptions _options;
    private readonly CsvFields _csv;
    private readonly string?[] _names;
    private readonly MasterListRow _row;
    private readonly List<ManifestLine> _accepted = [];
    private readonly List<MasterListIssue> _issues = [];
    private readonly List<string> _unused = [];
    private int[]? _columns;
    private long _badRowCount;
    private bool _isStopped;

    internal MasterListReader(LineBuffer lines, MasterListOptions options)
    {
        _lines = lines;
        _options = options;
        _csv = new CsvFields(options.Delimiter);
        _names = options.Columns.Names;
        _row = new MasterListRow(options);
    }

    /// <summary>Reads the rows that are there; false when no further one will be read.</summary>
    internal bool ReadRows()
    {
        while (!_isStopped && _lines.TryTakeLine(out ReadOnlySpan<byte> line))
        {
            if (_lines.LineNumber == 1)
            {
                if (LineBuffer.IsUtf16(line))
                {
                    RefuseHeader(line, new Reason(ReadFileRules.NotUtf8));
                    break;
                }

                line = LineBuffer.WithoutMark(line);
            }

            if (_lines.IsTooLong)
            {
                Refuse(line, new Reason(ReadFileRules.LineTooLong, ("limit", _options.LineLengthMax.ToString(CultureInfo.InvariantCulture))));
                _isStopped = _columns is null;
            }
            else if (LineBuffer.IsBlank(line))
            {
                continue;
            }
            else if (_columns is null)
            {
                ReadHeader(line);
            }
            else
            {
                ReadRow(line);
            }
        }

        return !_isStopped;
    }

    internal MasterList End()
    {
        if (_columns is null && !_isStopped)
        {
            RefuseHeader(default, new Reason(ReadFileRules.NoHeader));
        }

        return new MasterList(_accepted, _issues, _unused, _badRowCount);
    }

    private void ReadHeader(ReadOnlySpan<byte> line)
    {
        if (TakeFields(line, out List<string> fields) is { } fault)
        {
            RefuseHeader(line, fault);
            return;
        }

        int[] columns = new int[fields.Count];
        uint given = 0;
        for (int i = 0; i < fields.Count; i++)
        {
            // An empty name of a column stands for none.
            columns[i] = fields[i].Length == 0 ? Unused : Array.IndexOf(_names, fields[i]);
            if (columns[i] == Unused)
            {
                _unused.Add(SafeText.Excerpt(fields[i]));
            }
            else if ((given & (1u << columns[i])) != 0)
            {
                RefuseHeader(line, new Reason(ReadFileRules.DuplicateColumn, ("column", fields[i])));
                return;
            }
            else
            {
                given |= 1u << columns[i];
            }
        }

        string[] missing = [.. _names.Where((name, i) => name is not null && (given & (1u << i)) == 0).Select(static name => $"\"{name}\"")];
        if (missing.Length > 0)
        {
            RefuseHeader(line, new Reason(MasterListRules.MissingColumns, ("columns", string.Join(", ", missing)), ("count", Text(missing.Length))));
        }

        _columns = columns;
    }

    private void ReadRow(ReadOnlySpan<byte> line)
    {
        if (_accepted.Count == KitManifest.MaxLineCount)
        {
            Refuse(line, LineCheck.TooManyLines());
            _isStopped = true;
            return;
        }

        Reason? fault = TakeFields(line, out List<string> fields);
        if (fault is null && fields.Count < _columns!.Length)
        {
            fault = new Reason(ReadFileRules.TooFewColumns, ("found", Text(fields.Count)), ("count", Text(_columns.Length)));
        }
        else if (fault is null && fields.Count > _columns!.Length)
        {
            fault = new Reason(ReadFileRules.TooManyColumns, ("count", Text(_columns.Length)));
        }

        _row.Clear();
        if (fault is not null)
        {
            // Without a column for numbers the rows are numbered by their place, whatever is in them.
            _row.Skip();
            Refuse(line, fault);
            return;
        }

        for (int i = 0; i < fields.Count; i++)
        {
            if (_columns![i] != Unused && fields[i].Length > 0)
            {
                _row[(MasterListColumn)_columns[i]] = fields[i];
            }
        }

        if (_row.Read() is { } accepted)
        {
            _accepted.Add(accepted);
            return;
        }

        _badRowCount++;
        foreach ((MasterListColumn? column, Reason reason) in _row.Faults)
        {
            string? name = column is { } known ? _names[(int)known] : null;
            string found = column is { } of && _row[of] is { } text ? SafeText.Escape(SafeText.Excerpt(text)) : column is null ? Excerpt(line) : "";
            Note(new MasterListIssue(_lines.LineNumber, name, found, reason));
        }
    }

    private Reason? TakeFields(ReadOnlySpan<byte> line, out List<string> fields)
    {
        fields = [];
        if (!Utf8.IsValid(line))
        {
            return new Reason(ReadFileRules.NotUtf8);
        }

        int at = 0;
        while (at <= line.Length)
        {
            if (!_csv.TryTake(line, ref at, out ReadOnlySpan<byte> text))
            {
                return new Reason(ReadFileRules.BadQuotes);
            }

            if (fields.Count == MaxColumnCount)
            {
                return new Reason(ReadFileRules.TooManyColumns, ("count", Text(MaxColumnCount)));
            }

            fields.Add(Encoding.UTF8.GetString(text));
        }

        return null;
    }

    private void RefuseHeader(ReadOnlySpan<byte> line, Reason reason)
    {
        // A header is one bad row, however much is wrong with it.
        _badRowCount = 0;
        Refuse(line, reason);
        _isStopped = true;
    }

    private void Refuse(ReadOnlySpan<byte> line, Reason reason)
    {
        _badRowCount++;
        Note(new MasterListIssue(Math.Max(1, _lines.LineNumber), null, Excerpt(line), reason));
    }

    private void Note(MasterListIssue issue)
    {
        if (_issues.Count < IssueList.MaxCount)
        {
            _issues.Add(issue);
        }
        else if (_issues.Count == IssueList.MaxCount)
        {
            _issues.Add(new MasterListIssue(issue.RowNumber, null, "", new Reason(RecordRules.MoreIssues, ("limit", Text(IssueList.MaxCount)))));
        }
    }

    private static string Excerpt(ReadOnlySpan<byte> line) =>
        SafeText.Escape(SafeText.Excerpt(Encoding.UTF8.GetString(line[..Math.Min(line.Length, 4 * SafeText.ExcerptLength)])));

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
