using System;
using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using System.Linq;

namespace ShiftCloseout;

/// <summary>The options of the command line and how they become <see cref="CloseoutOptions"/>.</summary>
internal sealed class CommandLineOptions
{
    private const int SessionsMax = 1_000;

    private static readonly string[] AsOfForms = ["yyyy-MM-dd'T'HH:mmK", "yyyy-MM-dd'T'HH:mm:ssK", "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFK"];

    private readonly Option<string[]> _manifests = Files("--manifest", "A kit manifest (JSON). Repeat it for several kits, or for several revisions of one; each kit is concluded.");
    private readonly Option<string[]> _otherManifests = Files(
        "--other-manifest", "The manifest of a kit that is not to be concluded: of a sub-kit, or of a neighbour, so that its tools are recognised when they are read. Repeatable.");

    private readonly Option<string?> _bindings = File("--bindings", "Which tag sits on which tool, from when to when, and which tags are quarantined (tag register, JSON).");
    private readonly Option<string[]> _sessions = Files("--session", "The presentation sheet: station, kits presented and nearby, start, end, clock check (JSON). Repeat it for several sessions.");
    private readonly Option<string[]> _reads = Files("--reads", "The reads of a session, CSV or JSON Lines: the first --reads goes with the first --session, and so on.");
    private readonly Option<string?> _counts = File(
        "--counts", "What people recorded: counts, sightings, known shortages, job records, seals, openings, signatures and more (inventory sheet, JSON).");
    private readonly Option<string?> _calibration = File("--calibration", "Calibration records (JSON).");
    private readonly Option<string?> _history = File("--history", "What past sessions say of each tag (tag history, JSON). It orders the search and settles nothing.");
    private readonly Option<string?> _policy = File("--policy", "The site's policy (JSON). Without it the documented defaults apply.");

    private readonly Option<ReadsFormat> _readsFormat = new("--reads-format")
    {
        Description = "auto goes by the extension: .csv is CSV; .jsonl, .ndjson and .json are JSON Lines.",
        HelpName = "auto|csv|jsonl",
        DefaultValueFactory = _ => ReadsFormat.Auto,
        CustomParser = static result => ParseWord<ReadsFormat>(result, "--reads-format wants auto, csv or jsonl"),
    };

    private readonly Option<bool> _gate = new("--gate")
    {
        Description = "Ask for each kit whether this inventory satisfies the gate before operation: complete, newer than the last opening of the kit on record, nothing on no list reported gone, and nothing known that is later than the inventory. It asks for no signature; the report says whether two people have signed.",
    };

    private readonly Option<string?> _ledger = File(
        "--ledger", "The ledger (JSON Lines): who answers for what is read from it, what changed since the last sign-off is told, and what is signed on the sheet is added. It is made if there is none.");

    private readonly Option<ReportFormat> _format = new("--format")
    {
        Description = "The form of the report.",
        HelpName = "text|markdown|json",
        DefaultValueFactory = _ => ReportFormat.Text,
        CustomParser = static result => ParseWord<ReportFormat>(result, "--format wants text, markdown or json"),
    };

    private readonly Option<int?> _width = new("--width")
    {
        Description = "Columns of the text report, 40 to 400. Default: those of the terminal, or 100 where the report goes to a file or a pipe.",
        HelpName = "columns",
        CustomParser = ParseWidth,
    };

    private readonly Option<string?> _out = new("--out")
    {
        Description = "Write the report to this file, whole or not at all, instead of standard output.",
        HelpName = "file",
    };

    private readonly Option<string?> _html = new("--html")
    {
        Description = "Write the report to this file as one HTML page as well, whole or not at all: for a screen, a phone or paper, with the reads of every tagged line drawn over time. It needs no other file and loads none.",
        HelpName = "file",
    };

    private readonly Option<DateTimeOffset?> _asOf = new("--as-of")
    {
        Description = "The instant to conclude for, with offset: 2026-10-14T16:10:00+02:00. Default: now. Old sessions and counts settle nothing, so say it when you replay files.",
        HelpName = "time",
        CustomParser = ParseAsOf,
    };

    public void AddTo(Command command)
    {
        foreach (Option option in new Option[]
            { _manifests, _otherManifests, _bindings, _sessions, _reads, _readsFormat, _counts, _calibration, _history, _policy, _gate, _ledger, _format, _width, _out, _html, _asOf })
        {
            command.Options.Add(option);
        }

        Option[] files = [_manifests, _otherManifests, _bindings, _sessions, _reads, _counts, _calibration, _history, _policy];
        foreach (Option option in files.Append(_out).Append(_html).Append(_ledger))
        {
            option.Validators.Add(result =>
            {
                if (result.Tokens.Any(token => string.IsNullOrWhiteSpace(token.Value)))
                {
                    result.AddError($"{option.Name} needs the path of a file, and got an empty one.");
                }

                if (result.Tokens.Any(static token => token.Value is "-"))
                {
                    result.AddError($"{option.Name} needs the path of a file. '-' stands for no stream here: the report goes to standard output without --out. A file of that name is ./-");
                }
            });
        }

        command.Validators.Add(result =>
        {
            bool hasManifest = result.GetResult(_manifests) is not null;
            if (!hasManifest && files.Any(file => result.GetResult(file) is not null))
            {
                result.AddError("Without --manifest there is no kit to conclude. Name one, or give no file at all to see the demo.");
            }

            int sheets = CountOf(result, _sessions), reads = CountOf(result, _reads);
            if (sheets != reads)
            {
                result.AddError(string.Create(CultureInfo.InvariantCulture,
                    $"--reads and --session go together, as many of the one as of the other ({reads} and {sheets}): reads prove nothing without the sheet that says who presented what, and when."));
            }
            else if (sheets > SessionsMax)
            {
                result.AddError(string.Create(CultureInfo.InvariantCulture, $"--session can be repeated {SessionsMax} times at most, and stands here {sheets} times."));
            }
        });
    }

    /// <summary>Whether the command line names files; otherwise the demo runs.</summary>
    public bool NamesFiles(ParseResult result) => result.GetValue(_manifests) is { Length: > 0 };

    public CloseoutOptions Read(ParseResult result) => new()
    {
        Manifests = Array.ConvertAll(result.GetValue(_manifests) ?? [], InputFile.OnDisk),
        OtherManifests = Array.ConvertAll(result.GetValue(_otherManifests) ?? [], InputFile.OnDisk),
        Bindings = OnDisk(result.GetValue(_bindings)),
        Sessions = [.. (result.GetValue(_sessions) ?? []).Zip(result.GetValue(_reads) ?? [], static (sheet, reads) => new SessionFiles(InputFile.OnDisk(sheet), InputFile.OnDisk(reads)))],
        ReadsFormat = result.GetValue(_readsFormat),
        Counts = OnDisk(result.GetValue(_counts)),
        Calibration = OnDisk(result.GetValue(_calibration)),
        History = OnDisk(result.GetValue(_history)),
        Policy = OnDisk(result.GetValue(_policy)),
        AsksGate = result.GetValue(_gate),
        Ledger = result.GetValue(_ledger),
        Format = result.GetValue(_format),
        Width = result.GetValue(_width),
        Out = result.GetValue(_out),
        Html = result.GetValue(_html),
        AsOf = result.GetValue(_asOf),
    };

    private static int CountOf(CommandResult result, Option option) => result.GetResult(option)?.Tokens.Count ?? 0;

    private static InputFile? OnDisk(string? path) => path is null ? null : InputFile.OnDisk(path);

    private static Option<string?> File(string name, string description) => new(name) { Description = description, HelpName = "file" };

    private static Option<string[]> Files(string name, string description) => new(name) { Description = description, HelpName = "file" };

    private static T ParseWord<T>(ArgumentResult result, string wants)
        where T : struct, Enum
    {
        string text = result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
        foreach (T value in Enum.GetValues<T>())
        {
            if (string.Equals(value.ToString(), text, StringComparison.OrdinalIgnoreCase))
            {
                return value;
            }
        }

        result.AddError($"{wants}, and got '{text}'.");
        return default;
    }

    private static int? ParseWidth(ArgumentResult result)
    {
        string text = result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int width) && width is >= 40 and <= 400)
        {
            return width;
        }

        result.AddError($"--width wants a number of columns from 40 to 400, and got '{text}'.");
        return null;
    }

    private static DateTimeOffset? ParseAsOf(ArgumentResult result)
    {
        string text = result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
        bool hasOffset = text.EndsWith('Z') || (text.Length > 6 && text[^6] is '+' or '-' && text[^3] == ':');
        if (hasOffset && DateTimeOffset.TryParseExact(text, AsOfForms, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateTimeOffset time))
        {
            return time;
        }

        result.AddError($"--as-of wants a time with its offset from UTC, such as 2026-10-14T16:10:00+02:00, and got '{text}'.");
        return null;
    }
}
