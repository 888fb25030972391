using System;
using System.IO;

namespace ShiftCloseout;

/// <summary>Writes a file whole or not at all: first under a name of its own beside the target, flushed to the disk, then renamed over it.</summary>
/// <remarks>Nothing stands at the target before <see cref="Publish"/>, so that several files can be prepared before the first is there. Not thread-safe.</remarks>
internal sealed class AtomicFile : IDisposable
{
    private readonly string path;
    private readonly string full;
    private readonly string draft;

    private AtomicFile(string path)
    {
        this.path = path;
        full = Path.GetFullPath(path);

        // Short whatever the target is called, as a name holds 255 bytes at most; and not that of a process of the same number on another machine.
        draft = Path.Combine(Path.GetDirectoryName(full)!, $".{Path.GetRandomFileName()}.draft");
    }

    /// <summary>Writes the content beside the target.</summary>
    /// <exception cref="HostException">The file cannot be written; the message names the target only.</exception>
    public static AtomicFile Prepare(string path, ReadOnlySpan<byte> content)
    {
        var file = new AtomicFile(path);
        try
        {
            file.Draft(content);
            return file;
        }
        catch (Exception error) when (file.WhyNot(error) is { } why)
        {
            file.Dispose();
            throw ReportTarget.CannotWrite(path, why);
        }
    }

    /// <summary>Puts it in the place of the target.</summary>
    /// <exception cref="HostException">The target cannot be replaced; the message names the target only.</exception>
    public void Publish()
    {
        try
        {
            File.Move(draft, full, overwrite: true);
        }
        catch (Exception error) when (WhyNot(error) is { } why)
        {
            throw ReportTarget.CannotWrite(path, why);
        }
    }

    /// <summary>Takes the draft away; there is none once it was published.</summary>
    public void Dispose()
    {
        try
        {
            File.Delete(draft);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // The folder is gone or closed: whatever failed before has been said.
        }
    }

    private void Draft(ReadOnlySpan<byte> content)
    {
        _ = new FileInfo(full).Attributes; // throws for a name that is too long, before anything is in its place
        using var stream = new FileStream(draft, FileMode.CreateNew, FileAccess.Write, FileShare.None);
        stream.Write(content);
        stream.Flush(flushToDisk: true);
    }

    private string? WhyNot(Exception error) => error switch
    {
        DirectoryNotFoundException => "there is no such folder.",
        UnauthorizedAccessException => "you may not write there.",
        IOException or ArgumentException or NotSupportedException => error.Message.Replace(draft, path, StringComparison.Ordinal),
        _ => null,
    };
}
