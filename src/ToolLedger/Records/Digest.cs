using System;
using System.Buffers.Binary;
using System.Runtime.InteropServices;
using System.Security.Cryptography;

namespace ToolLedger.Records;

/// <summary>A SHA-256 digest (FIPS 180-4), which names the exact content of a record.</summary>
/// <remarks>The default value is all zero and means "none". Immutable and thread-safe.</remarks>
[StructLayout(LayoutKind.Auto)]
public readonly struct Digest : IEquatable<Digest>
{
    private const string Prefix = "sha256:";
    private const int ByteCount = 32;

    private readonly ulong _a;
    private readonly ulong _b;
    private readonly ulong _c;
    private readonly ulong _d;

    private Digest(ReadOnlySpan<byte> hash)
    {
        _a = BinaryPrimitives.ReadUInt64BigEndian(hash);
        _b = BinaryPrimitives.ReadUInt64BigEndian(hash[8..]);
        _c = BinaryPrimitives.ReadUInt64BigEndian(hash[16..]);
        _d = BinaryPrimitives.ReadUInt64BigEndian(hash[24..]);
    }

    /// <summary>True for the default value.</summary>
    public bool IsEmpty => (_a | _b | _c | _d) == 0;

    /// <summary>The digest of some bytes.</summary>
    /// <param name="content">The bytes; none are allowed too.</param>
    /// <returns>Their SHA-256.</returns>
    public static Digest Of(ReadOnlySpan<byte> content)
    {
        Span<byte> hash = stackalloc byte[ByteCount];
        SHA256.HashData(content, hash);
        return new Digest(hash);
    }

    /// <summary>Takes over a SHA-256 computed elsewhere, for instance over a stream.</summary>
    /// <param name="hash">32 bytes.</param>
    /// <returns>The digest.</returns>
    /// <exception cref="ArgumentException">There are not exactly 32 bytes.</exception>
    public static Digest FromHash(ReadOnlySpan<byte> hash) => hash.Length == ByteCount
        ? new Digest(hash)
        : throw new ArgumentException("A SHA-256 digest has 32 bytes.", nameof(hash));

    /// <summary>Reads <c>sha256:</c> and 64 hexadecimal digits.</summary>
    /// <param name="text">The text.</param>
    /// <returns>The digest.</returns>
    /// <exception cref="FormatException">The text has another form.</exception>
    public static Digest Parse(ReadOnlySpan<char> text) => TryParse(text, out Digest digest) ? digest
        : throw new FormatException($"A digest is \"sha256:\" and 64 lower-case hexadecimal digits; got {text.Length} characters.");

    /// <summary>Reads <c>sha256:</c> and 64 lower-case hexadecimal digits.</summary>
    /// <param name="text">The text.</param>
    /// <param name="digest">The digest, or the default value.</param>
    /// <returns>False if the text has another form.</returns>
    public static bool TryParse(ReadOnlySpan<char> text, out Digest digest)
    {
        digest = default;
        if (text.Length != Prefix.Length + (2 * ByteCount) || !text.StartsWith(Prefix, StringComparison.Ordinal)
            || text.ContainsAnyInRange('A', 'F'))
        {
            return false;
        }

        Span<byte> hash = stackalloc byte[ByteCount];
        if (Convert.FromHexString(text[Prefix.Length..], hash, out _, out int written) != System.Buffers.OperationStatus.Done
            || written != ByteCount)
        {
            return false;
        }

        digest = new Digest(hash);
        return true;
    }

    /// <summary>Compares two digests.</summary>
    /// <param name="left">One digest.</param>
    /// <param name="right">The other digest.</param>
    /// <returns>True if they are equal.</returns>
    public static bool operator ==(Digest left, Digest right) => left.Equals(right);

    /// <summary>Compares two digests.</summary>
    /// <param name="left">One digest.</param>
    /// <param name="right">The other digest.</param>
    /// <returns>True if they differ.</returns>
    public static bool operator !=(Digest left, Digest right) => !left.Equals(right);

    /// <inheritdoc/>
    public bool Equals(Digest other) => _a == other._a && _b == other._b && _c == other._c && _d == other._d;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Digest other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => _a.GetHashCode();

    /// <summary>Writes the 32 bytes.</summary>
    /// <param name="destination">Room for 32 bytes.</param>
    /// <returns>False if there is less room; nothing is written then.</returns>
    public bool TryWriteBytes(Span<byte> destination)
    {
        if (destination.Length < ByteCount)
        {
            return false;
        }

        BinaryPrimitives.WriteUInt64BigEndian(destination, _a);
        BinaryPrimitives.WriteUInt64BigEndian(destination[8..], _b);
        BinaryPrimitives.WriteUInt64BigEndian(destination[16..], _c);
        BinaryPrimitives.WriteUInt64BigEndian(destination[24..], _d);
        return true;
    }

    /// <summary>The first 12 hexadecimal digits: enough for a person to compare, not to prove.</summary>
    /// <returns>12 characters.</returns>
    public string ToShortString() => ToString().Substring(Prefix.Length, 12);

    /// <summary><c>sha256:</c> and 64 lower-case hexadecimal digits.</summary>
    /// <returns>71 characters.</returns>
    public override string ToString()
    {
        Span<byte> hash = stackalloc byte[ByteCount];
        TryWriteBytes(hash);
        return Prefix + Convert.ToHexStringLower(hash);
    }
}
