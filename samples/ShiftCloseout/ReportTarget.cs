using System.IO;
using System.Linq;

namespace ShiftCloseout;

/// <summary>Where --out and --html may write: a name that is free, or a regular file that is no input of this run.</summary>
internal static class ReportTarget
{
    /// <exception cref="HostException">Something stands there that must not be replaced.</exception>
    public static void Require(CloseoutOptions options)
    {
        foreach (string path in options.Targets)
        {
            if (WhyNot(path, options) is { } why)
            {
                throw CannotWrite(path, why);
            }
        }

        if (options is { Out: { } text, Html: { } page } && FileKind.IsSame(text, page))
        {
            throw CannotWrite(page, "--out and --html name the same file.");
        }
    }

    public static HostException CannotWrite(string path, string why) =>
        new(ExitCodes.Usage, $"{path}: the report cannot be written: {why}");

    private static string? WhyNot(string path, CloseoutOptions options)
    {
        if (new FileInfo(path).LinkTarget is not null)
        {
            return "it is a link. Name the file itself.";
        }

        if (Directory.Exists(path) || Path.EndsInDirectorySeparator(path))
        {
            return "it is a folder, not a file.";
        }

        if (File.Exists(path) && !FileKind.IsRegularFile(path))
        {
            return "it is a pipe or a device, not a file. Only the report without --out goes to standard output.";
        }

        if (options.Ledger is { } ledger && FileKind.IsSame(ledger, path))
        {
            return "it is the ledger, whose entries would be lost.";
        }

        return options.Inputs.Any(input => input.Path is { } read && FileKind.IsSame(read, path)) ? "it is one of the files to read, which would be lost." : null;
    }
}
