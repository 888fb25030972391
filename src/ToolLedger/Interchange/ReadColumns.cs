using System;

namespace ToolLedger.Interchange;

/// <summary>What a file of reads calls its columns (CSV) or members (JSON Lines). Compared character by character; other
/// columns and members are ignored.</summary>
/// <remarks>Changed with <c>with</c>; equal when every name is. Immutable and thread-safe.</remarks>
public sealed record ReadColumns
{
    /// <summary>The most characters a name can have.</summary>
    public const int MaxNameLength = 128;

    /// <summary>The tag; it must be there.</summary>
    /// <value>1 to 128 characters. The default is "epc".</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string Tag { get; init => field = Check(value ?? throw new ArgumentNullException(nameof(value)))!; } = "epc";

    /// <summary>The first, or only, instant; it must be there.</summary>
    /// <value>1 to 128 characters. The default is "time".</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string FirstSeen { get; init => field = Check(value ?? throw new ArgumentNullException(nameof(value)))!; } = "time";

    /// <summary>The antenna port.</summary>
    /// <value>1 to 128 characters, or null for none. The default is "antenna".</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string? Antenna { get; init => field = Check(value); } = "antenna";

    /// <summary>The last instant.</summary>
    /// <value>1 to 128 characters, or null for none. The default is "lastTime".</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string? LastSeen { get; init => field = Check(value); } = "lastTime";

    /// <summary>The signal strength in dBm.</summary>
    /// <value>1 to 128 characters, or null for none. The default is "rssi".</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string? Rssi { get; init => field = Check(value); } = "rssi";

    /// <summary>How many times the tag answered.</summary>
    /// <value>1 to 128 characters, or null for none. The default is "count".</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string? Count { get; init => field = Check(value); } = "count";

    /// <summary>The TID as hexadecimal digits.</summary>
    /// <value>1 to 128 characters, or null for none. The default is "tid".</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string? Tid { get; init => field = Check(value); } = "tid";

    /// <summary>The number of the report.</summary>
    /// <value>1 to 128 characters, or null for none. The default is "reportId".</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string? ReportId { get; init => field = Check(value); } = "reportId";

    private static string? Check(string? name) => name is null || name.Length is > 0 and <= MaxNameLength
        ? name
        : throw new ArgumentException("A column has a name of 1 to 128 characters.", nameof(name));
}
