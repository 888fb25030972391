using System;
using System.Formats.Tar;
using System.IO;

namespace ShiftCloseout;

/// <summary>What stands at a path, told without opening it: opening a pipe waits for its other end, for ever if need be.</summary>
internal static class FileKind
{
    private const int DepthMax = 64;
    private const int TarTypeAt = 156; // POSIX.1-1988 ustar header, field typeflag (from memory)

    /// <summary>Whether a regular file, or a link to one, stands there; also true when it may not be looked at, as opening says why.</summary>
    public static bool IsRegularFile(string path)
    {
        try
        {
            FileSystemInfo info = new FileInfo(path);
            info = info.LinkTarget is null ? info : info.ResolveLinkTarget(returnFinalTarget: true)!;
            var file = new FileInfo(info.FullName);

            // A pipe and a device hold 0 bytes as far as the file system says; so does an empty file.
            return file.Exists && (file.Length > 0 || IsRegularByType(file.FullName));
        }
        catch (UnauthorizedAccessException)
        {
            return true;
        }
        catch (IOException)
        {
            return false; // a loop of links, a socket
        }
    }

    /// <summary>Whether two paths lead to one file, whatever links are on the way; also where no file stands yet.</summary>
    public static bool IsSame(string path, string other) => string.Equals(
        RealPath(path),
        RealPath(other),
        OperatingSystem.IsLinux() ? StringComparison.Ordinal : StringComparison.OrdinalIgnoreCase);

    /// <summary>The path with every link on the way followed, so that two names of one file compare equal.</summary>
    public static string RealPath(string path) => RealPath(Path.TrimEndingDirectorySeparator(Path.GetFullPath(path)), 0);

    private static string RealPath(string path, int depth)
    {
        if (depth == DepthMax || Path.GetDirectoryName(path) is not { } folder)
        {
            return path;
        }

        string here = Path.Combine(RealPath(folder, depth + 1), Path.GetFileName(path));
        return new FileInfo(here).LinkTarget is { } target
            ? RealPath(Path.GetFullPath(target, Path.GetDirectoryName(here)!), depth + 1)
            : here;
    }

    /// <summary>The framework tells the kind of a file only through the archive entry it would make of it; for an empty file that costs nothing.</summary>
    private static bool IsRegularByType(string path)
    {
        using var archive = new MemoryStream();
        using (var writer = new TarWriter(archive, TarEntryFormat.Ustar, leaveOpen: true))
        {
            writer.WriteEntry(path, "entry");
        }

        return archive.GetBuffer()[TarTypeAt] is (byte)TarEntryType.RegularFile or (byte)TarEntryType.V7RegularFile;
    }
}
