using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Records;

namespace ToolLedger.Holds;

/// <summary>Brings together what there is to say of a hold at an instant.</summary>
internal static class HoldAssessment
{
    internal static HoldStatus Of(HeldItem item, HoldPolicy policy, ExposureMap map, DateTimeOffset asOf)
    {
        MissingDeclaration declaration = item.Declaration;
        Exposure exposure = ExposureOf(declaration, map);
        HoldNotification[] told = [.. item.Notifications.Where(one => one.At <= asOf)];
        HoldNarrowing[] narrowings = [.. item.Narrowings.Where(one => one.At <= asOf)];
        return new HoldStatus
        {
            Declaration = declaration,
            AsOf = asOf,
            IsImpound = item.IsImpoundAt(asOf),
            Release = item.ReleaseAt(asOf),
            Found = item.FoundAt(asOf),
            Exposure = exposure,
            Affected = AffectedOf(item, exposure, narrowings, asOf),
            Narrowings = narrowings,
            NotTold = [.. policy.NotificationsNeeded.Where(who => !Array.Exists(told, one => string.Equals(one.Told, who, StringComparison.Ordinal) && !(one.At < item.FoundAt(asOf)?.At)))],
            NotSearched = [.. policy.SearchStepsNeeded.Where(step => !item.Steps.Exists(made => made.At <= asOf && string.Equals(made.Step, step, StringComparison.Ordinal)))],
            Steps = [.. item.Steps.Where(step => step.At <= asOf)],
            Discontinued = item.Discontinuations.FindLast(one => one.At <= asOf),
            Late = [.. LateOf(item, policy, exposure, told, asOf)],
        };
    }

    /// <summary>What the thing could be in when it was declared. A thing on no list is looked for where its kit was since it was last seen.</summary>
    private static Exposure ExposureOf(MissingDeclaration declaration, ExposureMap map)
    {
        DateTimeOffset at = declaration.At;
        if (!declaration.Tool.IsEmpty)
        {
            return map.Of(declaration.Tool, at);
        }

        if (declaration is { Kit.IsEmpty: false, LineNumber: { } line })
        {
            return map.Of(declaration.Kit, line.ToString(System.Globalization.CultureInfo.InvariantCulture), at);
        }

        return new Exposure(at, declaration.LastSeenAt, declaration.Kit.IsEmpty ? [] : [.. ExposureTrail.OfKit(map.Custody, declaration.Kit, declaration.LastSeenAt, at)]);
    }

    private static AffectedThing[] AffectedOf(HeldItem item, Exposure exposure, HoldNarrowing[] narrowings, DateTimeOffset asOf)
    {
        IEnumerable<AffectedThing> said = item.Declaration.TouchedSince;
        if (!item.Declaration.LastSeenWhere.IsEmpty)
        {
            said = said.Append(new AffectedThing(default, default, item.Declaration.LastSeenWhere));
        }

        return [.. exposure.Things
            .Concat(said)
            .Concat(item.Placements.Where(placement => placement.At <= asOf).SelectMany(static placement => placement.Affected))
            .Distinct()
            .Where(thing => !Array.Exists(narrowings, narrowing => IsLeftOut(item, narrowing, thing)))];
    }

    /// <summary>A decision takes away what it names, unless a person named that again after it.</summary>
    private static bool IsLeftOut(HeldItem item, HoldNarrowing narrowing, AffectedThing thing) => narrowing.NotAffected.Any(one => one.Covers(thing))
        && !item.Placements.Exists(placement => placement.At > narrowing.At && placement.Affected.Contains(thing));

    private static IEnumerable<Reason> LateOf(HeldItem item, HoldPolicy policy, Exposure exposure, HoldNotification[] told, DateTimeOffset asOf)
    {
        DateTimeOffset declared = item.Declaration.At;
        if (policy.NotificationTimeMax is { } limit)
        {
            foreach (string who in policy.NotificationsNeeded)
            {
                DateTimeOffset first = Array.Find(told, one => string.Equals(one.Told, who, StringComparison.Ordinal))?.At ?? asOf;
                if (first - declared > limit)
                {
                    yield return new Reason(HoldRules.LateNotification, ("who", who), ("limit", ElapsedText.Of(limit)));
                }
            }
        }

        TimeSpan stood = (item.ReleaseAt(asOf)?.At ?? asOf) - declared;
        if (stood > policy.HoldTimeMax)
        {
            yield return new Reason(HoldRules.LateHold, ("elapsed", ElapsedText.Of(stood)), ("limit", ElapsedText.Of(policy.HoldTimeMax.Value)));
        }

        if (declared - exposure.Since is { } elapsed && elapsed > policy.DeclarationTimeMax)
        {
            yield return new Reason(HoldRules.LateDeclaration, ("elapsed", ElapsedText.Of(elapsed)), ("limit", ElapsedText.Of(policy.DeclarationTimeMax.Value)));
        }
    }
}
