using System;
using System.Globalization;
using ToolLedger.Tools;

namespace CalibrationDesk;

/// <summary>What the command line says.</summary>
internal sealed class DeskOptions
{
    internal const string Help =
        """
        CalibrationDesk: what is due, whether a tool may measure, and what a bad result reaches back to.

        CalibrationDesk                        the due board of an invented fleet, as of 2026-06-15
        CalibrationDesk --within 30            what is due within 30 days, overdue ones among them
        CalibrationDesk --tool TW-004          the history of one instrument, and its status at each entry
        CalibrationDesk --trace TW-004         after an out-of-tolerance finding: every use since it was last good
          --format text|csv|markdown|json      of the trace; text is Markdown as it stands
        CalibrationDesk --ics FILE             the due dates as a calendar (RFC 5545); - writes it to the output

        Your own data instead of the invented fleet:
          --calibrations FILE.csv   columns tool,description,calibratedOn and one of dueOn, dueMonth, intervalMonths;
                                    if you have them: certificate, function, result (passed, limited, failed),
                                    foundInTolerance (yes, no), recordedAt, recordedBy. Without recordedAt a row counts
                                    from noon UTC of its day on: that is made up, because the file does not say it.
          --register FILE.json      a calibration register instead (see docs/schemas)
          --uses FILE.csv           columns use,tool,at,job; if you have them: by, function, value, unit, tolerance
          --policy FILE.json        the site's policy and calendar; without it the documented defaults and UTC
          --as-of TIME              such as 2026-06-15T08:00:00Z; needed with your own data
          --fleet N                 how many instruments the invented fleet has, 1 to 20000; the default is 40
          --domain NAME             right of the @ in the ids of calendar entries; the default is tools.example

        Try:
          CalibrationDesk --within 0                       what is overdue today
          CalibrationDesk --trace TW-004 --format csv      a list to work off in a spreadsheet
          CalibrationDesk --ics - | head -20

        Exit code: 0 everything shown is fit or settled, 1 something is overdue, unfit or open, 64 the command line is
        wrong or a file cannot be opened, 65 a file was refused: nothing of a refused file is used.

        Status comes from entered records, by the due-date convention named. The label and the responsible laboratory
        or quality department decide. All names and numbers of the invented fleet are made up.
        """;

    internal bool ShowHelp { get; private set; }

    internal int? Within { get; private set; }

    internal ToolId Tool { get; private set; }

    internal ToolId Trace { get; private set; }

    internal string Format { get; private set; } = "text";

    internal string? CalendarFile { get; private set; }

    internal string? Calibrations { get; private set; }

    internal string? Register { get; private set; }

    internal string? Uses { get; private set; }

    internal string? Policy { get; private set; }

    internal DateTimeOffset? AsOf { get; private set; }

    internal int FleetCount { get; private set; } = 40;

    internal string Domain { get; private set; } = "tools.example";

    internal bool HasOwnData => Calibrations is not null || Register is not null;

    /// <exception cref="DeskException">The command line is wrong.</exception>
    internal static DeskOptions Parse(string[] arguments)
    {
        var options = new DeskOptions();
        for (int i = 0; i < arguments.Length; i++)
        {
            switch (arguments[i])
            {
                case "--help" or "-h": options.ShowHelp = true; break;
                case "--within": options.Within = Number(arguments, ++i, 0, 3660); break;
                case "--tool": options.Tool = Id(arguments, ++i); break;
                case "--trace": options.Trace = Id(arguments, ++i); break;
                case "--format": options.Format = Text(arguments, ++i); break;
                case "--ics": options.CalendarFile = Text(arguments, ++i); break;
                case "--calibrations": options.Calibrations = Text(arguments, ++i); break;
                case "--register": options.Register = Text(arguments, ++i); break;
                case "--uses": options.Uses = Text(arguments, ++i); break;
                case "--policy": options.Policy = Text(arguments, ++i); break;
                case "--as-of": options.AsOf = Time(arguments, ++i); break;
                case "--fleet": options.FleetCount = Number(arguments, ++i, 1, 20_000); break;
                case "--domain": options.Domain = Text(arguments, ++i); break;
                default: throw Wrong($"There is no option {arguments[i]}.");
            }
        }

        options.Check();
        return options;
    }

    private void Check()
    {
        if ((Tool.IsEmpty ? 0 : 1) + (Trace.IsEmpty ? 0 : 1) + (CalendarFile is null ? 0 : 1) > 1)
        {
            throw Wrong("--tool, --trace and --ics are three questions; ask one.");
        }

        if (Calibrations is not null && Register is not null)
        {
            throw Wrong("--calibrations and --register are two sources; name one.");
        }

        if (HasOwnData && AsOf is null)
        {
            throw Wrong("With your own data say for which instant: --as-of 2026-06-15T08:00:00Z.");
        }

        if (Uses is not null && !HasOwnData)
        {
            throw Wrong("--uses goes with --calibrations or --register.");
        }

        if (Format is not ("text" or "csv" or "markdown" or "json"))
        {
            throw Wrong("--format is text, csv, markdown or json.");
        }
    }

    private static string Text(string[] arguments, int index) =>
        index < arguments.Length && arguments[index].Length > 0 ? arguments[index] : throw Wrong($"{arguments[index - 1]} needs a value.");

    private static ToolId Id(string[] arguments, int index) =>
        ToolId.TryCreate(Text(arguments, index), out ToolId id) ? id : throw Wrong($"{arguments[index - 1]} needs the id of a tool.");

    private static int Number(string[] arguments, int index, int min, int max) =>
        int.TryParse(Text(arguments, index), NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= min && number <= max
            ? number
            : throw Wrong(string.Create(CultureInfo.InvariantCulture, $"{arguments[index - 1]} needs a number from {min} to {max}."));

    private static DateTimeOffset Time(string[] arguments, int index) =>
        TimeText.TryRead(Text(arguments, index), out DateTimeOffset time) ? time : throw Wrong("--as-of needs a time with offset, such as 2026-06-15T08:00:00Z.");

    private static DeskException Wrong(string message) => new(ExitCodes.Usage, message + " Try --help.");
}
