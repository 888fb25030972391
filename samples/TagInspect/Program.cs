using System;
using System.IO;
using System.Linq;
using System.Text;

namespace TagInspect;

/// <summary>The command.</summary>
internal static class Program
{
    private static int Main(string[] arguments)
    {
        Options options = Options.Parse(arguments);
        if (options.ShowHelp)
        {
            Console.Out.WriteLine(Options.Help);
            return 0;
        }

        if (options.Error is not null)
        {
            Console.Error.WriteLine(options.Error + " Try --help.");
            return 64;
        }

        using var input = new StreamReader(Console.OpenStandardInput(), new UTF8Encoding(false));
        var lines = options.Items.Count > 0 ? options.Items : BoundedLines.Read(input);
        return (options.Json ? RunJson(lines) : RunPlain(lines, options)) ? 0 : 1;
    }

    private static bool RunJson(System.Collections.Generic.IEnumerable<string?> lines)
    {
        using var output = new BufferedStream(Console.OpenStandardOutput(), 1 << 16);
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
        }

        return all;
    }

    private static bool RunPlain(System.Collections.Generic.IEnumerable<string?> lines, Options options)
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
                : Inspector.Inspect(new Request
                {
                    Input = Inspector.InputOf(item),
                    Value = item,
                    PrefixLength = options.PrefixLength,
                    Scheme = options.Scheme,
                    Filter = options.Filter,
                });
            PlainText.Write(item, answer, Console.Out);
            all &= answer.Rule is null;
        }

        return all;
    }
}
