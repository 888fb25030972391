using System;
using System.Collections.Generic;
using System.CommandLine;
using System.CommandLine.Help;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;

namespace ShiftCloseout;

/// <summary>The command line: parses it, runs the closeout or the demo, and turns every expected failure into a message and an exit code.</summary>
internal static class CloseoutCommand
{
    public static async Task<int> RunAsync(IReadOnlyList<string> args, HostConsole console, CancellationToken cancellation)
    {
        var options = new CommandLineOptions();
        RootCommand root = MakeRoot(options);
        ParseResult parsed = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (parsed.Errors.Count == 0 && !ReferenceEquals(parsed.Action, root.Action))
        {
            // --help or --version
            return await parsed.InvokeAsync(new InvocationConfiguration { Output = console.Out, Error = console.Error }, cancellation);
        }

        try
        {
            if (parsed.Errors.Count > 0)
            {
                string[] lines = [.. parsed.Errors.Select(error => error.Message), "See --help."];
                throw new HostException(ExitCodes.Usage, lines);
            }

            return options.NamesFiles(parsed)
                ? await Closeout.RunAsync(options.Read(parsed), console, cancellation)
                : await Demo.RunAsync(options.Read(parsed), console, cancellation);
        }
        catch (HostException error)
        {
            foreach (string line in error.Lines)
            {
                await console.Error.WriteLineAsync(TerminalText.Plain(line));
            }

            return error.ExitCode;
        }
        catch (OperationCanceledException)
        {
            await console.Error.WriteLineAsync("Stopped; nothing was written.");
            return ExitCodes.Usage;
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
