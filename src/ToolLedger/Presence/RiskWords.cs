using System.Globalization;
using ToolLedger.Statistics;

namespace ToolLedger.Presence;

/// <summary>Probabilities and odds as a person reads them: two digits that count.</summary>
internal static class RiskWords
{
    /// <summary>A chance such as "1 in 25,000", "7 in 100", "less than 1 in 1,000,000".</summary>
    public static string Chance(double chance)
    {
        // No model of tags is good enough to speak of less.
        if (chance < 1e-6)
        {
            return "less than 1 in 1,000,000";
        }

        return chance < 0.05 ? "1 in " + Whole(1 / chance) : chance > 0.99 ? "more than 99 in 100" : Whole(chance * 100) + " in 100";
    }

    /// <summary>A percentage such as "0.0040" or "7.1".</summary>
    public static string Percent(double chance) => chance > 0.99 ? "more than 99" : chance is > 0 and < 1e-6 ? "less than 0.0001" : Figure(chance * 100);

    /// <summary>What odds are multiplied by: "14", or "1/50".</summary>
    public static string Factor(double logOdds) => logOdds >= 0 ? Figure(Elementary.Exp(logOdds)) : "1/" + Figure(Elementary.Exp(-logOdds));

    /// <summary>Odds such as "99 to 1" or "1 to 20".</summary>
    public static string Odds(double logOdds) => logOdds >= 0 ? Figure(Elementary.Exp(logOdds)) + " to 1" : "1 to " + Figure(Elementary.Exp(-logOdds));

    /// <summary>A positive number with two digits that count.</summary>
    private static string Figure(double value)
    {
        const double Large = 1e12;
        if (value >= Large)
        {
            return "more than 1,000,000,000,000";
        }

        if (value == 0)
        {
            return "0";
        }

        return value < 1e-7 ? "less than 0.0000001" : Whole(value);
    }

    private static string Whole(double value)
    {
        decimal number = (decimal)value;
        decimal scale = 1;
        while (number / scale >= 100)
        {
            scale *= 10;
        }

        while (number / scale < 10)
        {
            scale /= 10;
        }

        return (decimal.Round(number / scale) * scale).ToString("#,0.#########", CultureInfo.InvariantCulture);
    }
}
