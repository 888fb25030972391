using System;
using System.IO;
using System.Linq;

namespace ShiftCloseout;

/// <summary>Where --out may write: a name that is free, or a regular file that is no input of this run.</summary>
internal static class ReportTarget
{
    /// <exception cref="HostException">Something stands there that must not be replaced.</exception>
    public static void Require(CloseoutOptions options)
    {
        if (options.Out is not { } path)
        {
            return;
        }

        if (WhyNot(path, options) is { } why)
        {
            throw CannotWrite(path, why);
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
            return "it is a pipe or a device, not a file. Leave --out away to write to standard output.";
        }

        string real = FileKind.RealPath(path);
        StringComparison comparison = OperatingSystem.IsLinux() ? StringComparison.Ordinal : StringComparison.OrdinalIgnoreCase;
        return options.Inputs.Any(input => input.Path is { } read && string.Equals(FileKind.RealPath(read), real, comparison))
            ? "it is one of the files to read, which would be lost."
            : null;
    }
}
