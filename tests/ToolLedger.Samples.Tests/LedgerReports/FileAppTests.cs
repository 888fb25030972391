using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.IO;
using System.Linq;
using System.Text;
using System.Threading.Tasks;
using ToolLedger.Custody;
using ToolLedger.Interchange;
using ToolLedger.Kits;
using ToolLedger.Ledger;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Samples.Tests.Documents;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Samples.Tests.LedgerReports;

/// <summary>The file-based apps an integrator starts from, each compiled and run over a ledger of an invented roll.</summary>
public sealed class FileAppTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("toolledger-reports-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    // The SDK gives each app an output folder of its own. A folder shared by all would let one app run as the program of another.
    [Fact]
    public async Task The_settings_of_the_repository_leave_each_app_its_own_output_folder()
    {
        string root = new RepositoryFiles().Root, project = Path.Combine(folder, "app.proj");
        await File.WriteAllTextAsync(
            project,
            $"<Project><PropertyGroup><ArtifactsPath>its-own</ArtifactsPath><FileBasedProgram>true</FileBasedProgram></PropertyGroup><Import Project=\"{root}/Directory.Build.props\" /></Project>",
            TestContext.Current.CancellationToken);
        var start = new ProcessStartInfo("dotnet", ["msbuild", project, "-getProperty:ArtifactsPath"]) { RedirectStandardOutput = true, UseShellExecute = false };
        using Process process = Process.Start(start)!;
        string output = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);

        Assert.Equal("its-own", output.Trim());
    }

    [Theory]
    [InlineData("open-lines.cs", new[] { "2026-10-14T18:00:00+02:00" }, new[] { "kit ROLL-3\tline 2\tSpanner 13 mm\tweak\tlast accounted for: 6.5 h ago" })]
    [InlineData("exposure-by-job.cs", new[] { "2026-10-14T18:00:00+02:00" }, new[] { "gearbox 9, job J-2", "ROLL-3 line 2", "No hold on record stands." })]
    [InlineData("weak-tools.cs", new string[0], new[] { "W-7\tSpanner 13 mm\tweak 1, not read 0, of 2 sign-offs" })]
    [InlineData("tool-custody.cs", new[] { "W-9", "2026-10-14T18:00:00+02:00" }, new[] { "tool-loan L-1 by P-017", "P-021" })]
    [InlineData("to-csv.cs", new[] { "2026-10-14T00:00:00+02:00", "2026-10-15T00:00:00+02:00" }, new[] { "id,kind,occurredAt", "L-1,tool-loan,2026-10-14T12:00:00.0000000+02:00", "\"'=remark, \"\"quoted\"\"\"" })]
    public async Task Each_app_compiles_and_runs_over_a_ledger(string name, string[] more, string[] expected)
    {
        string ledger = Path.Combine(folder, "ledger.jsonl");
        await File.WriteAllBytesAsync(ledger, LedgerFile.ToJsonLines(Entries()), TestContext.Current.CancellationToken);
        var app = new FileApp(name, folder);
        Assert.True(File.Exists(app.Project), app.Project);
        await app.CompileAsync();

        (int code, string output, string error) = await app.RunAsync([ledger, .. more]);

        Assert.True(code == 0, error);
        string unwrapped = Unwrapped(output);
        Assert.All(expected, text => Assert.True(output.Contains(text, StringComparison.Ordinal) || unwrapped.Contains(text, StringComparison.Ordinal), output));
        Assert.Equal(64, (await app.RunAsync()).Code);
        if (more.Length > 0)
        {
            // The same time without its offset is no instant, whatever zone this machine is in.
            Assert.Equal(64, (await app.RunAsync([ledger, .. more[..^1], more[^1][..19]])).Code);
        }

        // A file that was cut off is told with its line, one that is not there by its name; neither with a stack trace.
        string cut = Path.Combine(folder, "cut.jsonl"), none = Path.Combine(folder, "none.jsonl");
        await File.WriteAllBytesAsync(cut, LedgerFile.ToJsonLines(Entries())[..^9], TestContext.Current.CancellationToken);
        (int cutCode, _, string cutError) = await app.RunAsync([cut, .. more]);
        (int noneCode, _, string noneError) = await app.RunAsync([none, .. more]);
        Assert.Equal((65, 65), (cutCode, noneCode));
        Assert.StartsWith($"{cut}: line 6, column ", cutError, StringComparison.Ordinal);
        Assert.Contains(none, noneError, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", cutError + noneError, StringComparison.Ordinal);

        // Without the manifest the issue takes no effect, and then no answer may look as if nothing had happened.
        await File.WriteAllBytesAsync(ledger, LedgerFile.ToJsonLines(Entries().Where(static entry => entry.Content is KitIssue)), TestContext.Current.CancellationToken);
        (_, string blind, string told) = await app.RunAsync([ledger, .. more]);
        Assert.Contains("No manifest of kit ROLL-3 is known.", Unwrapped(blind + told), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_app_of_the_folder_is_tested() => Assert.Equal(
        ["exposure-by-job.cs", "open-lines.cs", "to-csv.cs", "tool-custody.cs", "weak-tools.cs"],
        Directory.EnumerateFiles(Path.Combine(Repository.Root, "samples", "reports"), "*.cs").Select(Path.GetFileName).Order(StringComparer.Ordinal));

    private static string Unwrapped(string text) => string.Join(' ', text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

    /// <summary>A roll of two tools: both sighted at 11:30, one lent at 12:00, one with a weak read at 16:00. The manifest lies in the ledger, so that it opens by itself.</summary>
    private static IEnumerable<LedgerEntry> Entries()
    {
        DateTimeOffset At(int hour, int minute = 0) => new(2026, 10, 14, hour, minute, 0, TimeSpan.FromHours(2));
        Signature By(string person, DateTimeOffset at) => new() { By = new PersonId(person), At = at };
        KitId kit = new("ROLL-3");
        var manifest = new KitManifest(kit, 1, "Line roll 3", At(0), By("P-002", At(0)),
        [
            new ToolLine { Number = 1, Tool = new Tool { Id = new ToolId("W-9"), Description = "Torque wrench", Mark = "R3-9" } },
            new ToolLine { Number = 2, Tool = new Tool { Id = new ToolId("W-7"), Description = "Spanner 13 mm", Mark = "R3-7" } },
        ]);
        var issue = new KitIssue { Id = new EntryId("I-1"), At = At(8), By = new PersonId("P-001"), Kit = kit, Revision = 1, ReceivedBy = By("P-017", At(8)), ExpectedReturn = At(16), Remark = "=remark, \"quoted\"" };
        var visit = new JobVisit { Id = new EntryId("V-1"), At = At(12, 30), Until = At(15), By = new PersonId("P-017"), Kit = kit, Job = new JobId("J-2"), Equipment = new EquipmentId("gearbox 9") };
        var loan = new ToolLoan { Id = new EntryId("L-1"), At = At(12), By = new PersonId("P-017"), Tool = new ToolId("W-9"), Kit = kit, ReceivedBy = By("P-021", At(12)), Due = At(17) };
        var register = new KitRegister([manifest]);

        SignedReconciliation Signed(string id, DateTimeOffset at, params ToolId[] seen) => SignedReconciliation.Of(new EntryId(id), new Reconciler(new ReconciliationPolicy()).Reconcile(new ReconciliationInput
        {
            Kits = register,
            Subject = kit,
            AsOf = at,
            Custody = new CustodyRegister(CustodyPolicy.Default, register, new CustodyLog([issue, visit, loan])),
            Inventory = new Inventory.InventorySheet(new Inventory.InventoryEntries
            {
                Sightings = [.. seen.Select(tool => new Inventory.Sighting { Tool = tool, MarkRead = manifest.FindLine(tool)!.Tool!.Mark!, By = new PersonId("P-017"), At = at, Where = new Place("bay 2"), InKit = manifest.Id })],
            }),
        }), By("P-002", at));

        RecordEntry[] contents =
        [
            StoredRecord.Of(new EntryId("MF-1"), manifest.ToJson(), By("P-002", At(0))), issue, Signed("S-1", At(11, 30), new ToolId("W-9"), new ToolId("W-7")), loan, visit, Signed("S-2", At(16)),
        ];
        // As if a weak read had been all there was of the spanner at 16:00: the stored line says so.
        return contents.Select(content => new LedgerEntry(content, content is JobVisit ? At(15) : content.At))
            .Select(static entry => LedgerEntry.Parse(Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(entry.ToJson()).Replace("\"not assessed\"", "\"weak\"", StringComparison.Ordinal))));
    }
}
