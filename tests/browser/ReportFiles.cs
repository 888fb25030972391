using System;
using System.IO;
using System.Linq;
using System.Text.Json.Nodes;
using System.Threading;
using System.Threading.Tasks;
using ShiftCloseout;
using ToolLedger.Kits;
using ToolLedger.Policies;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Reports;
using ToolLedger.Tools;

namespace ToolLedger.Browser.Tests;

/// <summary>The pages under test, written once: the demo by both policies, the demo with hostile names, many kits, and a long session of a large kit. All of it is invented.</summary>
internal static class ReportFiles
{
    private static readonly Lazy<Task<string>> Folder = new(MakeAsync);

    public static string[] Names { get; } = ["counting", "stated-risk", "hostile", "many", "long"];

    public static async Task<string> FileAsync(string name) => Path.Combine(await Folder.Value, name + ".html");

    private static async Task<string> MakeAsync()
    {
        string folder = Directory.CreateTempSubdirectory("toolledger-pages-").FullName;
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(folder, recursive: true);
        string demo = Path.Combine(RepositoryRoot(), "samples", "ShiftCloseout", "demo");
        await CloseAsync(demo, "policy.json", Path.Combine(folder, "counting.html"));
        await CloseAsync(demo, "policy-stated-risk.json", Path.Combine(folder, "stated-risk.html"));

        string hostile = Directory.CreateDirectory(Path.Combine(folder, "hostile")).FullName;
        foreach (string file in Directory.EnumerateFiles(demo))
        {
            File.Copy(file, Path.Combine(hostile, Path.GetFileName(file)));
        }

        Disfigure(Path.Combine(hostile, "manifest-nacelle-bag.json"));
        AddModels(Path.Combine(hostile, "policy-stated-risk.json"));
        await CloseAsync(hostile, "policy-stated-risk.json", Path.Combine(folder, "hostile.html"));
        await File.WriteAllTextAsync(Path.Combine(folder, "many.html"), Large(kits: 6, lines: 4, sessions: 2, seconds: 30));
        await File.WriteAllTextAsync(Path.Combine(folder, "long.html"), Large(kits: 1, lines: 15, sessions: 14, seconds: 200));
        return folder;
    }

    private static async Task CloseAsync(string folder, string policy, string page)
    {
        string In(string name) => Path.Combine(folder, name);
        string[] args =
        [
            "--manifest", In("manifest-nacelle-bag.json"), "--manifest", In("manifest-hub-bag.json"), "--other-manifest", In("manifest-yaw-bag.json"), "--other-manifest", In("manifest-crimping-set.json"),
            "--bindings", In("bindings.json"), "--session", In("presentation.json"), "--reads", In("reads.jsonl"), "--session", In("presentation-2.json"), "--reads", In("reads-2.jsonl"),
            "--counts", In("counts.json"), "--calibration", In("calibration.json"), "--history", In("tag-history.json"), "--policy", In(policy),
            "--gate", "--as-of", "2026-10-14T16:00:00+02:00", "--html", page,
        ];
        var error = new StringWriter();
        int code = await CloseoutCommand.RunAsync(args, new HostConsole { Out = new StringWriter(), Error = error, Clock = TimeProvider.System }, CancellationToken.None);
        if (code != ExitCodes.OpenOrDiscrepant)
        {
            throw new InvalidOperationException($"The demo returned {code}: {error}");
        }
    }

    /// <summary>Names as long as a manifest takes them, without a place to break, with markup, and in a script that runs from right to left.</summary>
    private static void Disfigure(string manifest)
    {
        string[] names = [new('W', 200), "<script>alert(1)</script>" + new string('i', 170), "مفتاح ربط " + new string('م', 180), "\"><img src=x onerror=alert(1)>", "扭矩扳手" + new string('扭', 190), "{'&amp;'}"];
        JsonObject kit = JsonNode.Parse(File.ReadAllBytes(manifest))!.AsObject();
        kit["title"] = "</title></style>" + new string('T', 180);
        int next = 0;
        foreach (JsonObject line in kit["lines"]!.AsArray().Select(static line => line!.AsObject()))
        {
            JsonObject named = line["tool"]?.AsObject() ?? line["container"]?.AsObject() ?? line;
            named["description"] = names[next++ % names.Length];
        }

        File.WriteAllText(manifest, kit.ToJsonString());
    }

    /// <summary>A model of its own for the station of the demo, and one for a mounting with a long name.</summary>
    private static void AddModels(string policy)
    {
        JsonObject site = JsonNode.Parse(File.ReadAllBytes(policy))!.AsObject();
        JsonObject presence = site["presence"]!.AsObject();
        JsonObject Model(string? mounting)
        {
            JsonObject model = presence["model"]!.DeepClone().AsObject();
            model["station"] = "WT-R1";
            if (mounting is not null)
            {
                model["mounting"] = mounting;
            }

            return model;
        }

        presence["models"] = new JsonArray(Model(null), Model(new string('M', 64)));
        File.WriteAllText(policy, site.ToJsonString());
    }

    private static string Large(int kits, int lines, int sessions, int seconds)
    {
        var policy = new SitePolicy();
        DateTimeOffset start = new(2026, 3, 2, 14, 0, 0, TimeSpan.Zero), end = start.AddSeconds(sessions * (seconds + 10));
        var signed = new Signature { By = new PersonId("C-2"), At = start.AddDays(-9), Role = new Role("custodian") };
        static TagId Tag(int number) => TagId.Parse(FormattableString.Invariant($"3034257BF7194E40{number:X8}"));
        KitManifest[] bags =
        [
            .. Enumerable.Range(0, kits).Select(kit => new KitManifest(new KitId(FormattableString.Invariant($"B-{kit:00}")), 1, "Invented bag", start.AddDays(-9), signed,
            [
                .. Enumerable.Range(1, lines).Select(line => (ManifestLine)new ToolLine
                {
                    Number = line,
                    Location = "tray 1",
                    Tool = new Tool { Id = new ToolId(FormattableString.Invariant($"T{(kit * 1000) + line}")), Description = "Pin punch", Mark = FormattableString.Invariant($"{kit:00}-{line:000}") },
                }),
            ])),
        ];
        var tags = new TagRegister(from kit in Enumerable.Range(0, kits)
                                   from line in bags[kit].Lines
                                   select new TagBinding { Tag = Tag((kit * 1000) + line.Number), Tool = line.Tool!.Id, From = start.AddDays(-5), BoundBy = new PersonId("C-2") });
        ReadSession Session(int number)
        {
            DateTimeOffset from = start.AddSeconds(number * (seconds + 10));
            var builder = new ReadSessionBuilder(
                new Presentation
                {
                    Id = new SessionId(FormattableString.Invariant($"S-{number}")),
                    Station = new ReadStation { Id = new StationId("R1"), Antennas = [new AntennaPort(1), new AntennaPort(2)], ControlTags = [new ControlTag(Tag(999_999))] },
                    Kits = [.. bags.Select(static bag => bag.Id)],
                    From = from,
                    Until = from.AddSeconds(seconds),
                    ReaderClockOffset = TimeSpan.Zero,
                },
                policy.Sessions);
            var random = new Random(number);
            for (double at = 0.1; at < seconds; at += 0.5)
            {
                foreach (AntennaPort antenna in new[] { new AntennaPort(1), new AntennaPort(2) })
                {
                    builder.Add(new TagRead(Tag(999_999), antenna, from.AddSeconds(at)));
                    foreach (int number2 in from kit in Enumerable.Range(0, kits) from line in Enumerable.Range(1, lines) where line % 5 != 3 && (kit + number) % 3 != 2 && random.Next(4) == 0 select (kit * 1000) + line)
                    {
                        builder.Add(new TagRead(Tag(number2), antenna, from.AddSeconds(at)));
                    }
                }
            }

            return builder.Close(from.AddSeconds(seconds), TimeSpan.Zero);
        }

        var input = new ReconciliationInput { Kits = new KitRegister(bags), Subject = bags[0].Id, Sessions = [.. Enumerable.Range(0, sessions).Select(Session)], Tags = tags, AsOf = end };
        return new ShiftReport(new ShiftReportInput { Results = [.. new Reconciler(policy.Reconciliation).ReconcileAll(input, [.. bags.Select(static bag => bag.Id)])], MadeAt = end, Sessions = input.Sessions }).ToHtml();
    }

    private static string RepositoryRoot()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "ToolLedger.sln")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return folder ?? throw new InvalidOperationException("The tests run outside the repository.");
    }
}
