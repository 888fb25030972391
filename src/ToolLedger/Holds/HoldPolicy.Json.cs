using System;
using System.Collections.Generic;
using System.Text.Json;
using ToolLedger.Custody;
using ToolLedger.Records;

namespace ToolLedger.Holds;

public sealed partial record HoldPolicy
{
    private static readonly TimeSpan ShortestTime = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan LongestTime = TimeSpan.FromDays(366);

    /// <summary>Reads the part of a site policy; what is absent has its default value, everything wrong becomes an issue.</summary>
    internal static HoldPolicy FromJson(JsonElement element, string place, IssueList issues)
    {
        var fields = new JsonFields(element, place, issues);
        var policy = new HoldPolicy
        {
            RolesThatMayRelease = Roles(fields, "rolesThatMayRelease", Default.RolesThatMayRelease),
            RolesThatMayReleaseNotFound = Roles(fields, "rolesThatMayReleaseNotFound", Default.RolesThatMayReleaseNotFound),
            RolesThatMayReleaseImpound = Roles(fields, "rolesThatMayReleaseImpound", Default.RolesThatMayReleaseImpound),
            RolesThatMayDecide = Roles(fields, "rolesThatMayDecide", Default.RolesThatMayDecide),
            DeclarerMayRelease = fields.Flag("declarerMayRelease", Default.DeclarerMayRelease),
            FoundMarkNeeded = fields.Flag("foundMarkNeeded", Default.FoundMarkNeeded),
            SightingEndsExposureOnly = fields.Flag("sightingEndsExposureOnly", Default.SightingEndsExposureOnly),
            NotificationsNeeded = fields.Texts("notificationsNeeded", MaxListCount, IdText.MaxLength),
            SearchStepsNeeded = fields.Texts("searchStepsNeeded", MaxListCount, IdText.MaxLength),
            NotificationTimeMax = fields.OptionalSeconds("notificationTimeMaxSeconds", ShortestTime, LongestTime),
            HoldTimeMax = fields.OptionalSeconds("holdTimeMaxSeconds", ShortestTime, LongestTime),
            DeclarationTimeMax = fields.OptionalSeconds("declarationTimeMaxSeconds", ShortestTime, LongestTime),
        };
        fields.End();
        return policy;
    }

    /// <summary>Writes every setting, default or not, so that a stored policy says all of it; a limit that is not set is left out.</summary>
    internal void WriteJson(Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        CustodyPolicy.WriteRoles(writer, "rolesThatMayRelease", RolesThatMayRelease);
        CustodyPolicy.WriteRoles(writer, "rolesThatMayReleaseNotFound", RolesThatMayReleaseNotFound);
        CustodyPolicy.WriteRoles(writer, "rolesThatMayReleaseImpound", RolesThatMayReleaseImpound);
        CustodyPolicy.WriteRoles(writer, "rolesThatMayDecide", RolesThatMayDecide);
        writer.WriteBoolean("declarerMayRelease", DeclarerMayRelease);
        writer.WriteBoolean("foundMarkNeeded", FoundMarkNeeded);
        writer.WriteBoolean("sightingEndsExposureOnly", SightingEndsExposureOnly);
        WriteAll(writer, "notificationsNeeded", NotificationsNeeded);
        WriteAll(writer, "searchStepsNeeded", SearchStepsNeeded);
        WriteLimit(writer, "notificationTimeMaxSeconds", NotificationTimeMax);
        WriteLimit(writer, "holdTimeMaxSeconds", HoldTimeMax);
        WriteLimit(writer, "declarationTimeMaxSeconds", DeclarationTimeMax);
        writer.WriteEndObject();
    }

    private static void WriteAll(Utf8JsonWriter writer, string name, IReadOnlyList<string> texts)
    {
        writer.WriteStartArray(name);
        foreach (string text in texts)
        {
            writer.WriteStringValue(text);
        }

        writer.WriteEndArray();
    }

    private static void WriteLimit(Utf8JsonWriter writer, string name, TimeSpan? limit)
    {
        if (limit is { } time)
        {
            writer.WriteNumber(name, JsonFields.ToSeconds(time));
        }
    }

    private static IReadOnlyList<Role> Roles(JsonFields fields, string name, IReadOnlyList<Role> fallback)
    {
        if (!fields.IsThere(name))
        {
            return fallback;
        }

        Role[] roles = CustodyPolicy.Roles(fields, name);
        if (roles.Length == 0)
        {
            fields.Report(name, new Reason(RecordRules.OutOfRange, ("range", "at least one role"), ("found", "none")));
        }

        return roles.Length == 0 ? fallback : roles;
    }
}
