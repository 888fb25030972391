using System.Collections.Generic;
using System.Globalization;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Kits;

/// <summary>The rules that hold between the lines of one manifest, whether they came as objects or from a file.</summary>
internal sealed class LineCheck
{
    private readonly IssueList _issues;
    private readonly HashSet<int> _numbers = [];
    private readonly Dictionary<ToolId, int?> _tools = [];
    private readonly Dictionary<KitId, int?> _subKits = [];
    private readonly KitId _kit;
    private int _lineCount;

    /// <param name="kit">The kit of the manifest; empty if it is not known.</param>
    /// <param name="issues">Where issues go.</param>
    internal LineCheck(KitId kit, IssueList issues)
    {
        _kit = kit;
        _issues = issues;
    }

    /// <summary>Whether the caller has declared that a tool whose number of pieces is not stated is of one piece.</summary>
    internal bool IsOnePieceByDefault { get; init; }

    internal static string PlaceOf(int index) => string.Create(CultureInfo.InvariantCulture, $"$.lines[{index}]");

    internal static Reason TooManyLines() => new(ManifestRules.TooManyLines,
        ("limit", KitManifest.MaxLineCount.ToString("N0", CultureInfo.InvariantCulture)));

    /// <summary>Counts a line and notes its number, if it has one.</summary>
    internal void Number(int? number, string place)
    {
        _lineCount++;
        if (number is { } given && !_numbers.Add(given))
        {
            _issues.Report(place + ".line", new Reason(ManifestRules.DuplicateLineNumber, ("number", Text(given))), given);
        }
    }

    /// <summary>Notes the tool of a line: one tool, one line.</summary>
    internal void Tool(ToolId tool, int? number, string place)
    {
        if (!_tools.TryAdd(tool, number))
        {
            string other = _tools[tool] is { } line ? Text(line) : "without a number";
            _issues.Report(place, new Reason(ManifestRules.SameToolTwice, ("tool", tool.Value), ("otherLine", other)), number);
        }
    }

    /// <summary>Notes the alternates of a line: each stands for this line only, and is of the class of the tool.</summary>
    internal void Alternates(Tool tool, IReadOnlyList<Tool> alternates, int? number, string place)
    {
        for (int i = 0; i < alternates.Count; i++)
        {
            string alternatePlace = string.Create(CultureInfo.InvariantCulture, $"{place}.alternates[{i}]");
            Tool(alternates[i].Id, number, alternatePlace);
            if (!string.Equals(alternates[i].SegregationClass, tool.SegregationClass, System.StringComparison.Ordinal))
            {
                _issues.Report(alternatePlace, new Reason(ManifestRules.AlternateOfOtherClass, ("tool", alternates[i].Id.Value),
                    ("found", Quoted(alternates[i].SegregationClass)), ("expected", Quoted(tool.SegregationClass))), number);
            }
        }
    }

    /// <summary>Notes the sub-kit of a line: one sub-kit, one line, and no kit inside itself.</summary>
    internal void SubKit(KitId kit, int? number, string place)
    {
        if (kit == _kit)
        {
            _issues.Report(place, new Reason(ManifestRules.ContainsItself, ("kit", kit.Value)), number);
        }

        if (!_subKits.TryAdd(kit, number))
        {
            string other = _subKits[kit] is { } line ? Text(line) : "without a number";
            _issues.Report(place, new Reason(ManifestRules.SameSubKitTwice, ("kit", kit.Value), ("otherLine", other)), number);
        }
    }

    /// <summary>A counted line says how many of what.</summary>
    internal void Quantity(decimal? amount, Unit unit, int? number, string place)
    {
        if (amount is null or 0)
        {
            _issues.Report(place + ".quantity", new Reason(ManifestRules.LineWithoutQuantity), number);
        }

        if (unit.IsEmpty)
        {
            _issues.Report(place + ".unit", new Reason(ManifestRules.LineWithoutUnit), number);
        }
    }

    /// <summary>After the last line: there must have been one.</summary>
    internal void End()
    {
        if (_lineCount == 0)
        {
            _issues.Report("$.lines", new Reason(ManifestRules.Empty));
        }
    }

    private static string Quoted(string? segregationClass) => segregationClass is null ? "none" : $"\"{segregationClass}\"";

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
