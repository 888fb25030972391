using System.Globalization;
using System.Linq;

namespace ToolLedger.Tests.Presence.Proof;

/// <summary>How large the kits are and in which passes they are looked at.</summary>
internal sealed record RiskShape(int Lines, int[] Looks, bool IsChanged = false)
{
    public string Name => string.Create(CultureInfo.InvariantCulture, $"{Lines} tools, {PassText}{(IsChanged ? " looks, surroundings changed" : " looks")}");

    private string PassText => Looks.Distinct().Count() == 1 ? string.Create(CultureInfo.InvariantCulture, $"{Looks.Length} x {Looks[0]}") : string.Join(" + ", Looks);
}
