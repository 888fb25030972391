using System;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>The rarer entries of an inventory sheet, and the persons behind all of them.</summary>
internal static class EntryGenerators
{
    internal static Gen<PersonId> Persons() => Gen.Elements("P", "Q", "S", "нина").Select(id => new PersonId(id));

    internal static Gen<PersonId> Witnesses(PersonId by) => Gen.Frequency((1, Gen.Constant(default(PersonId))), (1, Persons().Where(person => person != by)));

    internal static Gen<Signature> Signatures() =>
        from who in Persons()
        from at in GeneratedValues.Times()
        from role in Gen.Elements(default, new Role("supervisor"))
        select new Signature { By = who, At = at, Role = role };

    internal static Gen<Annotation> Annotations() =>
        from kit in GeneratedValues.FewIds("K")
        from line in Gen.Choose(1, 20)
        from kind in Gen.Elements(AnnotationKind.Removed, AnnotationKind.Shortage, AnnotationKind.Restored)
        from amount in Gen.Choose(1, 30)
        from unit in Units()
        from reason in GeneratedValues.Text(40)
        from signed in Signatures()
        from until in Maybe(GeneratedValues.Times().Select(at => (DateTimeOffset?)at))
        from report in Maybe(GeneratedValues.Text(20))
        select new Annotation
        {
            Kit = new KitId(kit),
            LineNumber = line,
            Kind = kind,
            ShortBy = kind == AnnotationKind.Shortage ? new Quantity(amount, unit) : default,
            Reason = reason,
            SignedBy = signed,
            Until = until,
            Report = report,
        };

    internal static Gen<SealRecord> Seals() =>
        from kit in GeneratedValues.FewIds("K")
        from number in GeneratedValues.Text(12)
        from who in Persons()
        from at in GeneratedValues.Times()
        from minutes in Gen.Choose(0, 600)
        from witness in Witnesses(who)
        select new SealRecord { Kit = new KitId(kit), Number = number, By = who, At = at.AddMinutes(minutes), InventoriedAt = at, Witness = witness };

    internal static Gen<SealCheck> SealChecks() =>
        from kit in GeneratedValues.FewIds("K")
        from number in GeneratedValues.Text(12)
        from isIntact in Gen.Elements(true, false)
        from who in Persons()
        from at in GeneratedValues.Times()
        select new SealCheck { Kit = new KitId(kit), NumberRead = number, IsIntact = isIntact, By = who, At = at };

    internal static Gen<Substitution> Substitutions() =>
        from kit in GeneratedValues.FewIds("K")
        from line in Gen.Choose(1, 20)
        from tool in GeneratedValues.FewIds("T")
        from reason in GeneratedValues.Text(40)
        from who in Persons()
        from at in GeneratedValues.Times()
        select new Substitution { Kit = new KitId(kit), LineNumber = line, InPlace = new ToolId(tool), Reason = reason, By = who, At = at };

    internal static Gen<ConsumableUse> Uses() =>
        from kit in GeneratedValues.FewIds("K")
        from line in Gen.Choose(1, 20)
        from job in Gen.Elements("J1", "J2", "J3")
        from unit in Units()
        from used in Gen.Choose(0, 5000)
        from scrapped in Gen.Choose(used == 0 ? 1 : 0, 5000)
        from who in Persons()
        from at in GeneratedValues.Times()
        select new ConsumableUse
        {
            Kit = new KitId(kit),
            LineNumber = line,
            Job = job,
            Unit = unit,
            Used = used / 1000m,
            Scrapped = scrapped / 1000m,
            By = who,
            At = at,
        };

    internal static Gen<Breakage> Breakages() =>
        from tool in GeneratedValues.FewIds("T")
        from pieces in Gen.Frequency((1, Gen.Constant((int?)null)), (3, Gen.Choose(0, 999).Select(count => (int?)count)))
        from who in Persons()
        from at in GeneratedValues.Times()
        select new Breakage { Tool = new ToolId(tool), Pieces = pieces, By = who, At = at };

    internal static Gen<Reconstruction> Reconstructions() =>
        from tool in GeneratedValues.FewIds("T")
        from pieces in Gen.Choose(1, 999)
        from decision in GeneratedValues.Text(40)
        from signed in Signatures()
        from witness in Witnesses(signed.By)
        select new Reconstruction { Tool = new ToolId(tool), Pieces = pieces, Decision = decision, SignedBy = signed, Witness = witness };

    internal static Gen<JoiningStatement> Joinings() =>
        from kit in GeneratedValues.FewIds("K")
        from line in Gen.Choose(1, 20)
        from parts in Gen.Choose(2, 999)
        from wholes in Gen.Choose(1, parts / 2)
        from who in Persons()
        from at in GeneratedValues.Times()
        select new JoiningStatement { Kit = new KitId(kit), LineNumber = line, Parts = parts, Wholes = wholes, By = who, At = at };

    internal static Gen<UnlistedItemReport> UnlistedItems() =>
        from what in GeneratedValues.Text(40)
        from owner in Witnesses(default)
        from who in Persons()
        from at in GeneratedValues.Times()
        from kit in Gen.Frequency((1, Gen.Constant(default(KitId))), (1, GeneratedValues.FewIds("K").Select(id => new KitId(id))))
        from seen in Maybe(GeneratedValues.Times().Select(at => (DateTimeOffset?)at))
        from touched in GeneratedValues.ListOf(GeneratedValues.Text(20), 3)
        select new UnlistedItemReport
        {
            Description = what,
            Owner = owner,
            By = who,
            At = at,
            Kit = kit,
            LastSeenAt = seen,
            LastSeenWhere = touched.Count > 0 ? new Place(touched[0]) : default,
            TouchedSince = [.. touched.Select(text => new Place(text))],
        };

    private static Gen<Unit> Units() => Gen.Elements("each", "piece", "spool", "m").Select(text => new Unit(text));

    private static Gen<T?> Maybe<T>(Gen<T> some) => Gen.Frequency((1, Gen.Constant(default(T))), (1, some.Select(value => (T?)value)));
}
