using System;
using System.Buffers;
using System.Collections.Generic;
using System.Globalization;
using System.Text.Json;

namespace ToolLedger.Records;

/// <summary>One recorded fact: its id, what kind it is, when it happened, who says so, and who else was there.</summary>
/// <remarks>
/// A fact is never edited; what was wrong gets a further fact. Two entries are the same if their <see cref="Digest"/> is. Rooms derive their own kinds; a host cannot.
/// Immutable and thread-safe.
/// </remarks>
public abstract class RecordEntry
{
    /// <summary>Longest remark, in characters.</summary>
    public const int MaxRemarkLength = 500;

    private byte[]? canonical;

    private protected RecordEntry()
    {
    }

    /// <summary>The id, unique among all facts of a site.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required EntryId Id { get; init => field = Given(value, value.IsEmpty, "An entry needs an id."); }

    /// <summary>When it happened, in the years 1970 to 2999, with the offset of the place.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public required DateTimeOffset At { get; init => field = RecordTime.Require(value, nameof(value)); }

    /// <summary>The person who says so.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required PersonId By { get; init => field = Given(value, value.IsEmpty, "An entry needs the person who makes it."); }

    /// <summary>In which role that person says so; empty (the default) if not stated.</summary>
    public Role Role { get; init; }

    /// <summary>A second person who was there; empty (the default) if none is recorded.</summary>
    public PersonId Witness { get; init; }

    /// <summary>Where; empty (the default) if not stated.</summary>
    public Place Where { get; init; }

    /// <summary>What else there is to say, 1 to 500 printable characters; null (the default) if nothing.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public string? Remark { get; init => field = RecordText.RequireOrNull(value, MaxRemarkLength, nameof(value)); }

    /// <summary>The stable word for what kind of fact this is, such as <c>kit-issue</c>.</summary>
    public abstract string Kind { get; }

    /// <summary>SHA-256 of <see cref="ToJson"/>.</summary>
    public Digest Digest => Digest.Of(Canonical());

    /// <summary>The signature of <see cref="By"/>.</summary>
    public Signature SignedBy => new() { By = By, At = At, Role = Role };

    /// <summary>Writes the fact as canonical JSON (RFC 8785).</summary>
    /// <returns>The bytes; the same fact gives the same bytes.</returns>
    public byte[] ToJson() => [.. Canonical()];

    /// <summary>Kind, id, person and time.</summary>
    /// <returns>Text for people.</returns>
    public override string ToString() => $"{Kind} {Id.Value} by {By.Value} at {RecordTime.ToText(At)}";

    /// <summary>The canonical form, computed once; not to be changed by the caller.</summary>
    internal byte[] Canonical() => canonical ??= Write();

    /// <summary>Writes the members that only this kind has.</summary>
    private protected abstract void WriteMembers(Utf8JsonWriter writer);

    /// <summary>The value, or an exception if it is empty.</summary>
    private protected static T Given<T>(T value, bool isEmpty, string message) => isEmpty ? throw new ArgumentException(message, nameof(value)) : value;

    /// <summary>A copy of a list of at most so many entries, none of them empty.</summary>
    private protected static IReadOnlyList<T> Listed<T>(IReadOnlyList<T> list, int maxCount, Predicate<T> isEmpty)
    {
        ArgumentNullException.ThrowIfNull(list);
        T[] copy = [.. list];
        return copy.Length <= maxCount && !Array.Exists(copy, isEmpty)
            ? Array.AsReadOnly(copy)
            : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"The list must hold at most {maxCount} entries, none of them empty."), nameof(list));
    }

    private byte[] Write()
    {
        var buffer = new ArrayBufferWriter<byte>(512);
        using (var writer = new Utf8JsonWriter(buffer))
        {
            writer.WriteStartObject();
            writer.WriteString("kind"u8, Kind);
            writer.WriteString("id"u8, Id.Value);
            writer.WriteString("at"u8, RecordTime.ToText(At));
            writer.WriteString("by"u8, By.Value);
            writer.WriteIfGiven("role", Role.Value);
            writer.WriteIfGiven("witness", Witness.Value);
            writer.WriteIfGiven("where", Where.Value);
            writer.WriteIfGiven("remark", Remark);
            WriteMembers(writer);
            writer.WriteEndObject();
        }

        return CanonicalJson.Canonicalize(buffer.WrittenSpan);
    }
}
