namespace ShiftCloseout;

/// <summary>The forms a report can be written in.</summary>
internal enum ReportFormat
{
    Text,
    Markdown,
    Json,
}
