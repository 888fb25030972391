using System;
using System.IO;

namespace ShiftCloseout;

/// <summary>Lines added at the end of a ledger, whole and on the disk, which nobody else can add to until this is closed; they can be taken back as long.</summary>
/// <remarks>Not thread-safe.</remarks>
internal sealed class LedgerAppend : IDisposable
{
    private readonly Stream stream;
    private readonly string path;
    private readonly long length;
    private readonly bool isNew;

    private LedgerAppend(Stream stream, string path, long length, bool isNew)
    {
        this.stream = stream;
        this.path = path;
        this.length = length;
        this.isNew = isNew;
    }

    /// <summary>Adds the lines to a file that is still as long as it was when it was read.</summary>
    /// <param name="path">The file; one that does not exist yet is made, and taken away again where nothing can be added to it.</param>
    /// <param name="length">How long it was, in bytes.</param>
    /// <param name="lines">Whole lines.</param>
    /// <exception cref="HostException">It cannot be written, or somebody else has added to it since. The message says what of it is there.</exception>
    public static LedgerAppend Add(string path, long length, ReadOnlySpan<byte> lines)
    {
        bool isMade = !File.Exists(path);
        try
        {
            return Add(new FileStream(path, FileMode.OpenOrCreate, FileAccess.Write, FileShare.None), path, length, lines, isMade);
        }
        catch (Exception error) when (IsExpected(error))
        {
            throw Failed(path, error.Message, "Nothing was added to it, and no report was written.");
        }
    }

    /// <summary>The same to a stream, which is closed where it fails. A disk that is full takes a part of the lines before it says so.</summary>
    /// <exception cref="HostException">As above.</exception>
    public static LedgerAppend Add(Stream stream, string path, long length, ReadOnlySpan<byte> lines, bool isMade = false)
    {
        var added = new LedgerAppend(stream, path, length, isMade);
        try
        {
            if (stream.Length != length)
            {
                throw new HostException(ExitCodes.Usage, $"--ledger {path}: was changed while this run went on. Nothing was added to it, and no report was written: run it again.");
            }

            stream.Seek(0, SeekOrigin.End);
            stream.Write(lines);
            added.Flush();
            return added;
        }
        catch (Exception error) when (IsExpected(error))
        {
            bool isUndone = added.TryUndo();
            added.Dispose();
            throw Failed(path, error.Message, isUndone
                ? "Nothing was added to it, and no report was written."
                : "A part of what was to be added may stand at its end and could not be taken back; no report was written. Take that part away before anything else is added.");
        }
        catch (HostException)
        {
            added.Dispose();
            throw;
        }
    }

    /// <summary>Takes the lines back.</summary>
    /// <returns>Whether that was possible.</returns>
    public bool TryUndo()
    {
        try
        {
            stream.SetLength(length);
            Flush();
            if (isNew)
            {
                stream.Dispose();
                File.Delete(path);
            }

            return true;
        }
        catch (Exception error) when (IsExpected(error))
        {
            return false;
        }
    }

    /// <summary>Closes the file; the lines stay.</summary>
    public void Dispose()
    {
        try
        {
            stream.Dispose();
        }
        catch (Exception error) when (IsExpected(error))
        {
            // Everything was flushed before, or its failure was said.
        }
    }

    private void Flush()
    {
        if (stream is FileStream file)
        {
            file.Flush(flushToDisk: true);
        }
        else
        {
            stream.Flush();
        }
    }

    private static bool IsExpected(Exception error) => error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException;

    private static HostException Failed(string path, string why, string left) => new(ExitCodes.Usage, $"--ledger {path}: cannot be written: {why}", left);
}
