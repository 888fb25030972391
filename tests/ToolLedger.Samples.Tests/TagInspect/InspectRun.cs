using System.IO;
using System.Linq;
using System.Text;
using System.Text.Json;
using TagInspect;

namespace ToolLedger.Samples.Tests.TagInspect;

/// <summary>One run of the tag inspector, in this process, with its own streams.</summary>
internal sealed record InspectRun(int ExitCode, string Output, string Error)
{
    /// <summary>The answers of a run with <c>--json</c>.</summary>
    public JsonElement[] Answers => [.. Output.Split('\n').Where(line => line.Length > 0).Select(line => JsonElement.Parse(line))];

    public static InspectRun Of(string[] arguments, string input = "") => Of(arguments, Encoding.UTF8.GetBytes(input));

    public static InspectRun Of(string[] arguments, byte[] input)
    {
        using var output = new MemoryStream();
        using var error = new StringWriter { NewLine = "\n" };
        int code = InspectCommand.Run(arguments, new MemoryStream(input), output, error);
        return new InspectRun(code, Encoding.UTF8.GetString(output.ToArray()), error.ToString());
    }
}
