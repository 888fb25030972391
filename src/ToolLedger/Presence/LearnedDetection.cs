using ToolLedger.Records;

namespace ToolLedger.Presence;

/// <summary>What was learned of tags of one kind at one station, with bounds for what is claimed of them.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed record LearnedDetection
{
    /// <summary>The likeliest model, but with strays that are no fewer, and answer no worse, than their bounds and the model of the class allow to say; null where it is refused.</summary>
    public DetectionModel? Model { get; init; }

    /// <summary>Why there is no model, or null. Strays that are read better on average than tags that are there point to sessions whose truth was mistaken.</summary>
    public Reason? Refused { get; init; }

    /// <summary>True where the fit ended on its limit of work before it settled. The model then takes every absent tag for a stray that answers as well as one that is there, so that reads account for nothing.</summary>
    public bool IsCutShort { get; init; }

    /// <summary>Passes of tags that were certainly there.</summary>
    public int PassesThere { get; init; }

    /// <summary>Those with at least one read.</summary>
    public int PassesRead { get; init; }

    /// <summary>Sessions of tags that were certainly not there.</summary>
    public int SessionsAbsent { get; init; }

    /// <summary>Those in which the tag was read all the same.</summary>
    public int SessionsStray { get; init; }

    /// <summary>Sessions that were not learned from, since they were degraded.</summary>
    public int SessionsLeftOut { get; init; }

    /// <summary>The one-sided 95 % Clopper-Pearson bound below the share of passes with a read, of tags that are there; 0 without any. For claims; the model is for decisions.</summary>
    public double ReadShareAtLeast { get; init; }

    /// <summary>The one-sided 95 % Clopper-Pearson bound above the share of sessions in which a tag that is not there is read; 1 without any.</summary>
    public double StrayShareAtMost { get; init; }

    /// <summary>The one-sided 95 % bound above the mean rate of strays, by profile likelihood; 1 where none was heard, or learning was cut short.</summary>
    public double StrayRateAtMost { get; init; }
}
