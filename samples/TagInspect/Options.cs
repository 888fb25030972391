using System.Collections.Generic;
using System.Globalization;

namespace TagInspect;

/// <summary>What the command line says.</summary>
internal sealed class Options
{
    internal const string Help =
        """
        TagInspect: shows what an identifier of a tag or mark says.

        TagInspect [options] [item ...]          without items: standard input, one item a line

          item            hexadecimal EPC memory (also as epc:3414...), urn:epc:tag:..., urn:epc:id:..., urn:epc:raw:...,
                          (01)... element string, or https://... Digital Link
          --gcp N         length of the GS1 company prefix, needed for element strings and Digital Links
          --scheme NAME   coding scheme to code an identity with, such as GIAI-96
          --filter N      filter value for the coding (default 0)
          --json          JSON Lines in and out; each line is an object such as
                          {"id":"x","input":"hex","value":"3414257BF40000000000162E"}
                          input: hex, memoryHex, tagUri, pureIdentity, elementString, digitalLink, ai
          --help          this text

        Exit code: 0 every item was read, 1 some were refused, 64 the command line is wrong,
        74 the output could not be written.
        """;

    internal bool Json { get; private set; }

    internal bool ShowHelp { get; private set; }

    internal int? PrefixLength { get; private set; }

    internal string? Scheme { get; private set; }

    internal int Filter { get; private set; }

    internal string? Error { get; private set; }

    internal List<string> Items { get; } = [];

    internal static Options Parse(string[] arguments)
    {
        var options = new Options();
        for (int i = 0; i < arguments.Length && options.Error is null; i++)
        {
            switch (arguments[i])
            {
                case "--json": options.Json = true; break;
                case "--help" or "-h": options.ShowHelp = true; break;
                case "--gcp": options.PrefixLength = options.Number(arguments, ++i, 4, 12); break;
                case "--filter": options.Filter = options.Number(arguments, ++i, 0, 63) ?? 0; break;
                case "--scheme": options.Scheme = options.Text(arguments, ++i); break;
                case ['-', '-', ..] option: options.Error = "There is no option " + option + "."; break;
                default: options.Items.Add(arguments[i]); break;
            }
        }

        return options;
    }

    private int? Number(string[] arguments, int index, int lowest, int highest)
    {
        if (index < arguments.Length
            && int.TryParse(arguments[index], NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            && number >= lowest && number <= highest)
        {
            return number;
        }

        Error = string.Create(CultureInfo.InvariantCulture, $"{arguments[index - 1]} needs a number from {lowest} to {highest}.");
        return null;
    }

    private string? Text(string[] arguments, int index)
    {
        if (index < arguments.Length)
        {
            return arguments[index];
        }

        Error = arguments[index - 1] + " needs a value.";
        return null;
    }
}
