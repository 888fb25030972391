using System;
using System.IO;

namespace ShiftCloseout;

/// <summary>Writes a file whole or not at all: first beside the target, flushed to the disk, then renamed over it.</summary>
internal static class AtomicFile
{
    public static void Write(string path, ReadOnlySpan<byte> content)
    {
        string folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        string draft = Path.Combine(folder, $".{Path.GetFileName(path)}.{Environment.ProcessId}.draft");
        try
        {
            using (var stream = new FileStream(draft, FileMode.Create, FileAccess.Write, FileShare.None))
            {
                stream.Write(content);
                stream.Flush(flushToDisk: true);
            }

            File.Move(draft, path, overwrite: true);
        }
        finally
        {
            File.Delete(draft); // nothing is left to delete when the rename went through
        }
    }
}
