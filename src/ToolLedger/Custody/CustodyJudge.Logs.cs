using System.Globalization;
using ToolLedger.Records;

namespace ToolLedger.Custody;

internal sealed partial class CustodyJudge
{
    private void ApplyLog(CustodyEntry entry)
    {
        switch (entry)
        {
            case JobVisit visit when CheckEnd(visit.At, visit.Until):
                state.Add(visit);
                break;
            case JobDeparture departure:
                Apply(departure);
                break;
            case ToolUse use:
                Apply(use);
                break;
            case ZoneEntry zoneEntry:
                CheckEntitled("by", zoneEntry.SignedBy, policy.RolesThatMayKeepZoneLogs);
                if (issues.Reported == 0)
                {
                    state.Add(zoneEntry);
                }

                break;
            case ZoneClosing closing:
                Apply(closing);
                break;
            case PersonalItem item:
                Apply(item);
                break;
            case ToolRoomInventory inventory:
                Apply(inventory);
                break;
            case DispatchNote note:
                state.Add(note);
                break;
        }
    }

    private void Apply(JobDeparture departure)
    {
        if (state.FindVisit(departure.Visit) is { Departure: null, Visit.Until: null } visit && visit.Visit.At <= departure.At)
        {
            state.End(departure);
        }
        else
        {
            Report("visit", CustodyRules.NoOpenVisit, ("visit", departure.Visit.Value));
        }
    }

    private void Apply(ToolUse use)
    {
        if (use.Value is null != use.Unit.IsEmpty)
        {
            Report("unit", CustodyRules.ValueWithoutUnit);
        }

        if (CheckEnd(use.At, use.Until) && issues.Reported == 0)
        {
            state.Add(use);
        }
    }

    private void Apply(ZoneClosing closing)
    {
        CheckEntitled("by", closing.SignedBy, policy.RolesThatMayKeepZoneLogs);
        foreach (ZoneBalance balance in state.BalanceOf(closing.Zone, closing.At))
        {
            if (!balance.IsBalanced)
            {
                Report("zone", CustodyRules.ZoneNotBalanced, ("zone", closing.Zone.Value), ("item", balance.Item),
                    ("in", balance.In.ToString(CultureInfo.InvariantCulture)), ("out", balance.Out.ToString(CultureInfo.InvariantCulture)));
            }
        }

        if (issues.Reported == 0)
        {
            state.Add(closing);
        }
    }

    private void Apply(PersonalItem item)
    {
        bool isAllowed = !item.IsTool || item.Direction == CarriedDirection.Out || policy.PersonalTools switch
        {
            PersonalToolRule.Forbidden => false,
            PersonalToolRule.RegisteredOnly => item.IsRegistered,
            _ => true,
        };
        if (isAllowed)
        {
            state.Add(item);
        }
        else
        {
            Report("isTool", CustodyRules.PersonalToolNotAllowed);
        }
    }

    private void Apply(ToolRoomInventory inventory)
    {
        CheckReceived(inventory, inventory.IncomingBy, "incomingBy");
        if (inventory.IncomingBy is { } incoming && PersonCount.AreSame(incoming.By, inventory.By))
        {
            Report("incomingBy", CustodyRules.SamePerson, ("person", incoming.By.Value));
        }

        if (issues.Reported == 0)
        {
            state.Add(inventory);
        }
    }

    private bool CheckEnd(System.DateTimeOffset from, System.DateTimeOffset? until)
    {
        if (until < from)
        {
            Report("until", CustodyRules.EndBefore, ("until", RecordTime.ToText(until.Value)));
        }

        return !(until < from);
    }
}
