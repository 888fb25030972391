using System;
using System.Runtime.InteropServices;

namespace ToolLedger.Calibration;

/// <summary>Puts the answers for the functions of a tool together: the same for all, or limited where some are fit and some are not, or the worst.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct WholeTool
{
    private CalibrationVerdict worst;
    private CalibrationVerdict firstDue;
    private int fit;
    private int unfit;
    private bool lapses;

    internal readonly bool IsEmpty => fit + unfit == 0;

    internal void Add(CalibrationVerdict answer)
    {
        if (IsEmpty || answer.Severity > worst.Severity || (answer.Severity == worst.Severity && answer.Until < worst.Until))
        {
            worst = answer;
        }

        lapses |= answer.LapsesDuring;
        if (!answer.IsFit)
        {
            unfit++;
            return;
        }

        if (fit == 0 || Comes(answer.Until, firstDue.Until))
        {
            firstDue = answer;
        }

        fit++;
    }

    internal readonly CalibrationVerdict Answer()
    {
        if (fit == 0 || unfit == 0)
        {
            return worst with { LapsesDuring = lapses };
        }

        return new CalibrationVerdict
        {
            State = CalibrationState.Limited,
            Kind = CalibrationReasons.PartlyFit,
            SiteDate = worst.SiteDate,
            Until = firstDue.Until,
            Function = worst.Function,
            WorstState = worst.State,
            FitCount = fit,
            UnfitCount = unfit,
            LapsesDuring = lapses,
        };
    }

    private static bool Comes(DateOnly? one, DateOnly? before) => one is not null && (before is null || one < before);
}
