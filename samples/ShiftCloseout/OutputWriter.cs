using System;
using System.IO;
using System.Text;

namespace ShiftCloseout;

/// <summary>Standard output, where a failure to write (a full disk, a closed stream) ends the run with a message and not with a crash.</summary>
internal sealed class OutputWriter : TextWriter
{
    private readonly TextWriter _inner;

    private OutputWriter(TextWriter inner)
        : base(inner.FormatProvider)
    {
        _inner = inner;
        CoreNewLine = inner.NewLine.ToCharArray();
    }

    /// <summary>A writer that hands everything on; it owns nothing and need not be disposed of.</summary>
    public static OutputWriter Around(TextWriter inner) => new(inner);

    public override Encoding Encoding => _inner.Encoding;

    /// <exception cref="HostException">Standard output cannot be written.</exception>
    public override void Write(char value) => Write([value]);

    /// <exception cref="HostException">Standard output cannot be written.</exception>
    public override void Write(string? value) => Write(value.AsSpan());

    /// <exception cref="HostException">Standard output cannot be written.</exception>
    public override void Write(char[] buffer, int index, int count) => Write(buffer.AsSpan(index, count));

    /// <exception cref="HostException">Standard output cannot be written.</exception>
    public override void Write(ReadOnlySpan<char> buffer)
    {
        try
        {
            _inner.Write(buffer);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ObjectDisposedException)
        {
            throw Failed(error);
        }
    }

    /// <exception cref="HostException">Standard output cannot be written.</exception>
    public override void Flush()
    {
        try
        {
            _inner.Flush();
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ObjectDisposedException)
        {
            throw Failed(error);
        }
    }

    private static HostException Failed(Exception error) =>
        new(ExitCodes.Usage, $"Standard output cannot be written, so the report is not complete: {error.Message}");
}
