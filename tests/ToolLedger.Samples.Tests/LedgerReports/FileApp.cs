using System;
using System.Diagnostics;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using Xunit;

namespace ToolLedger.Samples.Tests.LedgerReports;

/// <summary>
/// A file-based app of samples/reports, compiled by the compiler of the SDK with the feature that "dotnet run file.cs" uses, against the library as built, and run in a process of its own. MSBuild is left out: it would
/// build the library again beside the one under test.
/// </summary>
internal sealed class FileApp
{
    private const string ProjectDirective = "#:project ";

    private readonly string source;
    private readonly string folder;

    public FileApp(string name, string folder)
    {
        source = Path.Combine(Repository.Root, "samples", "reports", name);
        this.folder = folder;
    }

    /// <summary>The project that the first line names, as a full path.</summary>
    public string Project => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(source)!, File.ReadLines(source).First(static line => line.StartsWith(ProjectDirective, StringComparison.Ordinal))[ProjectDirective.Length..]));

    public async Task CompileAsync()
    {
        string program = Path.Combine(folder, "app.dll");
        string[] references = [.. ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator).Where(static file =>
            Path.GetFileName(file).StartsWith("System.", StringComparison.Ordinal) || Path.GetFileName(file) is "ToolLedger.dll" or "ToolLedger.Identifiers.dll" or "mscorlib.dll" or "netstandard.dll")];
        string response = Path.Combine(folder, "app.rsp");
        await File.WriteAllLinesAsync(response,
        [
            "-nologo", "-noconfig", "-nostdlib", "-langversion:14.0", "-nullable:enable", "-warnaserror", "-features:FileBasedProgram", "-target:exe", $"-out:\"{program}\"", $"\"{source}\"",
            .. references.Select(static file => $"-r:\"{file}\""),
        ], TestContext.Current.CancellationToken);
        (int code, string output, string error) = await DotnetAsync("exec", Compiler(), "@" + response);
        Assert.True(code == 0, output + error);
        foreach (string file in Directory.EnumerateFiles(AppContext.BaseDirectory, "*.dll").Where(static file =>
            Path.GetFileName(file) is "ToolLedger.dll" or "ToolLedger.Identifiers.dll" or "Microsoft.Extensions.Logging.Abstractions.dll" or "Microsoft.Extensions.DependencyInjection.Abstractions.dll"))
        {
            File.Copy(file, Path.Combine(folder, Path.GetFileName(file)), overwrite: true);
        }

        File.Copy(Directory.EnumerateFiles(AppContext.BaseDirectory, "*.Samples.Tests.runtimeconfig.json").Single(), Path.Combine(folder, "app.runtimeconfig.json"), overwrite: true);
    }

    public Task<(int Code, string Output, string Error)> RunAsync(params string[] args) => DotnetAsync(["exec", Path.Combine(folder, "app.dll"), .. args]);

    private static string Compiler()
    {
        // The runtime lies in <root>/shared/Microsoft.NETCore.App/<version>, the compiler in <root>/sdk/<version>/Roslyn/bincore.
        DirectoryInfo root = new DirectoryInfo(Path.GetDirectoryName(typeof(object).Assembly.Location)!).Parent!.Parent!.Parent!;
        return Directory.EnumerateDirectories(Path.Combine(root.FullName, "sdk"))
            .Select(static sdk => Path.Combine(sdk, "Roslyn", "bincore", "csc.dll"))
            .Where(File.Exists)
            .Order(StringComparer.Ordinal)
            .Last();
    }

    private static async Task<(int Code, string Output, string Error)> DotnetAsync(params string[] args)
    {
        var start = new ProcessStartInfo("dotnet", args) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        using Process process = Process.Start(start)!;
        Task<string> output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        Task<string> error = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, await output, await error);
    }
}
