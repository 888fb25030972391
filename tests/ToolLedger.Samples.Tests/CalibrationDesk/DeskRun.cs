using System.IO;
using CalibrationDesk;

namespace ToolLedger.Samples.Tests.CalibrationDesk;

/// <summary>One run of the desk in this process.</summary>
internal sealed record DeskRun(int ExitCode, string Output, string Error)
{
    public static DeskRun Of(params string[] arguments) => Of(true, arguments);

    public static DeskRun Of(bool isPlain, params string[] arguments)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        int code = DeskCommand.Run(arguments, output, error, isPlain);
        return new DeskRun(code, output.ToString(), error.ToString());
    }
}
