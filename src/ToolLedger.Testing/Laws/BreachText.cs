using System;
using System.Collections.Generic;

namespace ToolLedger.Testing.Laws;

/// <summary>A breach in a few lines of a few hundred characters: what a failed assertion may say without filling a screen.</summary>
internal static class BreachText
{
    private const int MaxLength = 300;
    private const int KeptAtStart = 60;
    private const int KeptBeforeDifference = 40;
    private const int MaxFacts = 12;

    public static string Of(LawBreach breach)
    {
        var lines = new List<string>
        {
            Plain($"case {breach.CaseNumber} (seed {breach.CaseSeed})"),
            "expected: " + Cut(breach.Expected, 0),
        };
        int difference = breach.Before.Length == 0 ? 0 : breach.Before.AsSpan().CommonPrefixLength(breach.Found);
        if (breach.Before.Length > 0)
        {
            lines.Add("before: " + Cut(breach.Before, difference));
        }

        lines.Add("found: " + Cut(breach.Found, difference));
        string[] facts = breach.Case.ToString().Split('\n');
        lines.Add(Plain($"smallest case, {facts.Length} facts:"));
        for (int i = 0; i < Math.Min(facts.Length, MaxFacts); i++)
        {
            lines.Add("  " + Cut(facts[i], 0));
        }

        if (facts.Length > MaxFacts)
        {
            lines.Add(Plain($"  and {facts.Length - MaxFacts} more, all of them in LawBreach.Case"));
        }

        lines.Add(Plain($"again: check with {{ Seed = {breach.CheckSeed}, CaseCount = {breach.CaseNumber}, Laws = [ReconciliationLaw.{breach.Law}] }}; the case before it was made smaller: AnyReconciliationCase.FromSeed({breach.CaseSeed})"));
        return string.Join('\n', lines);
    }

    /// <summary>At most 300 characters of a text, its start and the place that matters among them; what is left out is said by its length.</summary>
    private static string Cut(string text, int place)
    {
        string line = text.Replace("\n", "; ", StringComparison.Ordinal);
        if (line.Length <= MaxLength)
        {
            return line;
        }

        int from = place <= MaxLength - KeptBeforeDifference ? 0 : Whole(line, place - KeptBeforeDifference);
        int start = from == 0 ? 0 : Whole(line, KeptAtStart);
        int end = Whole(line, Math.Min(line.Length, from + MaxLength - start));
        string head = start == 0 ? "" : line[..start] + " ... ";
        return head + line[from..end] + (end < line.Length ? Plain($" ... ({line.Length} characters)") : "");
    }

    /// <summary>Never between the halves of a surrogate pair.</summary>
    private static int Whole(string text, int at) => at > 0 && at < text.Length && char.IsLowSurrogate(text[at]) ? at - 1 : at;

    private static string Plain(FormattableString text) => FormattableString.Invariant(text);
}
