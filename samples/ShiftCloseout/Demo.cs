using System;
using System.Globalization;
using System.Threading;
using System.Threading.Tasks;

namespace ShiftCloseout;

/// <summary>The bundled scenario: an invented wind-turbine service crew at the end of a shift.</summary>
internal static class Demo
{
    private const string Story = """
        This is a demo on invented data: a wind-turbine service crew reads two tool bags
        twice at the end of a shift, and asks whether the turbine may be operated.
        Its files lie readable in samples/ShiftCloseout/demo; --help says how to run
        your own.

        """;

    /// <summary>Runs the closeout over the bundled files and says what a real run would have returned.</summary>
    /// <returns>Always <see cref="ExitCodes.Complete"/>.</returns>
    public static async Task<int> RunAsync(CloseoutOptions asked, HostConsole console, CancellationToken cancellation)
    {
        bool isRead = asked.Format == ReportFormat.Text && asked.Out is null;
        if (isRead)
        {
            await console.Out.WriteLineAsync(Story.ReplaceLineEndings("\n"));
        }

        int code = await Closeout.RunAsync(Files(asked), console, cancellation);
        string closing = string.Create(CultureInfo.InvariantCulture, $"""
            {(isRead ? "\n" : "")}End of the demo, which always returns 0.
            A real run on these files would have returned exit code {code}:
            {Meaning(code)}.
            """);
        if (isRead)
        {
            await console.Out.WriteLineAsync(closing.ReplaceLineEndings("\n"));
            return ExitCodes.Complete;
        }

        foreach (string line in closing.ReplaceLineEndings("\n").Split('\n'))
        {
            console.Say(line);
        }

        return ExitCodes.Complete;
    }

    private static CloseoutOptions Files(CloseoutOptions asked)
    {
        var sheetTime = new DateTimeOffset(2026, 10, 14, 16, 0, 0, TimeSpan.FromHours(2));
        return new CloseoutOptions
        {
            Manifests = [InputFile.Bundled("manifest-nacelle-bag.json"), InputFile.Bundled("manifest-hub-bag.json")],
            OtherManifests = [InputFile.Bundled("manifest-yaw-bag.json"), InputFile.Bundled("manifest-crimping-set.json")],
            Bindings = InputFile.Bundled("bindings.json"),
            Sessions =
            [
                new SessionFiles(InputFile.Bundled("presentation.json"), InputFile.Bundled("reads.jsonl")),
                new SessionFiles(InputFile.Bundled("presentation-2.json"), InputFile.Bundled("reads-2.jsonl")),
            ],
            Counts = InputFile.Bundled("counts.json"),
            Calibration = InputFile.Bundled("calibration.json"),
            History = InputFile.Bundled("tag-history.json"),
            Policy = InputFile.Bundled("policy.json"),
            AsksGate = true,
            Format = asked.Format,
            Width = asked.Width,
            Out = asked.Out,
            Html = asked.Html,
            AsOf = asked.AsOf ?? sheetTime,
            MadeAt = asked.AsOf ?? sheetTime,
        };
    }

    private static string Meaning(int code) => code switch
    {
        ExitCodes.Complete => "every kit is complete",
        ExitCodes.NoValidRead => "a kit has no valid read",
        _ => "a kit is open or discrepant, or the gate before operation is shut",
    };
}
