using System;
using System.IO;

namespace ToolLedger.Tests.Interchange;

/// <summary>Hands out bytes in pieces of lengths that a seed decides, as a network does.</summary>
internal sealed class PieceStream(byte[] bytes, int seed, int pieceLengthMax) : Stream
{
    private readonly Random _random = new(seed);
    private int _at;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override int Read(byte[] buffer, int offset, int count)
    {
        int length = Math.Min(Math.Min(count, bytes.Length - _at), 1 + _random.Next(pieceLengthMax));
        Array.Copy(bytes, _at, buffer, offset, length);
        _at += length;
        return length;
    }

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
