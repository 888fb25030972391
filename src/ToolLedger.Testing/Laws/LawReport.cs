using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace ToolLedger.Testing.Laws;

/// <summary>What a check found, law by law.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class LawReport
{
    internal LawReport(string? rule, ulong seed, IReadOnlyList<LawOutcome> outcomes)
    {
        Rule = rule;
        Seed = seed;
        Outcomes = outcomes;
    }

    /// <summary>The name of the rule that was checked; null where a function from facts to an answer was.</summary>
    public string? Rule { get; }

    /// <summary>The seed of the check.</summary>
    public ulong Seed { get; }

    /// <summary>One outcome for each law that was checked, in the order of <see cref="ReconciliationLaw"/>.</summary>
    public IReadOnlyList<LawOutcome> Outcomes { get; }

    /// <summary>True where no law was broken.</summary>
    public bool Holds => Outcomes.All(static outcome => outcome.Holds);

    /// <summary>The laws that were broken.</summary>
    public IReadOnlyList<ReconciliationLaw> Broken => [.. Outcomes.Where(static outcome => !outcome.Holds).Select(static outcome => outcome.Law)];

    /// <summary>The outcome of one law.</summary>
    /// <param name="law">The law.</param>
    /// <returns>Its outcome.</returns>
    /// <exception cref="ArgumentException">The law was not checked.</exception>
    public LawOutcome Of(ReconciliationLaw law)
        => Outcomes.FirstOrDefault(outcome => outcome.Law == law) ?? throw new ArgumentException($"The law {law} was not checked.", nameof(law));

    /// <summary>The rule, the seed and every outcome: what an assertion should say when it fails.</summary>
    /// <returns>English text of several lines.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{(Rule is { } rule ? $"rule {rule}, " : "")}seed {Seed}\n{string.Join('\n', Outcomes)}");
}
