using System;
using System.Globalization;
using ToolLedger.Reconciliation;
using ToolLedger.Testing.Laws;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>One run of every law over generated shifts, shared by the tests of a class. TOOLLEDGER_LAW_CASES sets how many shifts, TOOLLEDGER_LAW_SEED the seed.</summary>
public sealed class LawRun
{
    public LawRun()
    {
        var policy = new ReconciliationPolicy();
        Report = ReconciliationLaws.Check(new Reconciler(policy).Reconcile, Settings(policy));
    }

    public LawReport Report { get; }

    public static LawSettings Settings(ReconciliationPolicy policy)
        => new() { Policy = policy, CaseCount = Number("TOOLLEDGER_LAW_CASES", 1000), Seed = (ulong)Number("TOOLLEDGER_LAW_SEED", 2026) };

    private static int Number(string variable, int otherwise)
        => Environment.GetEnvironmentVariable(variable) is { Length: > 0 } text ? int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture) : otherwise;
}
