using System.Globalization;

namespace ToolLedger.Testing.Laws;

/// <summary>What a check found of one law.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class LawOutcome
{
    internal LawOutcome(ReconciliationLaw law, int caseCount, int appliedCount, LawBreach? breach)
    {
        Law = law;
        CaseCount = caseCount;
        AppliedCount = appliedCount;
        Breach = breach;
    }

    /// <summary>The law.</summary>
    public ReconciliationLaw Law { get; }

    /// <summary>How many cases were put to it: all, or up to the first that broke it.</summary>
    public int CaseCount { get; }

    /// <summary>In how many of them it had something to say. A kit without a counted line, for example, has no surplus.</summary>
    public int AppliedCount { get; }

    /// <summary>The first case that broke it, or null.</summary>
    public LawBreach? Breach { get; }

    /// <summary>True where no case broke it.</summary>
    public bool Holds => Breach is null;

    /// <summary>For example "Partition: holds; it had something to say in 1000 of 1000 cases", or "Partition: broken by case 7, the first that breaks it; no further case was tried".</summary>
    /// <returns>English text; of several lines where the law is broken.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Law}: {Found()}");

    private string Found() => Breach is { } breach
        ? string.Create(CultureInfo.InvariantCulture, $"broken by case {breach.CaseNumber}, the first that breaks it; no further case was tried\n{breach}")
        : AppliedCount == 0 ? string.Create(CultureInfo.InvariantCulture, $"not tried, it had nothing to say in any of {CaseCount} cases")
        : string.Create(CultureInfo.InvariantCulture, $"holds; it had something to say in {AppliedCount} of {CaseCount} cases");
}
