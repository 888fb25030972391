using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Kits;

/// <content>Stored form.</content>
public sealed partial class KitManifest
{
    /// <summary>Largest stored manifest, in bytes: 64 MiB.</summary>
    public const int MaxByteCount = JsonLimits.RecordByteCount;

    /// <summary>Kind and version of the stored form, its member <c>schema</c>.</summary>
    public const string Schema = "toolledger/kit-manifest/1";

    // Up to here looking at every line is quicker than a dictionary, and needs none.
    private const int LinearSearchLength = 16;

    private Dictionary<ToolId, ManifestLine>? _lineByTool;
    private Dictionary<ToolId, ToolLine>? _lineByAlternate;

    /// <summary>Reads a stored manifest.</summary>
    /// <param name="utf8Json">JSON as UTF-8, at most 64 MiB, see docs/schemas/kit-manifest.schema.json.</param>
    /// <returns>The manifest.</returns>
    /// <exception cref="RecordException">The manifest is refused; the exception lists every issue.</exception>
    public static KitManifest Parse(ReadOnlySpan<byte> utf8Json) =>
        TryParse(utf8Json, out KitManifest? manifest, out IReadOnlyList<RecordIssue> issues) ? manifest : throw new RecordException(issues);

    /// <summary>Reads a stored manifest if nothing speaks against it.</summary>
    /// <param name="utf8Json">JSON as UTF-8, at most 64 MiB, see docs/schemas/kit-manifest.schema.json.</param>
    /// <param name="manifest">The manifest, or null.</param>
    /// <param name="issues">Every issue, at most 10,001, with place and line; empty when the manifest was read.</param>
    /// <returns>False if there are issues.</returns>
    public static bool TryParse(ReadOnlySpan<byte> utf8Json, [NotNullWhen(true)] out KitManifest? manifest, out IReadOnlyList<RecordIssue> issues) =>
        TryParse(utf8Json, ManifestReading.Strict, out manifest, out issues);

    /// <summary>Reads a stored manifest with what the caller declares beside it. See <see cref="Parse(ReadOnlySpan{byte})"/>.</summary>
    /// <param name="utf8Json">JSON as UTF-8, at most 64 MiB.</param>
    /// <param name="reading">What the caller declares.</param>
    /// <returns>The manifest.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="reading"/> is null.</exception>
    /// <exception cref="RecordException">The manifest is refused; the exception lists every issue.</exception>
    public static KitManifest Parse(ReadOnlySpan<byte> utf8Json, ManifestReading reading) =>
        TryParse(utf8Json, reading, out KitManifest? manifest, out IReadOnlyList<RecordIssue> issues) ? manifest : throw new RecordException(issues);

    /// <summary>Reads a stored manifest with what the caller declares beside it, if nothing speaks against it.</summary>
    /// <param name="utf8Json">JSON as UTF-8, at most 64 MiB.</param>
    /// <param name="reading">What the caller declares.</param>
    /// <param name="manifest">The manifest, or null.</param>
    /// <param name="issues">Every issue, at most 10,001, with place and line; empty when the manifest was read.</param>
    /// <returns>False if there are issues.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="reading"/> is null.</exception>
    public static bool TryParse(
        ReadOnlySpan<byte> utf8Json, ManifestReading reading, [NotNullWhen(true)] out KitManifest? manifest, out IReadOnlyList<RecordIssue> issues)
    {
        ArgumentNullException.ThrowIfNull(reading);
        var found = new IssueList();
        ManifestContent? content = RecordJson.TryRead(utf8Json, KitsJson.Default.KitManifestFile, Schema, JsonLimits.ForRecord(MaxLineCount), found, out KitManifestFile? file)
            ? file.Read(new RecordReader(found), reading)
            : null;
        manifest = content is null ? null : new KitManifest(content);
        issues = found;
        return manifest is not null;
    }

    /// <summary>Writes the stored form: UTF-8, indented, lines ordered by number.</summary>
    /// <returns>JSON that <see cref="Parse(ReadOnlySpan{byte})"/> reads back.</returns>
    public byte[] ToJson() => RecordJson.Write(KitManifestFile.Of(this), KitsJson.Default.KitManifestFile);

    private Dictionary<ToolId, ManifestLine> IndexTools()
    {
        var index = new Dictionary<ToolId, ManifestLine>(_lines.Length);
        foreach (ManifestLine line in _lines)
        {
            if (line.Tool is { } tool)
            {
                index.Add(tool.Id, line);
            }
        }

        return index;
    }

    private Dictionary<ToolId, ToolLine> IndexAlternates()
    {
        var index = new Dictionary<ToolId, ToolLine>();
        foreach (ManifestLine line in _lines)
        {
            if (line is ToolLine single)
            {
                foreach (Tool alternate in single.Alternates)
                {
                    index.Add(alternate.Id, single);
                }
            }
        }

        return index;
    }
}
