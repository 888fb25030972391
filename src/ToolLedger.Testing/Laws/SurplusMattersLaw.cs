using System.Globalization;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Testing.Laws;

/// <inheritdoc cref="ReconciliationLaw.SurplusMatters"/>
internal sealed class SurplusMattersLaw : Law
{
    public override ReconciliationLaw Kind => ReconciliationLaw.SurplusMatters;

    public override LawAnswer Try(LawTrial trial)
    {
        ManifestLine line = trial.Pick(trial.Manifest.Lines);
        var who = new PersonId("S");
        InventoryEntries said = trial.Case.Entries;
        InventoryEntries over = line is ToolLine { Tool: { } tool } && trial.Chance.Chance(0.5)
            ? said with { PieceCounts = [.. said.PieceCounts, new PieceCount { Tool = tool.Id, Pieces = tool.PieceCount + 1, By = who, At = trial.Case.AsOf }] }
            : said with { Counts = [.. said.Counts, new LineCount { Kit = trial.Case.Subject, LineNumber = line.Number, Quantity = More(line.Expected), By = who, At = trial.Case.AsOf }] };
        ReconciliationResult result = trial.Ask(trial.Case with { Entries = over });
        LineConclusion conclusion = result.Lines.First(one => one.Line.Number == line.Number);
        return result.Kit.State != KitState.Discrepant || conclusion.IsAccounted
            ? LawAnswer.Broken(string.Create(CultureInfo.InvariantCulture, $"one more than expected on line {line.Number} makes the kit discrepant"), ResultText.Accounting(result))
            : LawAnswer.Holds;
    }

    private static Quantity More(Quantity expected) => new(expected.Amount + 1, expected.Unit);
}
