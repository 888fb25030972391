using System;
using ToolLedger.Statistics;

namespace ToolLedger.Presence;

/// <content>The posterior of passes that may have different models.</content>
public sealed partial record DetectionModel
{
    /// <summary>The natural logarithm of the odds that a tag is there, at the models' own parameters. Being a stray is one question for passes of the same surroundings: the largest stray share of
    /// their models counts where it was read, the smallest where all was silent.</summary>
    internal static double LogOdds(ReadOnlySpan<PassLooks> passes, double absentShare, bool isBounded, Func<int, DetectionModel> modelOf)
    {
        bool isRead = false;
        foreach (PassLooks pass in passes)
        {
            isRead |= pass.Reads > 0;
        }

        double odds = Elementary.Log((1 - absentShare) / absentShare);
        for (int i = 0; i < passes.Length; i++)
        {
            if (IsFirstOfItsSurroundings(passes, i))
            {
                odds += LogRatio(passes, passes[i].Surroundings, isBounded && isRead, modelOf);
            }
        }

        return odds;
    }

    private static double LogRatio(ReadOnlySpan<PassLooks> passes, int surroundings, bool isBounded, Func<int, DetectionModel> modelOf)
    {
        double present = 0, stray = 0, ratios = 0;
        bool isRead = false;
        decimal least = 1, most = 0;
        foreach (PassLooks pass in passes)
        {
            if (pass.Surroundings != surroundings || pass.Looks == 0)
            {
                continue;
            }

            DetectionModel model = modelOf(pass.Model);
            isRead |= pass.Reads > 0;
            double there = model.LogPresent(pass.Looks, pass.Reads);
            double near = model.LogStray(pass.Looks, pass.Reads);
            double ratio = there - near;
            if (isBounded && pass.Reads == 0)
            {
                ratio = Math.Min(ratio, model.LogPresent(pass.Looks, 1) - model.LogStray(pass.Looks, 1));
            }

            present += there;
            stray += near;
            ratios += ratio;
            (least, most) = (decimal.Min(least, model.StrayShare), decimal.Max(most, model.StrayShare));
        }

        if (most == 0)
        {
            // Passes without looks say nothing.
            return 0;
        }

        double asStray = ratios - Elementary.Log((double)most);
        if (isRead)
        {
            return asStray;
        }

        double asSilent = present - LogAbsentSilent((double)least, stray);
        return isBounded ? Math.Min(asSilent, asStray) : asSilent;
    }
}
