namespace ShiftCloseout;

/// <summary>The forms a file of reads can have.</summary>
internal enum ReadsFormat
{
    /// <summary>By the extension: .csv, or .jsonl, .ndjson and .json for JSON Lines.</summary>
    Auto,

    Csv,

    Jsonl,
}
