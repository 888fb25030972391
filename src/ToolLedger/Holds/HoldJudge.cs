using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Holds;

/// <summary>Decides whether an entry about a hold may take effect after those before it, and lets it. What widens a hold is never refused; what narrows or ends one needs who may.</summary>
internal sealed class HoldJudge(HoldState state, HoldPolicy policy, RoleRoster roster, KitRegister kits)
{
    private IssueList issues = [];

    internal IReadOnlyList<RecordIssue> Apply(HoldEntry entry)
    {
        issues = [];
        switch (entry)
        {
            case MissingDeclaration declaration:
                Apply(declaration);
                break;
            case FoundDeclaration found:
                Apply(found);
                break;
            case FoundWithdrawal withdrawal:
                Apply(withdrawal);
                break;
            case DropRecord drop:
                state.Drops.Add(drop);
                state.Items.Add(drop.Id, drop);
                break;
            case ItemRecovery recovery:
                Apply(recovery);
                break;
            case HoldRelease release:
                Apply(release);
                break;
            default:
                ApplyToHold(entry);
                break;
        }

        return issues;
    }

    private void Apply(MissingDeclaration declaration)
    {
        CheckSeen(declaration, declaration.LastSeenAt);
        if (issues.Reported == 0)
        {
            var item = new HeldItem(declaration);
            state.Holds.Add(declaration.Id, item);
            state.InOrder.Add(item);
        }
    }

    private void ApplyToHold(HoldEntry entry)
    {
        HeldItem? held = HeldOf(entry switch
        {
            HoldPlacement one => one.Hold,
            HoldNarrowing one => one.Hold,
            HoldNotification one => one.Hold,
            SearchStep one => one.Hold,
            SearchDiscontinuation one => one.Hold,
            LeftInPlace one => one.Hold,
            _ => default,
        }, entry);
        if (entry is HoldNarrowing or SearchDiscontinuation or LeftInPlace)
        {
            CheckEntitled(entry, policy.RolesThatMayDecide);
        }

        if (issues.Reported > 0 || held is null)
        {
            return;
        }

        switch (entry)
        {
            case HoldPlacement placement:
                held.Placements.Add(placement);
                break;
            case HoldNarrowing narrowing:
                held.Narrowings.Add(narrowing);
                break;
            case HoldNotification notification:
                held.Notifications.Add(notification);
                break;
            case SearchStep step:
                held.Steps.Add(step);
                break;
            case SearchDiscontinuation discontinuation:
                held.Discontinuations.Add(discontinuation);
                break;
            case LeftInPlace left:
                held.Left.Add(left);
                state.Items.Add(left.Id, left);
                break;
        }
    }

    private void Apply(FoundDeclaration found)
    {
        CheckSeen(found, found.LastSeenAt);
        HeldItem? held = found.Hold.IsEmpty ? null : HeldOf(found.Hold, found);
        if (held is { Declaration.Tool: { IsEmpty: false } missing } && missing != found.Tool)
        {
            Report("tool", HoldRules.OtherItem, ("hold", found.Hold.Value), ("tool", missing.Value), ("found", found.Tool.IsEmpty ? "no tool" : found.Tool.Value));
        }

        CheckMark(found);
        if (issues.Reported == 0)
        {
            state.Finds.Add(found.Id, found);
            held?.Finds.Add(found);
        }
    }

    private void CheckMark(FoundDeclaration found)
    {
        if (!policy.FoundMarkNeeded || found.Tool.IsEmpty || MarkOf(found.Tool, found.At) is not { } mark || string.Equals(mark, found.MarkRead, StringComparison.Ordinal))
        {
            return;
        }

        Report("markRead", HoldRules.OtherMark, ("tool", found.Tool.Value), ("mark", mark), ("read", found.MarkRead ?? "none"));
    }

    private string? MarkOf(ToolId tool, DateTimeOffset at) => kits.ManifestsWith(tool, at).Select(manifest => manifest.FindLine(tool)?.Tool?.Mark).FirstOrDefault(static mark => mark is not null);

    private void Apply(FoundWithdrawal withdrawal)
    {
        if (!state.Finds.TryGetValue(withdrawal.Found, out FoundDeclaration? found) || found.At > withdrawal.At || !state.Withdrawals.TryAdd(withdrawal.Found, withdrawal))
        {
            Report("found", HoldRules.NoFoundDeclaration, ("found", withdrawal.Found.Value));
            return;
        }

        if (state.Holds.TryGetValue(found.Hold, out HeldItem? held))
        {
            held.Withdrawals.Add(withdrawal.Found, withdrawal);
        }
    }

    private void Apply(ItemRecovery recovery)
    {
        if (!state.Items.TryGetValue(recovery.Item, out HoldEntry? item) || item.At > recovery.At || !state.Recoveries.TryAdd(recovery.Item, recovery))
        {
            Report("item", HoldRules.NoSuchItem, ("item", recovery.Item.Value));
        }
    }

    private void Apply(HoldRelease release)
    {
        if (HeldOf(release.Hold, release) is not { } held)
        {
            return;
        }

        CheckEntitled(release, release.Ground == ReleaseGround.Found ? policy.RolesThatMayRelease : policy.RolesThatMayReleaseNotFound);
        if (held.IsImpoundAt(release.At))
        {
            CheckEntitled(release, policy.RolesThatMayReleaseImpound);
        }

        if (!policy.DeclarerMayRelease && PersonCount.AreSame(release.By, held.Declaration.By))
        {
            Report("by", HoldRules.DeclaredIt, ("person", release.By.Value));
        }

        FoundDeclaration? found = held.FoundAt(release.At);
        CheckGround(release, held, found);
        CheckTold(release, held, found);
        if (issues.Reported == 0)
        {
            held.Releases.Add(release);
        }
    }

    private void CheckGround(HoldRelease release, HeldItem held, FoundDeclaration? found)
    {
        if (release.Ground == ReleaseGround.Found)
        {
            if (found is null)
            {
                Report("ground", HoldRules.NotFound);
            }

            return;
        }

        if (found is not null && release.Ground == ReleaseGround.NotFound)
        {
            Report("ground", HoldRules.IsFound, ("found", found.Id.Value));
        }

        if (release.Ground == ReleaseGround.NotFound && held.Discontinuations.Count == 0)
        {
            Report("ground", HoldRules.SearchGoesOn);
        }

        if (release.Ground == ReleaseGround.LeftInPlace && held.Left.Count == 0)
        {
            Report("ground", HoldRules.NothingLeft);
        }

        foreach (string step in release.Ground == ReleaseGround.DeclaredInError ? [] : policy.SearchStepsNeeded)
        {
            if (!held.Steps.Exists(made => string.Equals(made.Step, step, StringComparison.Ordinal)))
            {
                Report("hold", HoldRules.NotSearched, ("step", step));
            }
        }
    }

    private void CheckTold(HoldRelease release, HeldItem held, FoundDeclaration? found)
    {
        foreach (string who in policy.NotificationsNeeded)
        {
            HoldNotification? told = held.Notifications.FindLast(one => string.Equals(one.Told, who, StringComparison.Ordinal));
            if (told is null)
            {
                Report("hold", HoldRules.NotTold, ("who", who));
            }
            else if (release.Ground == ReleaseGround.Found && told.At < found?.At)
            {
                Report("hold", HoldRules.NotToldFound, ("who", who));
            }
        }
    }

    private HeldItem? HeldOf(EntryId hold, HoldEntry entry)
    {
        HeldItem? held = state.HeldAt(hold, entry.At);
        if (held is null)
        {
            Report("hold", HoldRules.NotHeld, ("hold", hold.Value));
        }

        return held;
    }

    private void CheckEntitled(HoldEntry entry, IReadOnlyList<Role> roles)
    {
        if (!roster.IsEntitled(entry.SignedBy, roles))
        {
            Report("role", HoldRules.NotEntitled, ("person", entry.By.Value), ("role", entry.Role.Value), ("at", RecordTime.ToText(entry.At)));
        }
    }

    private void CheckSeen(HoldEntry entry, DateTimeOffset? seen)
    {
        if (seen > entry.At)
        {
            Report("lastSeenAt", HoldRules.SeenLater, ("seen", RecordTime.ToText(seen.Value)));
        }
    }

    private void Report(string member, ReasonKind kind, params ReadOnlySpan<(string Name, string Value)> values) => issues.Report("$." + member, new Reason(kind, values));
}
