using System;
using System.Collections.Generic;
using System.Globalization;
using ToolLedger.Records;

namespace ToolLedger.Kits;

/// <summary>The checked parts of a manifest.</summary>
internal sealed class ManifestContent
{
    internal required KitId Id { get; init; }

    internal required int Revision { get; init; }

    internal required string Title { get; init; }

    internal required DateTimeOffset EffectiveFrom { get; init; }

    internal required Signature SignedBy { get; init; }

    internal required ManifestLine[] Lines { get; init; }

    /// <summary>Checks parts that came as objects; null and issues if the manifest is refused.</summary>
    internal static ManifestContent? Check(KitId id, int revision, string? title, DateTimeOffset effectiveFrom, Signature? signedBy,
        IEnumerable<ManifestLine> lines, IssueList issues)
    {
        ArgumentNullException.ThrowIfNull(lines);
        if (id.IsEmpty)
        {
            issues.Report("$.kit", new Reason(RecordRules.TextEmpty));
        }

        CheckRevision(revision, issues);
        if (RecordText.Check(title, KitManifest.MaxTitleLength) is { } fault)
        {
            issues.Report("$.title", fault);
        }

        if (!RecordTime.IsInRange(effectiveFrom))
        {
            issues.Report("$.effectiveFrom", new Reason(RecordRules.TimeOutOfRange, ("found", RecordTime.ToText(effectiveFrom))));
        }

        CheckSignature(signedBy, issues);
        ManifestLine[] checkedLines = CheckLines(id, lines, issues);
        return issues.Reported > 0 ? null : new ManifestContent
        {
            Id = id,
            Revision = revision,
            Title = title!,
            EffectiveFrom = effectiveFrom,
            SignedBy = signedBy!,
            Lines = checkedLines,
        };
    }

    internal static void CheckRevision(int revision, IssueList issues)
    {
        if (revision is < 1 or > KitManifest.MaxRevision)
        {
            issues.Report("$.revision", new Reason(RecordRules.OutOfRange, ("range", "1 to 1,000,000"),
                ("found", revision.ToString(CultureInfo.InvariantCulture))));
        }
    }

    private static void CheckSignature(Signature? signedBy, IssueList issues)
    {
        if (signedBy is null)
        {
            issues.Report("$.signedBy", new Reason(ManifestRules.NotSigned));
        }
    }

    private static ManifestLine[] CheckLines(KitId id, IEnumerable<ManifestLine> lines, IssueList issues)
    {
        var check = new LineCheck(id, issues);
        var kept = new List<ManifestLine>();
        foreach (ManifestLine line in lines)
        {
            ArgumentNullException.ThrowIfNull(line, nameof(lines));
            if (kept.Count == KitManifest.MaxLineCount)
            {
                issues.Report("$.lines", LineCheck.TooManyLines());
                break;
            }

            string place = LineCheck.PlaceOf(kept.Count);
            check.Number(line.Number, place);
            CheckLine(line, check, place);
            kept.Add(line);
        }

        check.End();
        return InOrder(kept);
    }

    private static void CheckLine(ManifestLine line, LineCheck check, string place)
    {
        if (line.Tool is { } tool)
        {
            check.Tool(tool.Id, line.Number, place);
        }
        else
        {
            check.Quantity(line.Expected.Amount, line.Expected.Unit, line.Number, place);
        }

        switch (line)
        {
            case ToolLine { Alternates.Count: > 0 } single:
                check.Alternates(single.Tool, single.Alternates, line.Number, place);
                break;
            case SubKitLine subKit:
                check.SubKit(subKit.Kit, line.Number, place);
                break;
            default:
                break;
        }
    }

    internal static ManifestLine[] InOrder(List<ManifestLine> lines)
    {
        ManifestLine[] ordered = lines.ToArray();
        Array.Sort(ordered, static (left, right) => left.Number.CompareTo(right.Number));
        return ordered;
    }
}
