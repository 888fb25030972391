using System;
using System.Globalization;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Testing.Generators;

namespace ToolLedger.Testing.Laws;

/// <inheritdoc cref="ReconciliationLaw.SurplusMatters"/>
internal sealed class SurplusMattersLaw : Law
{
    public override ReconciliationLaw Kind => ReconciliationLaw.SurplusMatters;

    public override LawAnswer Try(LawTrial trial)
    {
        // A line that is not expected has no count to compare; of a tool that broke, and of a consumable used since, more than listed may be what is due or say nothing.
        LineConclusion[] lines = [.. trial.Result.AllLines.Where(one => one.Line is not SubKitLine { Case: null } && trial.Case.Entries.Uses.All(use => use.LineNumber != one.Line.Number || use.At < trial.Case.AsOf))];
        if (lines.Length == 0)
        {
            return LawAnswer.Silent;
        }

        LineConclusion picked = trial.Pick(lines);
        ManifestLine line = picked.Line;
        KitId list = picked.Within.Count == 0 ? trial.Case.Subject : ShiftPool.Box;
        var who = new PersonId("S");
        InventoryEntries said = trial.Case.Entries;
        InventoryEntries over = line is ToolLine { Tool: { } tool } && !trial.Case.Entries.Breakages.Any(one => one.Tool == tool.Id) && !trial.Case.Entries.Reconstructions.Any(one => one.Tool == tool.Id) && trial.Chance.Chance(0.5)
            ? said with { PieceCounts = [.. said.PieceCounts, new PieceCount { Tool = tool.Id, Pieces = tool.PieceCount + 1, By = who, At = trial.Case.AsOf }] }
            : said with { Counts = [.. said.Counts, new LineCount { Kit = list, LineNumber = line.Number, Quantity = More(line.Expected), By = who, At = trial.Case.AsOf }] };
        ReconciliationResult result = trial.Ask(trial.Case with { Entries = over });
        LineConclusion conclusion = result.AllLines.First(one => string.Equals(one.Label, picked.Label, StringComparison.Ordinal));
        return result.Kit.State != KitState.Discrepant || conclusion.IsAccounted
            ? LawAnswer.Broken(string.Create(CultureInfo.InvariantCulture, $"one more than expected on line {picked.Label} makes the kit discrepant"), $"{ResultText.Kit(result)}; {ResultText.Line(conclusion)}")
            : LawAnswer.Holds;
    }

    private static Quantity More(Quantity expected) => new(expected.Amount + 1, expected.Unit);
}
