using System;
using System.Collections.Generic;
using System.CommandLine;
using System.CommandLine.Help;
using System.Globalization;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;

namespace ShiftCloseout;

/// <summary>The command line: parses it, runs the closeout or the demo, and turns every expected failure into a message and an exit code.</summary>
internal static class CloseoutCommand
{
    private static readonly TimeSpan ClockTolerance = TimeSpan.FromMinutes(5);

    public static async Task<int> RunAsync(IReadOnlyList<string> args, HostConsole console, CancellationToken cancellation)
    {
        var options = new CommandLineOptions();
        RootCommand root = MakeRoot(options);
        ParseResult parsed = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        try
        {
            if (parsed.Errors.Count == 0 && !ReferenceEquals(parsed.Action, root.Action))
            {
                // --help or --version
                var invocation = new InvocationConfiguration { Output = console.Out, Error = console.Error, EnableDefaultExceptionHandler = false };
                return await parsed.InvokeAsync(invocation, cancellation);
            }

            if (parsed.Errors.Count > 0)
            {
                string[] lines = [.. parsed.Errors.Select(error => error.Message), "See --help."];
                throw new HostException(ExitCodes.Usage, lines);
            }

            if (!options.NamesFiles(parsed))
            {
                return await Demo.RunAsync(options.Read(parsed), console, cancellation);
            }

            CloseoutOptions asked = options.Read(parsed);
            RefuseFuture(asked.AsOf, console.Clock.GetUtcNow());
            return await Closeout.RunAsync(asked, console, cancellation);
        }
        catch (HostException error)
        {
            foreach (string line in error.Lines)
            {
                console.Say(line);
            }

            return error.ExitCode;
        }
        catch (OperationCanceledException)
        {
            console.Say("Stopped; nothing was written.");
            return ExitCodes.Usage;
        }
    }

    /// <summary>Reads and counts that come in until then would not be in it. A few minutes are clocks that differ.</summary>
    private static void RefuseFuture(DateTimeOffset? asOf, DateTimeOffset now)
    {
        if (asOf is { } time && time - now > ClockTolerance)
        {
            throw new HostException(ExitCodes.Usage, string.Create(CultureInfo.InvariantCulture,
                $"--as-of {time:yyyy-MM-dd'T'HH:mm:sszzz} is later than now ({now:yyyy-MM-dd'T'HH:mm:ss'Z'}) by more than {ClockTolerance.TotalMinutes} minutes: nothing can be concluded for an instant that has not come."));
        }
    }

    private static RootCommand MakeRoot(CommandLineOptions options)
    {
        var root = new RootCommand("Says at the end of a shift which tools of a kit are accounted for and on what basis, which are open, and what settles each.");
        options.AddTo(root);
        root.SetAction(_ => 0); // only marks the command itself as the thing to do; RunAsync does it
        foreach (Option option in root.Options)
        {
            if (option is HelpOption { Action: HelpAction usual } help)
            {
                help.Action = new TeachingHelp(usual);
            }
        }

        return root;
    }
}
