using System.Globalization;
using ToolLedger.Testing.Cases;

namespace ToolLedger.Testing.Laws;

/// <summary>The first case that broke a law, made smaller, with what was expected and what came out.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class LawBreach
{
    internal LawBreach(int caseNumber, ulong caseSeed, ReconciliationCase smallest, LawAnswer answer)
    {
        CaseNumber = caseNumber;
        CaseSeed = caseSeed;
        Case = smallest;
        Expected = answer.Expected;
        Found = answer.Found;
    }

    /// <summary>Which case it was, from 1.</summary>
    public int CaseNumber { get; }

    /// <summary>The seed of that case alone, before it was made smaller: for <see cref="Generators.AnyReconciliationCase.FromSeed"/>.</summary>
    public ulong CaseSeed { get; }

    /// <summary>The smallest case found that breaks the law.</summary>
    public ReconciliationCase Case { get; }

    /// <summary>What the law asks for.</summary>
    public string Expected { get; }

    /// <summary>What came out.</summary>
    public string Found { get; }

    /// <summary>What was expected, what came out, and the facts.</summary>
    /// <returns>English text of several lines.</returns>
    public override string ToString()
        => string.Create(CultureInfo.InvariantCulture, $"case {CaseNumber} (seed {CaseSeed})\nexpected: {Expected}\nfound: {Found}\n{Case}");
}
