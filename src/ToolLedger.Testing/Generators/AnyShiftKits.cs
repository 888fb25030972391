using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Testing.Simulation;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>The lists of a generated shift: kit K1 under check with lines of every kind, perhaps with alternates and with box K4 inside it, and two other kits. Some share a tool, some marks are shared or absent, some kits have an older revision.</summary>
public static class AnyShiftKits
{
    /// <summary>Generates the manifests of kits K1, K2 and K3 in force at the shift, sometimes that of box K4 inside K1, and sometimes an older revision of K1.</summary>
    public static Gen<KitManifest[]> Generator { get; } = ShiftPool.FromSeeds(Draw);

    /// <summary>The manifests as FsCheck wants them.</summary>
    /// <returns>Values without shrinking.</returns>
    public static Arbitrary<KitManifest[]> Arbitrary() => Generator.ToArbitrary();

    internal static KitManifest[] Draw(SplitMix64 chance)
    {
        var lines = new ManifestLine[chance.Among(1, 7)];
        for (int i = 0; i < lines.Length; i++)
        {
            lines[i] = DrawLine(chance, i + 1);
        }

        KitManifest[] plain = Make(lines, chance.Among(1, 3), chance.Among(1, 2), chance.OneIn(16), chance.OneIn(6), chance.OneIn(20));
        return chance.OneIn(2) ? AnyShiftParts.Draw(chance, plain) : plain;
    }

    private static ManifestLine DrawLine(SplitMix64 chance, int number) => Of(
        number,
        kind: chance.Weighted(6, 1, 1, 1),
        mark: chance.Weighted(10, 1, 1),
        pieces: chance.Weighted(6, 1) == 0 ? 1 : 3,
        needsCalibration: chance.OneIn(2),
        location: chance.Below(3) switch { 0 => "left pocket", 1 => "right pocket", _ => null },
        amount: chance.Among(1, 6));

    private static KitManifest[] Make(ManifestLine[] lines, int others, int thirds, bool isShared, bool hasOld, bool isNew)
    {
        // A revision made minutes before the end of the shift makes earlier counts counts of another list.
        DateTimeOffset from = isNew ? ShiftPool.Start.AddMinutes(-5) : ShiftPool.Start.AddDays(-30);
        List<ManifestLine> second = [.. Enumerable.Range(1, others).Select(number => Plain(number, "U"))];
        if (isShared && lines.Select(static line => line.Tool).FirstOrDefault(static tool => tool is not null) is { } shared)
        {
            second.Add(new ToolLine { Number = 9, Tool = shared });
        }

        var manifests = new List<KitManifest>
        {
            Kit(ShiftPool.Subject, 2, from, lines),
            Kit(ShiftPool.Second, 1, ShiftPool.Start.AddDays(-30), second),
            Kit(ShiftPool.Third, 1, ShiftPool.Start.AddDays(-30), Enumerable.Range(1, thirds).Select(static number => Plain(number, "V"))),
        };
        if (hasOld)
        {
            manifests.Add(Kit(ShiftPool.Subject, 1, ShiftPool.Start.AddDays(-60), lines.Take(1)));
        }

        return [.. manifests];
    }

    private static KitManifest Kit(KitId kit, int revision, DateTimeOffset from, IEnumerable<ManifestLine> lines)
        => new(kit, revision, "invented kit", from, new Signature { By = new PersonId("S"), At = from }, lines);

    private static ManifestLine Of(int number, int kind, int mark, int pieces, bool needsCalibration, string? location, int amount)
    {
        string name = number.ToString(CultureInfo.InvariantCulture);
        var tool = new Tool
        {
            Id = new ToolId("T" + name),
            Description = "tool " + name,
            Mark = mark switch { 0 => "K1-" + name, 1 => "K1", _ => null },
            PieceCount = kind == 0 ? pieces : 1,
            NeedsCalibration = needsCalibration,
        };
        return kind switch
        {
            0 => new ToolLine { Number = number, Location = location, Tool = tool },
            1 => new SetLine { Number = number, Location = location, Container = tool, Contents = "keys", TotalCount = amount + 1 },
            2 => new CountedLine { Number = number, Location = location, Description = "rags", Quantity = new Quantity(amount, Unit.Each) },
            _ => new ConsumableLine { Number = number, Location = location, Description = "wire", Quantity = new Quantity(amount, new Unit("spool")) },
        };
    }

    private static ToolLine Plain(int number, string stem)
    {
        string id = stem + number.ToString(CultureInfo.InvariantCulture);
        return new ToolLine { Number = number, Tool = new Tool { Id = new ToolId(id), Description = "tool " + id, Mark = id } };
    }
}
