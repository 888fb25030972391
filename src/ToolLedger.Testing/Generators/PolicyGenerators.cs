using System;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Custody;
using ToolLedger.Holds;
using ToolLedger.Kits;
using ToolLedger.Policies;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Testing.Generators;

/// <summary>FsCheck generators of site policies; hand the type to <c>Arbitrary</c> of a property.</summary>
/// <remarks>Everything generated is a policy the library accepts. Thread-safe.</remarks>
public static class PolicyGenerators
{
    /// <summary>Site policies with names of several scripts, and settings over their ranges.</summary>
    /// <returns>The generator.</returns>
    public static Arbitrary<SitePolicy> SitePolicy() => Arb.From(
        from name in GeneratedValues.Text(20)
        from sessions in Sessions()
        from presence in Presences()
        from inventory in InventoryGenerators.InventoryPolicy().Generator
        from custody in Custodies()
        from marks in Marks()
        from calibration in CalibrationGenerators.CalibrationPolicy().Generator
        from findings in Findings()
        from holds in Holds()
        from calendar in Calendars()
        select new SitePolicy
        {
            Name = name,
            Sessions = sessions,
            Presence = presence,
            Inventory = inventory,
            Custody = custody,
            Marks = marks,
            Calibration = calibration,
            Findings = findings,
            Holds = holds,
            Calendar = calendar,
        });

    private static Gen<MarkFormat> Marks() =>
        from least in Gen.Choose(1, 32)
        from most in Gen.Choose(least, 32)
        from characters in Gen.Elements(null, "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789", "K1-0")
        from beginnings in GeneratedValues.ListOf(GeneratedValues.Text(4), 3)
        from isRequired in Gen.Elements(true, false)
        from isAny in Gen.Elements(true, false)
        select isAny ? MarkFormat.Any : new MarkFormat { MinLength = least, MaxLength = most, Characters = characters, Beginnings = beginnings, IsRequired = isRequired };

    private static Gen<SessionPolicy> Sessions() =>
        from edge in Gen.Choose(1, 36_000)
        from window in Gen.Choose(0, 86_400)
        from slot in Gen.Choose(1, 6_000)
        from looks in Gen.Choose(1, 4_096)
        from arrival in Gen.Elements(true, false)
        from days in Gen.Choose(1, 36_525)
        from grace in Gen.Choose(0, 86_400)
        select new SessionPolicy
        {
            ControlTagEdge = TimeSpan.FromMilliseconds(100.0 * edge),
            MinimumWindow = TimeSpan.FromSeconds(window),
            SlotLength = TimeSpan.FromMilliseconds(10.0 * slot),
            LooksKept = looks,
            HostArrivalAccepted = arrival,
            StampDistanceMax = TimeSpan.FromDays(days),
            LateReadGrace = TimeSpan.FromSeconds(grace),
        };

    private static Gen<CustodyPolicy> Custodies() =>
        from room in GeneratedValues.Text(20)
        from flags in Gen.Elements(true, false).ArrayOf(8)
        from ages in Gen.Choose(1, 31_622_400).ArrayOf(2)
        from personal in Gen.Elements(Enum.GetValues<PersonalToolRule>())
        from roles in GeneratedValues.ListOf(GeneratedValues.FewIds("role").Select(static text => new Role(text)), 4)
        from grants in GeneratedValues.ListOf(Grants(), 3)
        select new CustodyPolicy
        {
            ToolRoom = new Place(room),
            SamePersonMayTakeBack = flags[0],
            SinglePersonWithWitness = flags[1],
            JointInventoryNeeded = flags[2],
            LoanFromIssuedKitAllowed = flags[3],
            LoanDueNeeded = flags[4],
            KitMayCloseWithOpenReceipt = flags[5],
            ChitsAccepted = flags[6],
            ExpectedReturnNeeded = flags[7],
            JointInventoryAgeMax = TimeSpan.FromSeconds(ages[0]),
            IssueInventoryAgeMax = TimeSpan.FromSeconds(ages[1]),
            PersonalTools = personal,
            RolesThatMayIssue = roles,
            RolesThatMayReceive = [.. roles.Take(1)],
            RolesThatMayKeepZoneLogs = [.. roles.Skip(1)],
            Roster = new RoleRoster(grants),
        };

    private static Gen<HoldPolicy> Holds() =>
        from roles in GeneratedValues.FewIds("role").ArrayOf(2)
        from flags in Gen.Elements(true, false).ArrayOf(3)
        from told in GeneratedValues.ListOf(GeneratedValues.Text(10), 3)
        from seconds in Gen.Choose(0, 31_622_400)
        select new HoldPolicy
        {
            RolesThatMayRelease = [new Role(roles[0])],
            RolesThatMayReleaseNotFound = [new Role(roles[1])],
            RolesThatMayReleaseImpound = [.. roles.Select(static role => new Role(role))],
            RolesThatMayDecide = [new Role(roles[0])],
            DeclarerMayRelease = flags[0],
            FoundMarkNeeded = flags[1],
            SightingEndsExposureOnly = flags[2],
            NotificationsNeeded = told,
            SearchStepsNeeded = [.. told.Skip(1)],
            NotificationTimeMax = seconds == 0 ? null : TimeSpan.FromSeconds(seconds),
            HoldTimeMax = seconds % 2 == 0 ? null : TimeSpan.FromSeconds(seconds),
            DeclarationTimeMax = seconds % 3 != 1 ? null : TimeSpan.FromSeconds(seconds),
        };

    private static Gen<RoleGrant> Grants() =>
        from person in GeneratedValues.FewIds("P")
        from role in GeneratedValues.FewIds("role")
        from at in GeneratedValues.Times()
        from days in Gen.Choose(0, 100)
        select new RoleGrant { Person = new PersonId(person), Role = new Role(role), From = at, Until = days == 0 ? null : at.AddDays(days) };

    private static Gen<PresencePolicy> Presences() => Gen.OneOf(Countings(), StatedRisks());

    /// <summary>Detection models in which tags that are there answer no worse than strays.</summary>
    /// <returns>The generator.</returns>
    public static Gen<DetectionModel> DetectionModels() =>
        from obscured in Gen.Choose(0, 300)
        from strays in Gen.Choose(1, 500)
        from strayA in Gen.Choose(5, 3000)
        from moreA in Gen.Choose(0, 6000)
        from presentB in Gen.Choose(5, 6000)
        from moreB in Gen.Choose(0, 20000)
        select new DetectionModel(
            obscured / 1000m, new BetaRate((strayA + moreA) / 1000m, presentB / 1000m), strays / 1000m, new BetaRate(strayA / 1000m, (presentB + moreB) / 1000m));

    private static Gen<StationModel> StationModels() =>
        from station in GeneratedValues.FewIds("R")
        from mounting in Gen.Elements(null, "flat on steel", "in a recess")
        from model in DetectionModels()
        select new StationModel(new StationId(station), mounting, model);

    private static Gen<PresencePolicy> StatedRisks() =>
        from model in DetectionModels()
        from others in GeneratedValues.ListOf(StationModels(), 4)
        from limit in Gen.Elements(0.0001m, 0.001m, 0.01m, 0.1m)
        from own in Gen.Elements(0.001m, 0.01m, 0.1m)
        from factor in Gen.Elements(1m, 1.5m, 2m, 4m)
        from absent in Gen.Elements(0.001m, 0.01m, 0.05m)
        from shares in Gen.Choose(1, 900_000).ArrayOf(5)
        from away in Gen.Choose(0, 90)
        from down in Gen.Choose(0, 90)
        from lines in Gen.Choose(1, 1000)
        from epcOnly in Gen.Elements(true, false)
        select (PresencePolicy)new StatedRiskPolicy
        {
            Model = model,
            Models = [.. others.DistinctBy(static other => (other.Station, other.Mounting))],
            KitRiskLimit = limit,
            LineRiskMax = own,
            RobustnessFactor = factor,
            AbsentShare = absent,
            CustodyShares = new CustodyShares
            {
                Issued = shares[0] / 1_000_000m,
                Packed = shares[1] / 1_000_000m,
                Returned = shares[2] / 1_000_000m,
                OpenAtIssue = shares[3] / 1_000_000m,
                OnReceipt = shares[4] / 1_000_000m,
            },
            KitAwayShare = away / 100m,
            ReaderDownShare = down / 100m,
            LineCountAssumed = lines,
            EpcOnlyAccepted = epcOnly,
        };

    private static Gen<PresencePolicy> Countings() =>
        from looks in Gen.Choose(1, 100)
        from antennas in Gen.Choose(1, 64)
        from passes in Gen.Choose(1, 100)
        from epcOnly in Gen.Elements(true, false)
        select (PresencePolicy)new CountingPolicy { LooksNeeded = looks, AntennasNeeded = antennas, PassesNeeded = passes, EpcOnlyAccepted = epcOnly };

    private static Gen<FindingPolicy> Findings() =>
        from tags in Gen.Choose(2, 1000)
        from lines in Gen.Choose(2, 1000)
        from decibels in Gen.Choose(1, 60)
        from brief in Gen.Choose(0, 600)
        from nearMisses in Gen.Choose(0, 1000)
        from fading in Gen.Choose(1, 1000).Two()
        select new FindingPolicy
        {
            PassingTagsNeeded = tags,
            SharedCauseLinesNeeded = lines,
            AttenuationDecibels = decibels,
            BriefSpanMax = TimeSpan.FromSeconds(brief),
            NearMissTagsMax = nearMisses,
            FadingMissSteps = fading.Item1,
            FadingLimit = fading.Item2,
        };

    private static Gen<SiteCalendar> Calendars() =>
        from name in GeneratedValues.Text(20)
        from minutes in Gen.Choose(-840, 840)
        from times in GeneratedValues.ListOf(GeneratedValues.Times(), 5)
        from offsets in Gen.Choose(-840, 840).ArrayOf(5)
        select new SiteCalendar(name, TimeSpan.FromMinutes(minutes), times.DistinctBy(static time => time.UtcTicks).OrderBy(static time => time.UtcTicks)
            .Select((time, index) => new OffsetChange(time, TimeSpan.FromMinutes(offsets[index]))));
}
