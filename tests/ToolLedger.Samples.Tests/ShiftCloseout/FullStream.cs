using System;
using System.IO;

namespace ToolLedger.Samples.Tests.ShiftCloseout;

/// <summary>A file on a disk that has room for so many more bytes, takes that many, and then says that it is full; it may also be unable to give any back.</summary>
internal sealed class FullStream(byte[] before, int room, bool canShrink = true) : Stream
{
    private readonly MemoryStream held = Of(before);

    public byte[] Content => held.ToArray();

    public override bool CanRead => false;

    public override bool CanSeek => true;

    public override bool CanWrite => true;

    public override long Length => held.Length;

    public override long Position { get => held.Position; set => held.Position = value; }

    public override void Flush() => held.Flush();

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => held.Seek(offset, origin);

    public override void SetLength(long value)
    {
        if (!canShrink)
        {
            throw new IOException("Input/output error");
        }

        held.SetLength(value);
    }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        int taken = (int)Math.Min(buffer.Length, before.Length + room - held.Position);
        held.Write(buffer[..taken]);
        if (taken < buffer.Length)
        {
            throw new IOException("No space left on device");
        }
    }

    private static MemoryStream Of(byte[] content)
    {
        var stream = new MemoryStream();
        stream.Write(content);
        return stream;
    }
}
