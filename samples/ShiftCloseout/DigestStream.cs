using System;
using System.IO;
using System.Security.Cryptography;
using System.Threading;
using System.Threading.Tasks;
using ToolLedger.Records;

namespace ShiftCloseout;

/// <summary>Reads a stream once, forward, and takes its SHA-256 on the way, so that the report can name exactly the bytes that were read.</summary>
internal sealed class DigestStream : Stream
{
    private readonly Stream _inner;
    private readonly Action<long>? _onProgress;
    private readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
    private long _readCount;

    /// <param name="inner">The stream; closed with this one.</param>
    /// <param name="onProgress">Told the number of bytes read so far, after each block.</param>
    public DigestStream(Stream inner, Action<long>? onProgress)
    {
        _inner = inner;
        _onProgress = onProgress;
    }

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position { get => _readCount; set => throw new NotSupportedException(); }

    /// <summary>The digest of what was read so far.</summary>
    public Digest Digest() => ToolLedger.Records.Digest.FromHash(_hash.GetCurrentHash());

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> buffer)
    {
        int count = _inner.Read(buffer);
        Note(buffer[..count]);
        return count;
    }

    public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
    {
        int count = await _inner.ReadAsync(buffer, cancellationToken);
        Note(buffer.Span[..count]);
        return count;
    }

    public override Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) =>
        ReadAsync(buffer.AsMemory(offset, count), cancellationToken).AsTask();

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            _hash.Dispose();
            _inner.Dispose();
        }

        base.Dispose(disposing);
    }

    private void Note(ReadOnlySpan<byte> block)
    {
        _hash.AppendData(block);
        _readCount += block.Length;
        _onProgress?.Invoke(_readCount);
    }
}
