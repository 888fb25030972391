using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Custody;

public sealed partial record CustodyPolicy
{
    private static readonly TimeSpan ShortestAge = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan LongestAge = TimeSpan.FromDays(366);

    /// <summary>Reads the part of a site policy; what is absent has its default value, everything wrong becomes an issue.</summary>
    internal static CustodyPolicy FromJson(JsonElement element, string place, IssueList issues)
    {
        var fields = new JsonFields(element, place, issues);
        var policy = new CustodyPolicy
        {
            ToolRoom = new Place(fields.Text("toolRoom", Default.ToolRoom.Value, IdText.MaxLength)!),
            SamePersonMayTakeBack = fields.Flag("samePersonMayTakeBack", Default.SamePersonMayTakeBack),
            SinglePersonWithWitness = fields.Flag("singlePersonWithWitness", Default.SinglePersonWithWitness),
            JointInventoryNeeded = fields.Flag("jointInventoryNeeded", Default.JointInventoryNeeded),
            JointInventoryAgeMax = fields.Seconds("jointInventoryAgeMaxSeconds", Default.JointInventoryAgeMax, ShortestAge, LongestAge),
            LoanFromIssuedKitAllowed = fields.Flag("loanFromIssuedKitAllowed", Default.LoanFromIssuedKitAllowed),
            LoanDueNeeded = fields.Flag("loanDueNeeded", Default.LoanDueNeeded),
            KitMayCloseWithOpenReceipt = fields.Flag("kitMayCloseWithOpenReceipt", Default.KitMayCloseWithOpenReceipt),
            ChitsAccepted = fields.Flag("chitsAccepted", Default.ChitsAccepted),
            PersonalTools = fields.Word("personalTools", Default.PersonalTools,
                ("forbidden", PersonalToolRule.Forbidden), ("registered-only", PersonalToolRule.RegisteredOnly), ("allowed", PersonalToolRule.Allowed)),
            ExpectedReturnNeeded = fields.Flag("expectedReturnNeeded", Default.ExpectedReturnNeeded),
            IssueInventoryAgeMax = fields.Seconds("issueInventoryAgeMaxSeconds", Default.IssueInventoryAgeMax, ShortestAge, LongestAge),
            RolesThatMayIssue = Roles(fields, "rolesThatMayIssue"),
            RolesThatMayReceive = Roles(fields, "rolesThatMayReceive"),
            RolesThatMayKeepZoneLogs = Roles(fields, "rolesThatMayKeepZoneLogs"),
            Roster = RoleRoster.FromJson(fields, "roster"),
        };
        fields.End();
        return policy;
    }

    /// <summary>Writes every setting, default or not, so that a stored policy says all of it.</summary>
    internal void WriteJson(Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        writer.WriteString("toolRoom", ToolRoom.Value);
        writer.WriteBoolean("samePersonMayTakeBack", SamePersonMayTakeBack);
        writer.WriteBoolean("singlePersonWithWitness", SinglePersonWithWitness);
        writer.WriteBoolean("jointInventoryNeeded", JointInventoryNeeded);
        writer.WriteNumber("jointInventoryAgeMaxSeconds", JsonFields.ToSeconds(JointInventoryAgeMax));
        writer.WriteBoolean("loanFromIssuedKitAllowed", LoanFromIssuedKitAllowed);
        writer.WriteBoolean("loanDueNeeded", LoanDueNeeded);
        writer.WriteBoolean("kitMayCloseWithOpenReceipt", KitMayCloseWithOpenReceipt);
        writer.WriteBoolean("chitsAccepted", ChitsAccepted);
        writer.WriteString("personalTools", PersonalTools switch
        {
            PersonalToolRule.Forbidden => "forbidden",
            PersonalToolRule.Allowed => "allowed",
            _ => "registered-only",
        });
        writer.WriteBoolean("expectedReturnNeeded", ExpectedReturnNeeded);
        writer.WriteNumber("issueInventoryAgeMaxSeconds", JsonFields.ToSeconds(IssueInventoryAgeMax));
        WriteRoles(writer, "rolesThatMayIssue", RolesThatMayIssue);
        WriteRoles(writer, "rolesThatMayReceive", RolesThatMayReceive);
        WriteRoles(writer, "rolesThatMayKeepZoneLogs", RolesThatMayKeepZoneLogs);
        Roster.WriteJson(writer, "roster");
        writer.WriteEndObject();
    }

    internal static Role[] Roles(JsonFields fields, string name) => [.. fields.Texts(name, MaxListCount, IdText.MaxLength).Select(static text => new Role(text))];

    internal static void WriteRoles(Utf8JsonWriter writer, string name, IReadOnlyList<Role> roles)
    {
        writer.WriteStartArray(name);
        foreach (Role role in roles)
        {
            writer.WriteStringValue(role.Value);
        }

        writer.WriteEndArray();
    }
}
