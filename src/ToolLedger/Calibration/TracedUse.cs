using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <summary>A use within the suspect window, with the error as found at its value and what was decided.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class TracedUse
{
    internal TracedUse(MeasuredUse use, CalibrationStatus status, FoundError error, UseEffect effect, Reason reason, UseDisposition? disposition)
    {
        Use = use;
        Status = status;
        Found = error;
        Effect = effect;
        Reason = reason;
        Disposition = disposition;
    }

    /// <summary>The use.</summary>
    public MeasuredUse Use { get; }

    /// <summary>The status of the tool at the use, by what was granted then and what is known now.</summary>
    public CalibrationStatus Status { get; }

    /// <summary>The deviation as found at the value of the use, measured less nominal, between the points next to it in a straight line; null if not known.</summary>
    public decimal? Error => Found.Value;

    /// <summary>The larger expanded uncertainty of the points next to the value; null if not stated.</summary>
    public decimal? Uncertainty => Found.Uncertainty;

    /// <summary>What the error means for the work, as far as values say.</summary>
    public UseEffect Effect { get; }

    /// <summary>Why.</summary>
    public Reason Reason { get; }

    /// <summary>The latest decision; null while nobody decided.</summary>
    public UseDisposition? Disposition { get; }

    /// <summary>True until a person has decided, and while the work is to be done again.</summary>
    public bool IsOpen => Disposition is null or { Decision: UseDecision.ToBeDoneAgain };

    internal FoundError Found { get; }

    internal TracedUse With(UseDisposition? disposition) => new(Use, Status, Found, Effect, Reason, disposition);
}
