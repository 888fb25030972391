using System.Globalization;
using ToolLedger.Inventory;
using ToolLedger.Reconciliation;

namespace ToolLedger.Testing.Laws;

/// <inheritdoc cref="ReconciliationLaw.Determinism"/>
internal sealed class DeterminismLaw : Law
{
    private static readonly CultureInfo Foreign = MakeForeign();

    public override ReconciliationLaw Kind => ReconciliationLaw.Determinism;

    public override LawAnswer Try(LawTrial trial)
    {
        string first = ResultText.Whole(trial.Result);
        _ = ResultText.Whole(trial.Ask(trial.Case with { Sessions = [], Entries = new InventoryEntries() }));
        LawAnswer again = LawAnswer.Same("the same answer after another question", first, ResultText.Whole(trial.Ask(trial.Case)));
        return again.IsBroken ? again : LawAnswer.Same("the same answer in another culture", first, InForeignCulture(trial));
    }

    private static string InForeignCulture(LawTrial trial)
    {
#pragma warning disable RS0030 // Code under test must not look at the culture of the host; setting one is how that is seen.
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = Foreign;
            ReconciliationResult result = trial.Ask(trial.Case);
            return ResultText.Whole(result);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
#pragma warning restore RS0030
    }

    /// <summary>Built, not looked up: a host may run without culture data.</summary>
    private static CultureInfo MakeForeign()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NumberGroupSeparator = ".";
        culture.NumberFormat.NegativeSign = "minus ";
        culture.DateTimeFormat.DateSeparator = ".";
        culture.DateTimeFormat.TimeSeparator = ".";
        culture.DateTimeFormat.ShortDatePattern = "d.M.yy";
        culture.DateTimeFormat.LongTimePattern = "H.mm";
        return CultureInfo.ReadOnly(culture);
    }
}
