using System;
using ToolLedger.Reconciliation;

namespace ToolLedger.Testing.Tests.Laws;

/// <summary>A rule made of a function, for tests.</summary>
internal sealed class RuleOf(string name, RuleOf.Judgement judgement, Func<string>? settings = null) : IReconciliationRule
{
    internal delegate Verdict Judgement(in LineFacts facts);

    public string Name => name;

    public string Version => "1";

    public string Settings => settings is null ? "" : settings();

    public Verdict Judge(in LineFacts facts) => judgement(in facts);
}
