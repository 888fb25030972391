using System;
using System.IO;
using System.Reflection;

namespace ShiftCloseout;

/// <summary>A file to read: on the disk, or bundled with the program.</summary>
internal sealed class InputFile
{
    /// <summary>The most bytes of a JSON file that is read whole; the library enforces the same limit.</summary>
    public const long WholeFileMax = 64L * 1024 * 1024;

    private readonly Func<Stream> _open;

    private InputFile(string name, string? path, Func<Stream> open)
    {
        Name = name;
        Path = path;
        _open = open;
    }

    /// <summary>The name as the user gave it.</summary>
    public string Name { get; }

    /// <summary>Where it lies; <see langword="null"/> for a bundled file.</summary>
    public string? Path { get; }

    public static InputFile OnDisk(string path) => new(path, path, () => OpenOnDisk(path));

    /// <summary>A file of the demo, embedded so that the program runs from any folder, published or not.</summary>
    public static InputFile Bundled(string name) => new("demo/" + name, null, () =>
        Assembly.GetExecutingAssembly().GetManifestResourceStream("demo/" + name)
        ?? throw new InvalidOperationException($"The bundled file demo/{name} is not in the program."));

    /// <summary>Opens the file for one forward pass.</summary>
    /// <exception cref="HostException">There is no such file, or it cannot be opened.</exception>
    public Stream Open() => _open();

    /// <summary>Reads the whole file.</summary>
    /// <exception cref="HostException">There is no such file, it cannot be read, or it is too large.</exception>
    public byte[] ReadWhole()
    {
        try
        {
            using Stream stream = Open();
            using var buffer = new MemoryStream();
            var block = new byte[81_920];
            for (int count = stream.Read(block); count > 0; count = stream.Read(block))
            {
                buffer.Write(block, 0, count);
                if (buffer.Length > WholeFileMax)
                {
                    throw new HostException(ExitCodes.BadInput, $"{Name}: the file is larger than {WholeFileMax} bytes, the most a file of this kind may have (record.too-large)");
                }
            }

            return buffer.ToArray();
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw CannotOpen(Name, error.Message);
        }
    }

    private static FileStream OpenOnDisk(string path)
    {
        if (Directory.Exists(path))
        {
            throw CannotOpen(path, "it is a folder, not a file.");
        }

        if (File.Exists(path) && !FileKind.IsRegularFile(path))
        {
            throw CannotOpen(path, "it is a pipe or a device, or a link that leads to no file. Write what comes through a pipe to a file first: a report names its files by their digests.");
        }

        try
        {
            return new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, 1, FileOptions.SequentialScan);
        }
        catch (Exception error) when (error is FileNotFoundException or DirectoryNotFoundException)
        {
            throw CannotOpen(path, "there is no such file.");
        }
        catch (UnauthorizedAccessException)
        {
            throw CannotOpen(path, "you may not read it.");
        }
        catch (Exception error) when (error is IOException or ArgumentException or NotSupportedException)
        {
            throw CannotOpen(path, error.Message);
        }
    }

    private static HostException CannotOpen(string path, string why) => new(ExitCodes.Usage, $"{path}: cannot be read: {why}");
}
