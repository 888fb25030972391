using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>The lists of a generated shift: kit K1 under check with lines of every kind, and two other kits. Some share a tool, some marks are shared or absent, some kits have an older revision.</summary>
public static class AnyShiftKits
{
    /// <summary>Generates the manifests of kits K1, K2 and K3 in force at the shift, and sometimes an older revision of K1.</summary>
    public static Gen<KitManifest[]> Generator { get; } =
        from count in Gen.Choose(1, 7)
        from lines in Gen.CollectToArray(Enumerable.Range(1, count), number => Line(number))
        from others in Gen.Choose(1, 3)
        from thirds in Gen.Choose(1, 2)
        from isShared in Rarely(16)
        from hasOld in Rarely(6)
        from isNew in Rarely(20)
        select Make(lines, others, thirds, isShared, hasOld, isNew);

    /// <summary>The manifests as FsCheck wants them.</summary>
    /// <returns>Values without shrinking.</returns>
    public static Arbitrary<KitManifest[]> Arbitrary() => Generator.ToArbitrary();

    internal static Gen<bool> Rarely(int oneIn) => Gen.Frequency((oneIn - 1, Gen.Constant(false)), (1, Gen.Constant(true)));

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

    private static Gen<ManifestLine> Line(int number) =>
        from kind in Gen.Frequency((6, Gen.Constant(0)), (1, Gen.Constant(1)), (1, Gen.Constant(2)), (1, Gen.Constant(3)))
        from mark in Gen.Frequency((10, Gen.Constant(0)), (1, Gen.Constant(1)), (1, Gen.Constant(2)))
        from pieces in Gen.Frequency((6, Gen.Constant(1)), (1, Gen.Constant(3)))
        from needsCalibration in Gen.Elements(true, false)
        from location in Gen.Elements("left pocket", "right pocket", null)
        from amount in Gen.Choose(1, 6)
        select Of(number, kind, mark, pieces, needsCalibration, location, amount);

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
