using System;
using System.Linq;
using ToolLedger.Reconciliation;
using ToolLedger.Testing.Cases;
using ToolLedger.Testing.Generators;
using ToolLedger.Testing.Simulation;

namespace ToolLedger.Testing.Laws;

/// <summary>Puts a rule, or a host's own way from facts to an answer, to the laws that hold for every reconciliation, over generated shifts.</summary>
/// <remarks>
/// It needs no test framework: assert that the report holds and print the report where it does not. A rule that objects to more evidence, remembers
/// former calls, reads the culture of the host or says what only people may say breaks a law. What the rule throws is passed on in a <see cref="RuleException"/>.
/// Stateless and thread-safe, as far as what is checked is.
/// </remarks>
public static class ReconciliationLaws
{
    private static readonly Law[] All =
    [
        new PartitionLaw(), new SafeDefaultLaw(), new OrderAndRepetitionLaw(), new EvidenceHelpsLaw(), new DoubtIsMonotoneLaw(), new NoInventionLaw(),
        new SurplusMattersLaw(), new AsOfLaw(), new TwoAnswersLaw(), new DeterminismLaw(), new OtherWordsLaw(), new ReasonsLaw(), new RulesOnlyWithholdLaw(),
    ];

    /// <summary>Checks one further rule, applied beside the built-in ones.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="settings">How many cases, from which seed, under which policy.</param>
    /// <returns>What was found.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The rule has no name, no version or null settings, or the name of a built-in rule.</exception>
    public static LawReport Check(IReconciliationRule rule, LawSettings settings)
    {
        ArgumentNullException.ThrowIfNull(rule);
        ArgumentNullException.ThrowIfNull(settings);
        return Run(new LawSubject(new Reconciler(settings.Policy, [rule]).Reconcile, settings.Policy, rule), settings);
    }

    /// <summary>Checks a way from facts to an answer: a reconciler with all its rules, or the code that a host has around it.</summary>
    /// <param name="reconcile">From facts to the answer for the subject of the input, for example <c>reconciler.Reconcile</c>.</param>
    /// <param name="settings">How many cases, from which seed; the policy must be the one that <paramref name="reconcile"/> works under.</param>
    /// <returns>What was found; <see cref="ReconciliationLaw.RulesOnlyWithhold"/> has nothing to say here.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static LawReport Check(Func<ReconciliationInput, ReconciliationResult> reconcile, LawSettings settings)
    {
        ArgumentNullException.ThrowIfNull(reconcile);
        ArgumentNullException.ThrowIfNull(settings);
        return Run(new LawSubject(reconcile, settings.Policy, Rule: null), settings);
    }

    private static LawReport Run(LawSubject subject, LawSettings settings)
    {
        Law[] laws = [.. All.Where(law => settings.Laws.Count == 0 || settings.Laws.Contains(law.Kind))];
        var applied = new int[laws.Length];
        var breaches = new LawBreach?[laws.Length];
        var seeds = new SplitMix64(settings.Seed);
        for (int number = 1; number <= settings.CaseCount && Array.Exists(breaches, static breach => breach is null); number++)
        {
            ulong seed = seeds.Next();
            ReconciliationCase facts = AnyReconciliationCase.FromSeed(seed);
            var trial = new LawTrial(subject, facts, seed);
            for (int i = 0; i < laws.Length; i++)
            {
                if (breaches[i] is null)
                {
                    LawAnswer answer = trial.Try(laws[i]);
                    applied[i] += answer.Applies ? 1 : 0;
                    breaches[i] = answer.IsBroken ? Shrink(subject, laws[i], facts, answer, (settings.Seed, number, seed), settings.ShrinkLimit) : null;
                }
            }
        }

        return new LawReport(subject.Rule?.Name, settings.Seed, [.. laws.Select((law, i) => new LawOutcome(law.Kind, breaches[i]?.CaseNumber ?? settings.CaseCount, applied[i], breaches[i]))]);
    }

    /// <summary>Takes facts away as long as the law stays broken.</summary>
    private static LawBreach Shrink(LawSubject subject, Law law, ReconciliationCase facts, LawAnswer answer, (ulong Check, int Number, ulong Case) seed, int limit)
    {
        ReconciliationCase smallest = facts;
        int left = limit;
        bool isSmaller;
        do
        {
            isSmaller = false;
            foreach (ReconciliationCase smaller in CaseShrinker.Smaller(smallest))
            {
                if (left-- <= 0)
                {
                    break;
                }

                LawAnswer again = new LawTrial(subject, smaller, seed.Case).Try(law);
                if (again.IsBroken)
                {
                    (smallest, answer, isSmaller) = (smaller, again, true);
                    break;
                }
            }
        }
        while (isSmaller && left > 0);
        return new LawBreach(law.Kind, seed.Check, seed.Number, seed.Case, smallest, answer);
    }
}
