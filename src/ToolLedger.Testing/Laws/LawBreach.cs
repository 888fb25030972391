using ToolLedger.Testing.Cases;

namespace ToolLedger.Testing.Laws;

/// <summary>The first case that broke a law, made smaller, with what was expected and what came out.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class LawBreach
{
    internal LawBreach(ReconciliationLaw law, ulong checkSeed, int caseNumber, ulong caseSeed, ReconciliationCase smallest, LawAnswer answer)
    {
        Law = law;
        CheckSeed = checkSeed;
        CaseNumber = caseNumber;
        CaseSeed = caseSeed;
        Case = smallest;
        Expected = answer.Expected;
        Before = answer.Before;
        Found = answer.Found;
    }

    /// <summary>The law.</summary>
    public ReconciliationLaw Law { get; }

    /// <summary>The seed of the check: with it, and <see cref="CaseNumber"/> as the number of cases, the same check finds this breach again.</summary>
    public ulong CheckSeed { get; }

    /// <summary>Which case it was, from 1.</summary>
    public int CaseNumber { get; }

    /// <summary>The seed of that case alone, before it was made smaller: for <see cref="Generators.AnyReconciliationCase.FromSeed"/>.</summary>
    public ulong CaseSeed { get; }

    /// <summary>The smallest case found that breaks the law.</summary>
    public ReconciliationCase Case { get; }

    /// <summary>What the law asks for.</summary>
    public string Expected { get; }

    /// <summary>The line, or the kit, that broke it as it stood before the case was changed; empty where the law changes nothing.</summary>
    public string Before { get; }

    /// <summary>What came out, whole; after a change the same line, or kit, as it stands then.</summary>
    public string Found { get; }

    /// <summary>What was expected, what stood there before and came out after, at most twelve of the facts, and how to repeat it, in lines of a few hundred characters; the properties have everything.</summary>
    /// <returns>English text of several lines.</returns>
    public override string ToString() => BreachText.Of(this);
}
