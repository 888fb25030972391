using System;
using System.Collections.Generic;
using System.Globalization;
using System.Text.Json;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Interchange;

/// <summary>The fields of one row, and the line they make. The rules of a line are those of a stored manifest, so that a list and a file refuse alike.</summary>
internal sealed class MasterListRow
{
    private const int ColumnCount = (int)MasterListColumn.SubKitRevision + 1;

    // A decimal keeps that many digits without rounding.
    private const int MaxNumberLength = 24;

    private static readonly MasterListColumn[] OfTools =
        [MasterListColumn.Tool, MasterListColumn.Mark, MasterListColumn.Pieces, MasterListColumn.NeedsCalibration, MasterListColumn.ToolClass, MasterListColumn.SegregationClass];

    private readonly MasterListOptions _options;
    private readonly string?[] _fields = new string?[ColumnCount];
    private readonly IssueList _issues = [];
    private readonly LineCheck _check;
    private int _rowCount;

    internal MasterListRow(MasterListOptions options)
    {
        _options = options;
        _check = new LineCheck(default, _issues) { IsOnePieceByDefault = options.PiecesNotStatedMeansOne };
    }

    /// <summary>What is wrong with the row read last.</summary>
    internal List<(MasterListColumn? Column, Reason Reason)> Faults { get; } = [];

    internal string? this[MasterListColumn column]
    {
        get => _fields[(int)column];
        set => _fields[(int)column] = value;
    }

    internal void Clear() => Array.Clear(_fields);

    /// <summary>Counts a row that could not be cut into fields.</summary>
    internal void Skip() => _rowCount++;

    /// <summary>The line, or null and <see cref="Faults"/>.</summary>
    internal ManifestLine? Read()
    {
        _rowCount++;
        Faults.Clear();
        _issues.Clear();
        string? kind = KindOf();
        if (kind is null)
        {
            // What the other fields should say depends on the kind.
            return null;
        }

        ManifestLineRecord record = ToRecord(kind);
        ManifestLine? line = record.Read(new RecordReader(_issues), _check, "$");
        foreach (RecordIssue issue in _issues)
        {
            MasterListColumn? column = ColumnOf(issue);

            // A number that was no number is told already; that it is missing would be told twice.
            if (column is null || !Faults.Exists(fault => fault.Column == column))
            {
                Faults.Add((column, issue.Reason));
            }
        }

        return Faults.Count == 0 ? line : null;
    }

    private string? KindOf()
    {
        if (_options.Columns.Kind is null)
        {
            return "tool";
        }

        string? word = this[MasterListColumn.Kind];
        if (word is not null && _options.KindWords.TryGetValue(word, out string? kind))
        {
            return kind;
        }

        Fault(MasterListColumn.Kind, new Reason(MasterListRules.UnknownKind, ("found", SafeText.Excerpt(word ?? ""))));
        return null;
    }

    private ManifestLineRecord ToRecord(string kind)
    {
        var record = new ManifestLineRecord
        {
            Line = _options.Columns.Line is null ? new JsonNumber(_rowCount) : Number(MasterListColumn.Line),
            Kind = new JsonText(kind),
            Location = Text(MasterListColumn.Location),
        };
        switch (kind)
        {
            case "tool":
                record.Tool = ToTool();
                break;
            case "set":
                record.Container = ToTool();
                record.Contents = Text(MasterListColumn.Contents);
                record.Total = Number(MasterListColumn.Total);
                break;
            case "sub-kit":
                record.Kit = Text(MasterListColumn.SubKit);
                record.Revision = Number(MasterListColumn.SubKitRevision);
                if (Array.Exists(OfTools, column => this[column] is not null) || this[MasterListColumn.Description] is not null)
                {
                    record.Case = ToTool();
                }

                break;
            default:
                record.Description = Text(MasterListColumn.Description);
                record.Quantity = Number(MasterListColumn.Quantity);
                record.Unit = Text(MasterListColumn.Unit);
                break;
        }

        RefuseOthers(kind);
        return record;
    }

    private ToolRecord ToTool() => new()
    {
        Id = Text(MasterListColumn.Tool),
        Description = Text(MasterListColumn.Description),
        Mark = Text(MasterListColumn.Mark),
        Pieces = Number(MasterListColumn.Pieces),
        NeedsCalibration = Flag(MasterListColumn.NeedsCalibration),
        ToolClass = Text(MasterListColumn.ToolClass),
        SegregationClass = Text(MasterListColumn.SegregationClass),
    };

    /// <summary>What is filled in and says nothing about a line of that kind is an issue, not passed over.</summary>
    private void RefuseOthers(string kind)
    {
        bool isCounted = kind is "counted" or "consumable";
        foreach (MasterListColumn column in isCounted ? OfTools : [])
        {
            Refuse(column, kind);
        }

        if (!isCounted)
        {
            RefuseSeveral(kind);
        }

        foreach (MasterListColumn column in kind is "set" ? [] : (ReadOnlySpan<MasterListColumn>)[MasterListColumn.Contents, MasterListColumn.Total])
        {
            Refuse(column, kind);
        }

        foreach (MasterListColumn column in kind is "sub-kit" ? [] : (ReadOnlySpan<MasterListColumn>)[MasterListColumn.SubKit, MasterListColumn.SubKitRevision])
        {
            Refuse(column, kind);
        }
    }

    private void RefuseSeveral(string kind)
    {
        if (this[MasterListColumn.Quantity] is { } quantity && Number(MasterListColumn.Quantity).Value is { } amount && amount != 1)
        {
            Fault(MasterListColumn.Quantity, new Reason(MasterListRules.NotOne, ("kind", kind), ("found", SafeText.Excerpt(quantity))));
        }

        if (this[MasterListColumn.Unit] is { } unit && !string.Equals(unit, Unit.Each.Value, StringComparison.Ordinal))
        {
            Fault(MasterListColumn.Unit, new Reason(MasterListRules.NotOne, ("kind", kind), ("found", SafeText.Excerpt(unit))));
        }
    }

    private void Refuse(MasterListColumn column, string kind)
    {
        if (this[column] is not null)
        {
            Fault(column, new Reason(MasterListRules.NotForKind, ("kind", kind), ("member", _options.Columns.Names[(int)column]!)));
        }
    }

    private void Fault(MasterListColumn column, Reason reason) => Faults.Add((column, reason));

    private JsonText Text(MasterListColumn column) => new(this[column]);

    private JsonNumber Number(MasterListColumn column)
    {
        if (this[column] is not { } text)
        {
            return default;
        }

        const NumberStyles Plain = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint;
        if (text.Length <= MaxNumberLength && decimal.TryParse(text, Plain, CultureInfo.InvariantCulture, out decimal value))
        {
            return new JsonNumber(value);
        }

        Fault(column, new Reason(MasterListRules.BadNumber, ("found", SafeText.Excerpt(text))));
        return default;
    }

    private JsonFlag Flag(MasterListColumn column)
    {
        string? text = this[column];
        bool isTrue = string.Equals(text, _options.TrueWord, StringComparison.Ordinal);
        if (text is not null && !isTrue && !string.Equals(text, _options.FalseWord, StringComparison.Ordinal))
        {
            Fault(column, new Reason(MasterListRules.BadFlag, ("found", SafeText.Excerpt(text)), ("yes", _options.TrueWord), ("no", _options.FalseWord)));
        }

        return isTrue ? new JsonFlag(true, JsonTokenType.True) : default;
    }

    /// <summary>The column that a member of the stored form comes from.</summary>
    private static MasterListColumn? ColumnOf(RecordIssue issue)
    {
        string member = issue.Place[(issue.Place.LastIndexOf('.') + 1)..];
        if (issue.Reason.Kind == RecordRules.MissingMember)
        {
            foreach ((string name, string value) in issue.Reason.Values)
            {
                member = name is "member" ? value : member;
            }
        }
        else if (issue.Reason.Kind == ManifestRules.SameToolTwice)
        {
            return MasterListColumn.Tool;
        }
        else if (issue.Reason.Kind == ManifestRules.SameSubKitTwice)
        {
            return MasterListColumn.SubKit;
        }
        else if (issue.Reason.Kind == ManifestRules.NoLineNumber)
        {
            return MasterListColumn.Line;
        }

        return member switch
        {
            "line" => MasterListColumn.Line,
            "kind" => MasterListColumn.Kind,
            "location" => MasterListColumn.Location,
            "id" => MasterListColumn.Tool,
            "description" => MasterListColumn.Description,
            "mark" => MasterListColumn.Mark,
            "pieces" => MasterListColumn.Pieces,
            "toolClass" => MasterListColumn.ToolClass,
            "segregationClass" => MasterListColumn.SegregationClass,
            "quantity" => MasterListColumn.Quantity,
            "unit" => MasterListColumn.Unit,
            "contents" => MasterListColumn.Contents,
            "total" => MasterListColumn.Total,
            "kit" => MasterListColumn.SubKit,
            "revision" => MasterListColumn.SubKitRevision,
            _ => null,
        };
    }
}
