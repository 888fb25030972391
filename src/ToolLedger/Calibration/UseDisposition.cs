using System;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <summary>A signed decision about one traced use; a later one about the same use replaces it and deletes nothing.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class UseDisposition
{
    /// <summary>Longest reason, in characters.</summary>
    public const int MaxReasonLength = 200;

    /// <summary>The key of the use.</summary>
    /// <exception cref="ArgumentException">The text is not a key.</exception>
    public required string Use { get; init => field = IdText.Require(value, nameof(value)); }

    /// <summary>The decision.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not one of the enumeration.</exception>
    public required UseDecision Decision { get; init => field = Enum.IsDefined(value) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "The decision must be one of the enumeration."); }

    /// <summary>Why: 1 to 200 printable characters.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Reason { get; init => field = RecordText.Require(value, MaxReasonLength, nameof(value)); }

    /// <summary>Who decided, when, in which role.</summary>
    /// <exception cref="ArgumentNullException">The signature is null.</exception>
    public required Signature By { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }
}
