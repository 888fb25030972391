using System;
using System.Collections.Generic;
using ToolLedger.Reconciliation;

namespace ToolLedger.Testing.Laws;

/// <summary>How many cases a check runs, from which seed, under which policy.</summary>
/// <remarks>Changed with <c>with</c>. Immutable and thread-safe.</remarks>
public sealed record LawSettings
{
    private const int MaxCaseCount = 100_000_000;

    /// <summary>The seed; the same seed gives the same cases on any machine.</summary>
    /// <value>The default is 1.</value>
    public ulong Seed { get; init; } = 1;

    /// <summary>How many cases are generated.</summary>
    /// <value>1 to 100,000,000. The default is 1,000.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public int CaseCount
    {
        get;
        init => field = value is >= 1 and <= MaxCaseCount ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "The number of cases is 1 to 100,000,000.");
    } = 1000;

    /// <summary>The policy that cases are reconciled under.</summary>
    /// <value>The default has the default value of every setting.</value>
    /// <exception cref="ArgumentNullException">It is set to null.</exception>
    public ReconciliationPolicy Policy
    {
        get;
        init => field = value ?? throw new ArgumentNullException(nameof(value));
    } = new();

    /// <summary>The laws to check.</summary>
    /// <value>The default, an empty list, stands for all of them.</value>
    /// <exception cref="ArgumentNullException">It is set to null.</exception>
    public IReadOnlyList<ReconciliationLaw> Laws
    {
        get;
        init => field = value is null ? throw new ArgumentNullException(nameof(value)) : [.. value];
    } = [];

    /// <summary>How many smaller cases are tried to make a broken one readable.</summary>
    /// <value>0 to 1,000,000. The default is 4,000.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public int ShrinkLimit
    {
        get;
        init => field = value is >= 0 and <= 1_000_000 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "The number of smaller cases is 0 to 1,000,000.");
    } = 4000;
}
