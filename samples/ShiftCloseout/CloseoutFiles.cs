using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Calibration;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Policies;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Reports;
using ToolLedger.Tools;

namespace ShiftCloseout;

/// <summary>The small files of a closeout, read whole, with the digest of each.</summary>
internal sealed class CloseoutFiles
{
    private const int IssuesShownMax = 20;

    private readonly List<SourceDigest> _sources = [];

    public required KitRegister Kits { get; init; }

    /// <summary>The kits to conclude, in the order of the command line.</summary>
    public required IReadOnlyList<KitId> Subjects { get; init; }

    /// <summary>The file of the first manifest of each kit to conclude.</summary>
    private IReadOnlyDictionary<KitId, string> Names { get; init; } = new Dictionary<KitId, string>();

    public required TagRegister Tags { get; init; }

    public required InventorySheet Inventory { get; init; }

    public required CalibrationRegister Calibration { get; init; }

    public required SitePolicy Policy { get; init; }

    /// <summary>The sheets of the sessions, in the order of the command line.</summary>
    public required IReadOnlyList<Presentation> Presentations { get; init; }

    public required TagHistoryRegister? History { get; init; }

    /// <summary>Name and digest of every file read so far, in the order of the command line.</summary>
    public List<SourceDigest> Sources => _sources;

    /// <exception cref="HostException">A file cannot be read, or its content is refused.</exception>
    public static CloseoutFiles Load(CloseoutOptions options)
    {
        var sources = new List<SourceDigest>();
        var manifests = new List<KitManifest>();
        foreach (InputFile file in options.Manifests)
        {
            manifests.Add(Read<KitManifest>(file, KitManifest.TryParse, sources));
        }

        var names = new Dictionary<KitId, string>();
        foreach ((KitManifest manifest, InputFile file) in manifests.Zip(options.Manifests))
        {
            names.TryAdd(manifest.Id, file.Name);
        }

        KitId[] subjects = [.. manifests.Select(manifest => manifest.Id).Distinct()];
        foreach (InputFile file in options.OtherManifests)
        {
            manifests.Add(Read<KitManifest>(file, KitManifest.TryParse, sources));
        }

        if (!KitRegister.TryCreate(manifests, out KitRegister? kits, out IReadOnlyList<RecordIssue> issues))
        {
            throw Refused("The manifests together", issues);
        }

        var files = new CloseoutFiles
        {
            Kits = kits,
            Subjects = subjects,
            Names = names,
            Tags = options.Bindings is { } bindings ? Read<TagRegister>(bindings, TagRegister.TryParse, sources) : TagRegister.Empty,
            Presentations = ReadPresentations(options.Sessions, sources),
            Inventory = options.Counts is { } counts ? Read<InventorySheet>(counts, InventorySheet.TryParse, sources) : InventorySheet.Empty,
            Calibration = options.Calibration is { } calibration
                ? Read<CalibrationRegister>(calibration, CalibrationRegister.TryParse, sources) : CalibrationRegister.Empty,
            History = options.History is { } history ? Read<TagHistoryRegister>(history, TagHistoryRegister.TryParse, sources) : null,
            Policy = options.Policy is { } policy ? Read<SitePolicy>(policy, SitePolicy.TryParse, sources) : SitePolicy.Default,
        };
        files._sources.AddRange(sources);
        return files;
    }

    /// <summary>The file that lists a kit to conclude.</summary>
    public string FileOf(KitId kit) => Names[kit];

    /// <summary>The sheets; every one must say when it ended, and no two may name one session.</summary>
    private static List<Presentation> ReadPresentations(IReadOnlyList<SessionFiles> sessions, List<SourceDigest> sources)
    {
        var presentations = new List<Presentation>();
        var fileOf = new Dictionary<SessionId, string>();
        foreach (SessionFiles session in sessions)
        {
            Presentation presentation = Read<Presentation>(session.Sheet, Presentation.TryParse, sources);
            if (presentation.Until is null)
            {
                throw new HostException(ExitCodes.BadInput,
                    $"{session.Sheet.Name}: $.until: the sheet does not say when the session ended, so its reads cannot be judged (session.no-end)");
            }

            if (!fileOf.TryAdd(presentation.Id, session.Sheet.Name))
            {
                throw new HostException(ExitCodes.BadInput,
                    $"{session.Sheet.Name}: $.session: {presentation.Id} is the session of {fileOf[presentation.Id]} already; reads handed in twice would count twice (session.same-id)");
            }

            presentations.Add(presentation);
        }

        return presentations;
    }

    private static T Read<T>(InputFile file, RecordParser<T> parser, List<SourceDigest> sources)
        where T : class
    {
        byte[] content = file.ReadWhole();
        sources.Add(new SourceDigest(file.Name, Digest.Of(content)));
        return parser(content, out T? value, out IReadOnlyList<RecordIssue> issues) ? value! : throw Refused(file.Name, issues);
    }

    /// <summary>One line an issue: file, place, sentence, rule.</summary>
    private static HostException Refused(string name, IReadOnlyList<RecordIssue> issues)
    {
        List<string> lines = [.. issues.Take(IssuesShownMax).Select(issue => $"{name}: {issue}")];
        if (issues.Count > IssuesShownMax)
        {
            lines.Add(string.Create(CultureInfo.InvariantCulture, $"{name}: and {issues.Count - IssuesShownMax} more."));
        }

        return new HostException(ExitCodes.BadInput, lines);
    }
}
