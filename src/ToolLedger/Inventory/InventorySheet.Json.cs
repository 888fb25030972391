using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Linq;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

public sealed partial class InventorySheet
{
    /// <summary>The schema a stored sheet names.</summary>
    public const string Schema = "toolledger/inventory-sheet/1";

    /// <summary>Reads a stored sheet.</summary>
    /// <param name="utf8Json">The JSON; at most 64 MiB.</param>
    /// <returns>The sheet.</returns>
    /// <exception cref="RecordException">The bytes are not such a sheet; the exception lists every issue.</exception>
    public static InventorySheet Parse(ReadOnlySpan<byte> utf8Json) =>
        TryParse(utf8Json, out InventorySheet? sheet, out IReadOnlyList<RecordIssue> issues) ? sheet : throw new RecordException(issues);

    /// <summary>Reads a stored sheet, or says everything that is wrong with it.</summary>
    /// <param name="utf8Json">The JSON; at most 64 MiB.</param>
    /// <param name="sheet">The sheet, or null if it is refused.</param>
    /// <param name="issues">Every issue, with its place as a JSON path; empty if the sheet was read.</param>
    /// <returns>Whether the sheet was read. Bad bytes never raise an exception.</returns>
    public static bool TryParse(ReadOnlySpan<byte> utf8Json, [NotNullWhen(true)] out InventorySheet? sheet, out IReadOnlyList<RecordIssue> issues)
    {
        var found = new IssueList();
        issues = found;
        sheet = null;
        if (!RecordJson.TryRead(utf8Json, InventoryJson.Default.InventorySheetFile, Schema, JsonLimits.ForRecord(MaxEntryCount), found, out InventorySheetFile? file))
        {
            return false;
        }

        var reader = new RecordReader(found);
        reader.RefuseUnknown(file, "$");
        var entries = new InventoryEntries
        {
            Sightings = ReadAll(reader, file.Sightings, "$.sightings", static (entry, to, place) => entry.Read(to, place)),
            Counts = ReadAll(reader, file.Counts, "$.counts", static (entry, to, place) => entry.Read(to, place)),
            PieceCounts = ReadAll(reader, file.PieceCounts, "$.pieceCounts", static (entry, to, place) => entry.Read(to, place)),
            Openings = ReadAll(reader, file.Openings, "$.openings", static (entry, to, place) => entry.Read(to, place)),
            Annotations = ReadAll(reader, file.Annotations, "$.annotations", static (entry, to, place) => entry.Read(to, place)),
            Uses = ReadAll(reader, file.Uses, "$.uses", static (entry, to, place) => entry.Read(to, place)),
            Breakages = ReadAll(reader, file.Breakages, "$.breakages", static (entry, to, place) => entry.Read(to, place)),
            Reconstructions = ReadAll(reader, file.Reconstructions, "$.reconstructions", static (entry, to, place) => entry.Read(to, place)),
            Joinings = ReadAll(reader, file.Joinings, "$.joinings", static (entry, to, place) => entry.Read(to, place)),
            UnlistedItems = ReadAll(reader, file.UnlistedItems, "$.unlistedItems", static (entry, to, place) => entry.Read(to, place)),
            Seals = ReadAll(reader, file.Seals, "$.seals", static (entry, to, place) => entry.Read(to, place)),
            SealChecks = ReadAll(reader, file.SealChecks, "$.sealChecks", static (entry, to, place) => entry.Read(to, place)),
            Substitutions = ReadAll(reader, file.Substitutions, "$.substitutions", static (entry, to, place) => entry.Read(to, place)),
            Signatures = ReadAll(reader, file.Signatures, "$.signatures", static (entry, to, place) => entry.Read(to, place)),
        };
        if (found.Reported > 0)
        {
            return false;
        }

        var made = new InventorySheet(entries, found);
        sheet = found.Reported == 0 ? made : null;
        return sheet is not null;
    }

    /// <summary>Writes the sheet as JSON: indented UTF-8 in a fixed order of members.</summary>
    /// <returns>The bytes; the same sheet gives the same bytes.</returns>
    public byte[] ToJson() => RecordJson.Write(
        new InventorySheetFile
        {
            Schema = new JsonText(Schema),
            Sightings = [.. Sightings.Select(SightingEntry.Of)],
            Counts = [.. Counts.Select(LineCountEntry.Of)],
            PieceCounts = [.. PieceCounts.Select(PieceCountEntry.Of)],
            Openings = WriteAll(Openings, KitOpeningEntry.Of),
            Annotations = WriteAll(Annotations, AnnotationEntry.Of),
            Uses = WriteAll(Uses, ConsumableUseEntry.Of),
            Breakages = WriteAll(Breakages, BreakageEntry.Of),
            Reconstructions = WriteAll(Reconstructions, ReconstructionEntry.Of),
            Joinings = WriteAll(Joinings, JoiningStatementEntry.Of),
            UnlistedItems = WriteAll(UnlistedItems, UnlistedItemReportEntry.Of),
            Seals = WriteAll(Seals, SealRecordEntry.Of),
            SealChecks = WriteAll(SealChecks, SealCheckEntry.Of),
            Substitutions = WriteAll(Substitutions, SubstitutionEntry.Of),
            Signatures = [.. Signatures.Select(SignatureRecord.Of)],
        },
        InventoryJson.Default.InventorySheetFile);

    /// <summary>Null for an empty list, which is then not written: a sheet without a kind of entry has the same bytes as before that kind existed.</summary>
    private static TEntry[]? WriteAll<T, TEntry>(IReadOnlyList<T> values, Func<T, TEntry> write) => values.Count == 0 ? null : [.. values.Select(write)];

    private static T[] ReadAll<TEntry, T>(RecordReader reader, IReadOnlyList<TEntry?>? entries, string place, Func<TEntry, RecordReader, string, T?> read)
        where TEntry : class
        where T : class
    {
        var values = new List<T>();
        for (int index = 0; index < (entries?.Count ?? 0); index++)
        {
            string at = string.Create(CultureInfo.InvariantCulture, $"{place}[{index}]");
            if (entries![index] is not { } entry)
            {
                reader.Report(at, new Reason(RecordRules.WrongType, ("expected", "an object"), ("found", "null")));
            }
            else if (read(entry, reader, at) is { } value)
            {
                values.Add(value);
            }
        }

        return [.. values];
    }
}
