namespace ToolLedger.Calibration;

/// <summary>A calibration or a label that holds for a part of the tool only: a range of values, or not a function at all.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed record CalibrationLimitation
{
    /// <summary>The most limitations of one record or label.</summary>
    public const int MaxCount = 32;

    /// <summary>The function that is limited; null (the default) for every one.</summary>
    public string? Function { get; init; }

    /// <summary>The lowest value that is covered, in the unit of the function; null (the default) for no lower limit.</summary>
    public decimal? From { get; init; }

    /// <summary>The highest value that is covered, in the unit of the function; null (the default) for no upper limit.</summary>
    public decimal? To { get; init; }

    /// <summary>True if the function is not to be used at all. The default is false.</summary>
    public bool IsExcluded { get; init; }

    /// <summary>What else is limited, in words, such as "values of the report needed": 1 to 200 printable characters; null (the default) if nothing.</summary>
    public string? Note { get; init; }

    internal bool IsEmpty => From is null && To is null && !IsExcluded && Note is null;

    internal bool Concerns(string? function) => Function is null || function is null || string.Equals(Function, function, System.StringComparison.Ordinal);
}
