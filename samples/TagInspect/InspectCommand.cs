using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text;

namespace TagInspect;

/// <summary>The command: items in, one answer for each out, in their order and as they come.</summary>
internal static class InspectCommand
{
    internal const int AllRead = 0;
    internal const int SomeRefused = 1;
    internal const int WrongUsage = 64;
    internal const int OutputFailed = 74;

    internal static int Run(string[] arguments, Stream input, Stream output, TextWriter error)
    {
        var options = Options.Parse(arguments);
        if (options.Error is not null)
        {
            error.WriteLine(options.Error + " Try --help.");
            return WrongUsage;
        }

        try
        {
            using var writer = new StreamWriter(output, new UTF8Encoding(false), 1 << 12, leaveOpen: true);
            if (options.ShowHelp)
            {
                writer.WriteLine(Options.Help);
                return AllRead;
            }

            using var reader = new StreamReader(input, new UTF8Encoding(false), false, 1 << 12, leaveOpen: true);
            IEnumerable<string?> lines = options.Items.Count > 0 ? options.Items : BoundedLines.Read(reader);
            return (options.Json ? RunJson(lines, output) : RunPlain(lines, options, writer)) ? AllRead : SomeRefused;
        }
        catch (IOException)
        {
            // The reader of the output went away, or the input cannot be read: nobody is left to be told more than the exit code says.
            return OutputFailed;
        }
    }

    private static bool RunJson(IEnumerable<string?> lines, Stream output)
    {
        bool all = true;
        foreach (string? line in lines.Where(l => l is null || l.AsSpan().Trim().Length > 0))
        {
            if (line is null)
            {
                JsonLines.WriteTooLong(output);
                all = false;
            }
            else
            {
                all &= JsonLines.Answer(line, output);
            }

            // A program that waits for this answer before it asks for the next one must not wait for ever.
            output.Flush();
        }

        return all;
    }

    private static bool RunPlain(IEnumerable<string?> lines, Options options, StreamWriter output)
    {
        bool all = true;
        foreach (string? line in lines)
        {
            string item = line?.Trim() ?? string.Empty;
            if (item.Length == 0 && line is not null)
            {
                continue;
            }

            Answer answer = line is null
                ? Answer.Refused("TextLength", "The line is too long.")
                : Inspector.InspectPlain(item, options);
            PlainText.Write(item, answer, output);
            output.Flush();
            all &= answer.Rule is null;
        }

        return all;
    }
}
