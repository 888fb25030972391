using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Calibration;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Policies;
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

    public required Presentation? Presentation { get; init; }

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
            Presentation = options.Session is { } session ? Read<Presentation>(session, ToolLedger.Reads.Presentation.TryParse, sources) : null,
            Inventory = options.Counts is { } counts ? Read<InventorySheet>(counts, InventorySheet.TryParse, sources) : InventorySheet.Empty,
            Calibration = options.Calibration is { } calibration
                ? Read<CalibrationRegister>(calibration, CalibrationRegister.TryParse, sources) : CalibrationRegister.Empty,
            Policy = options.Policy is { } policy ? Read<SitePolicy>(policy, SitePolicy.TryParse, sources) : SitePolicy.Default,
        };
        files._sources.AddRange(sources);
        return files;
    }

    /// <summary>The file that lists a kit to conclude.</summary>
    public string FileOf(KitId kit) => Names[kit];

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
