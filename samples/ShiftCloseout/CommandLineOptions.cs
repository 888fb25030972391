using System;
using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using System.Linq;

namespace ShiftCloseout;

/// <summary>The options of the command line and how they become <see cref="CloseoutOptions"/>.</summary>
internal sealed class CommandLineOptions
{
    private static readonly string[] AsOfForms = ["yyyy-MM-dd'T'HH:mmK", "yyyy-MM-dd'T'HH:mm:ssK", "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFK"];

    private readonly Option<string[]> _manifests = Files("--manifest", "A kit manifest (JSON). Repeat it for several kits; each kit is concluded.");
    private readonly Option<string[]> _otherManifests = Files(
        "--other-manifest", "The manifest of a kit that is not to be concluded, so that its tools are recognised when they are read. Repeatable.");

    private readonly Option<string?> _bindings = File("--bindings", "Which tag sits on which tool, from when to when (tag register, JSON).");
    private readonly Option<string?> _session = File("--session", "The presentation sheet: station, kits presented, start, end, clock check (JSON).");
    private readonly Option<string?> _reads = File("--reads", "The reads of that session, CSV or JSON Lines. Goes with --session.");
    private readonly Option<string?> _counts = File("--counts", "What people counted and sighted, and who signed (inventory sheet, JSON).");
    private readonly Option<string?> _calibration = File("--calibration", "Calibration records (JSON).");
    private readonly Option<string?> _policy = File("--policy", "The site's policy (JSON). Without it the documented defaults apply.");

    private readonly Option<ReadsFormat> _readsFormat = new("--reads-format")
    {
        Description = "auto goes by the extension: .csv is CSV; .jsonl, .ndjson and .json are JSON Lines.",
        HelpName = "auto|csv|jsonl",
        DefaultValueFactory = _ => ReadsFormat.Auto,
    };

    private readonly Option<ReportFormat> _format = new("--format")
    {
        Description = "The form of the report.",
        HelpName = "text|markdown|json",
        DefaultValueFactory = _ => ReportFormat.Text,
    };

    private readonly Option<string?> _out = new("--out")
    {
        Description = "Write the report to this file, whole or not at all, instead of standard output.",
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
            { _manifests, _otherManifests, _bindings, _session, _reads, _readsFormat, _counts, _calibration, _policy, _format, _out, _asOf })
        {
            command.Options.Add(option);
        }

        foreach (Option option in new Option[] { _manifests, _otherManifests, _bindings, _session, _reads, _counts, _calibration, _policy, _out })
        {
            option.Validators.Add(result =>
            {
                if (result.Tokens.Any(token => string.IsNullOrWhiteSpace(token.Value)))
                {
                    result.AddError($"{option.Name} needs the path of a file, and got an empty one.");
                }
            });
        }

        command.Validators.Add(result =>
        {
            bool hasManifest = result.GetResult(_manifests) is not null;
            bool hasFile = result.GetResult(_otherManifests) is not null || result.GetResult(_bindings) is not null || result.GetResult(_session) is not null || result.GetResult(_reads) is not null
                || result.GetResult(_counts) is not null || result.GetResult(_calibration) is not null || result.GetResult(_policy) is not null;
            if (hasFile && !hasManifest)
            {
                result.AddError("Without --manifest there is no kit to conclude. Name one, or give no file at all to see the demo.");
            }

            if (result.GetResult(_reads) is null != result.GetResult(_session) is null)
            {
                result.AddError("--reads and --session go together: reads prove nothing without the sheet that says who presented what, and when.");
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
        Session = OnDisk(result.GetValue(_session)),
        Reads = OnDisk(result.GetValue(_reads)),
        ReadsFormat = result.GetValue(_readsFormat),
        Counts = OnDisk(result.GetValue(_counts)),
        Calibration = OnDisk(result.GetValue(_calibration)),
        Policy = OnDisk(result.GetValue(_policy)),
        Format = result.GetValue(_format),
        Out = result.GetValue(_out),
        AsOf = result.GetValue(_asOf),
    };

    private static InputFile? OnDisk(string? path) => path is null ? null : InputFile.OnDisk(path);

    private static Option<string?> File(string name, string description) => new(name) { Description = description, HelpName = "file" };

    private static Option<string[]> Files(string name, string description) => new(name) { Description = description, HelpName = "file" };

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
