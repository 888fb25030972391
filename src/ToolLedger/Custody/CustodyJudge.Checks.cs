using System;
using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Custody;

internal sealed partial class CustodyJudge
{
    /// <summary>The receiver signed, and no later than the entry says it happened.</summary>
    private void CheckReceived(CustodyEntry entry, Signature? receiver, string member = "receivedBy")
    {
        if (receiver is null)
        {
            Report(member, CustodyRules.NotReceived);
        }
        else if (receiver.At > entry.At)
        {
            Report(member, CustodyRules.SignedLater,
                ("person", receiver.By.Value), ("signed", RecordTime.ToText(receiver.At)), ("at", RecordTime.ToText(entry.At)));
        }
    }

    /// <summary>Two different persons, or one with a witness where the site has a procedure for that.</summary>
    private void CheckTwoSides(CustodyEntry entry, PersonId giver, Signature? receiver)
    {
        if (receiver is not null && PersonCount.AreSame(giver, receiver.By) && !IsWitnessed(entry, giver))
        {
            Report("receivedBy", CustodyRules.SamePerson, ("person", giver.Value));
        }

        if (receiver is not null)
        {
            CheckEntitled("receivedBy", receiver, policy.RolesThatMayReceive);
        }
    }

    /// <summary>Who signed it out may not sign it in.</summary>
    private void CheckTakesBack(CustodyEntry entry, PersonId accepts, IReadOnlyList<PersonId> users)
    {
        foreach (PersonId user in policy.SamePersonMayTakeBack ? [] : users)
        {
            if (PersonCount.AreSame(user, accepts) && !IsWitnessed(entry, accepts))
            {
                Report("acceptedBy", CustodyRules.SignedItOut, ("person", accepts.Value));
                return;
            }
        }
    }

    private bool IsWitnessed(CustodyEntry entry, PersonId person) =>
        policy.SinglePersonWithWitness && !entry.Witness.IsEmpty && !PersonCount.AreSame(entry.Witness, person);

    private void CheckEntitled(string member, Signature signature, IReadOnlyList<Role> roles)
    {
        if (!policy.Roster.IsEntitled(signature, roles))
        {
            Report(member, CustodyRules.NotEntitled,
                ("person", signature.By.Value), ("role", signature.Role.Value), ("at", RecordTime.ToText(signature.At)));
        }
    }

    private void CheckDue(CustodyEntry entry, string member, DateTimeOffset? due, bool isNeeded)
    {
        if (due is null && isNeeded)
        {
            Report(member, CustodyRules.NoExpectedReturn);
        }
        else if (due <= entry.At)
        {
            Report(member, CustodyRules.DueBefore, ("due", RecordTime.ToText(due.Value)));
        }
    }
}
