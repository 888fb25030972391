using System;
using System.Buffers;
using System.Collections.Generic;
using System.Collections.ObjectModel;
using System.Globalization;
using System.Text.Json;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Kits;

/// <summary>What the marks of a site look like: how long they are, of which characters, and how they begin; a part of the site policy.</summary>
/// <remarks>
/// Directives differ: the Equipment Identification Designator of US Air Force Instruction 21-101 (16 January 2020), 8.6.1.1 to 8.6.1.3, has nine letters and digits of which the first four are the
/// identification code of the unit, and a tool inside a box may carry fewer (8.6.1.4.2). The form is a check of lists, never evidence: a mark that follows it identifies nothing by that. The default asks for nothing.
/// Two forms are equal when all settings are. Immutable and thread-safe.
/// </remarks>
public sealed partial record MarkFormat
{
    /// <summary>The most beginnings that one form names.</summary>
    public const int MaxBeginningCount = 1_000;

    /// <summary>The most characters that one form names.</summary>
    public const int MaxCharacterCount = 256;

    /// <summary>No form is asked for (the default).</summary>
    public static MarkFormat Any { get; } = new();

    /// <summary>The least length of a mark, in characters.</summary>
    /// <value>1 (the default) to 32. Above <see cref="MaxLength"/> no mark is accepted.</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public int MinLength { get; init => field = Length(value); } = 1;

    /// <summary>The greatest length of a mark, in characters.</summary>
    /// <value>1 to 32 (the default).</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public int MaxLength { get; init => field = Length(value); } = Tool.MaxMarkLength;

    /// <summary>The characters a mark may have, one after another, compared ordinally.</summary>
    /// <value>1 to 256 printable characters; null (the default) for any.</value>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public string? Characters { get; init => field = RecordText.RequireOrNull(value, MaxCharacterCount, nameof(value)); }

    /// <summary>How a mark may begin, such as with the codes of the units whose tools are kept here, compared ordinally.</summary>
    /// <value>At most 1,000 texts of 1 to 32 printable characters. The default is empty: anyhow.</value>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentException">The list is too long or holds another text.</exception>
    public IReadOnlyList<string> Beginnings { get; init => field = Listed(value); } = [];

    /// <summary>Whether every tool on a list must carry a mark.</summary>
    /// <value>The default is false: what is too small to be marked is told by its container.</value>
    public bool IsRequired { get; init; }

    /// <summary>Whether nothing is asked for.</summary>
    public bool IsAny => Equals(Any);

    /// <summary>Whether a mark follows the form.</summary>
    /// <param name="mark">The mark.</param>
    /// <returns>False if it does not.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="mark"/> is null.</exception>
    public bool Accepts(string mark)
    {
        ArgumentNullException.ThrowIfNull(mark);
        if (mark.Length < MinLength || mark.Length > MaxLength)
        {
            return false;
        }

        foreach (char c in Characters is null ? "" : mark)
        {
            if (!Characters!.Contains(c, StringComparison.Ordinal))
            {
                return false;
            }
        }

        foreach (string beginning in Beginnings)
        {
            if (mark.StartsWith(beginning, StringComparison.Ordinal))
            {
                return true;
            }
        }

        return Beginnings.Count == 0;
    }

    /// <summary>Checks the marks of a manifest before it is signed or used.</summary>
    /// <param name="manifest">The manifest.</param>
    /// <returns>Every tool whose mark does not follow the form, and every tool without one where one is required, with its line; alternates too.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="manifest"/> is null.</exception>
    public IReadOnlyList<RecordIssue> Check(KitManifest manifest)
    {
        ArgumentNullException.ThrowIfNull(manifest);
        var issues = new IssueList();
        if (IsAny)
        {
            return issues;
        }

        for (int i = 0; i < manifest.Lines.Count; i++)
        {
            ManifestLine line = manifest.Lines[i];
            if (line.Tool is { } tool && WhyNot(tool) is { } fault)
            {
                issues.Report(LineCheck.PlaceOf(i), fault, line.Number);
            }

            foreach (Tool alternate in (line as ToolLine)?.Alternates ?? [])
            {
                if (WhyNot(alternate) is { } why)
                {
                    issues.Report(LineCheck.PlaceOf(i), why, line.Number);
                }
            }
        }

        return issues;
    }

    /// <summary>Why the mark of a tool does not follow the form, or null.</summary>
    internal Reason? WhyNot(Tool tool) => tool.Mark is { } mark
        ? Accepts(mark) ? null : new Reason(ManifestRules.MarkFormat, ("mark", mark), ("tool", tool.Id.Value), ("form", ToString()))
        : IsRequired ? new Reason(ManifestRules.NoMark, ("tool", tool.Id.Value)) : null;

    /// <summary>Compares all settings.</summary>
    /// <param name="other">The other form.</param>
    /// <returns>True if every setting is equal.</returns>
    public bool Equals(MarkFormat? other) => other is not null && Written().AsSpan().SequenceEqual(other.Written());

    /// <summary>A hash of some settings.</summary>
    /// <returns>The hash.</returns>
    public override int GetHashCode() => HashCode.Combine(MinLength, MaxLength, Characters, Beginnings.Count, IsRequired);

    /// <summary>The form in words.</summary>
    /// <returns>An English phrase.</returns>
    public override string ToString()
    {
        string length = MinLength == MaxLength ? Text(MinLength) : $"{Text(MinLength)} to {Text(MaxLength)}";
        string characters = Characters is null ? "" : $" of \"{Characters}\"";
        string more = Beginnings.Count > 1 ? $" or {Text(Beginnings.Count - 1)} more" : "";
        return $"{length} characters{characters}{(Beginnings.Count == 0 ? "" : $", beginning with \"{Beginnings[0]}\"{more}")}";
    }

    /// <summary>The stored form holds every setting, so that a new one cannot be forgotten in the comparison.</summary>
    private byte[] Written()
    {
        var buffer = new ArrayBufferWriter<byte>(256);
        using (var writer = new Utf8JsonWriter(buffer))
        {
            WriteJson(writer);
        }

        return buffer.WrittenSpan.ToArray();
    }

    private static int Length(int value) => value is >= 1 and <= Tool.MaxMarkLength
        ? value
        : throw new ArgumentOutOfRangeException(nameof(value), value, "The length of a mark must be 1 to 32.");

    private static ReadOnlyCollection<string> Listed(IReadOnlyList<string> list)
    {
        ArgumentNullException.ThrowIfNull(list);
        string[] copy = [.. list];
        return copy.Length <= MaxBeginningCount && Array.TrueForAll(copy, static text => RecordText.Check(text, Tool.MaxMarkLength) is null)
            ? Array.AsReadOnly(copy)
            : throw new ArgumentException("The list must hold at most 1,000 texts of 1 to 32 printable characters.", nameof(list));
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
