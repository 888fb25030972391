namespace ToolLedger.Testing.Laws;

/// <summary>One law. What it draws comes from the trial's chance, so that a case and its seed give the same answer again.</summary>
internal abstract class Law
{
    public abstract ReconciliationLaw Kind { get; }

    public abstract LawAnswer Try(LawTrial trial);
}
