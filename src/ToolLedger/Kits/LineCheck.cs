using System.Collections.Generic;
using System.Globalization;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Kits;

/// <summary>The rules that hold between the lines of one manifest, whether they came as objects or from a file.</summary>
internal sealed class LineCheck
{
    private readonly List<RecordIssue> _issues;
    private readonly HashSet<int> _numbers = [];
    private readonly Dictionary<ToolId, int?> _tools = [];
    private int _lineCount;

    internal LineCheck(List<RecordIssue> issues) => _issues = issues;

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

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
