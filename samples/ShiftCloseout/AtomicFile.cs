using System;
using System.IO;

namespace ShiftCloseout;

/// <summary>Writes a file whole or not at all: first beside the target, flushed to the disk, then renamed over it.</summary>
internal static class AtomicFile
{
    /// <exception cref="HostException">The file cannot be written; the message names the target only.</exception>
    public static void Write(string path, ReadOnlySpan<byte> content)
    {
        string full = Path.GetFullPath(path);
        string draft = Path.Combine(Path.GetDirectoryName(full)!, $".{Path.GetFileName(full)}.{Environment.ProcessId}.draft");
        try
        {
            try
            {
                File.Delete(draft); // left by a process of the same number that was killed
                using (var stream = new FileStream(draft, FileMode.CreateNew, FileAccess.Write, FileShare.None))
                {
                    stream.Write(content);
                    stream.Flush(flushToDisk: true);
                }

                File.Move(draft, full, overwrite: true);
            }
            finally
            {
                File.Delete(draft); // nothing is left to delete when the rename went through
            }
        }
        catch (DirectoryNotFoundException)
        {
            throw ReportTarget.CannotWrite(path, "there is no such folder.");
        }
        catch (UnauthorizedAccessException)
        {
            throw ReportTarget.CannotWrite(path, "you may not write there.");
        }
        catch (Exception error) when (error is IOException or ArgumentException or NotSupportedException)
        {
            throw ReportTarget.CannotWrite(path, error.Message.Replace(draft, path, StringComparison.Ordinal));
        }
    }
}
