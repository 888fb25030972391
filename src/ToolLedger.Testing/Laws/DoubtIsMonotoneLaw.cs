using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Testing.Cases;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Laws;

/// <inheritdoc cref="ReconciliationLaw.DoubtIsMonotone"/>
internal sealed class DoubtIsMonotoneLaw : Law
{
    public override ReconciliationLaw Kind => ReconciliationLaw.DoubtIsMonotone;

    public override LawAnswer Try(LawTrial trial)
    {
        LawAnswer answer = LawAnswer.Silent;
        foreach ((string what, ReconciliationCase less) in Less(trial))
        {
            // After an opening only what was said since counts together, and before it only what was said then: who needs whom is no question of more or less.
            bool isOpened = trial.Case.Entries.Openings.Any(opening => opening.At <= trial.Case.AsOf) && less.Entries != trial.Case.Entries;
            answer = Compare(trial.Result, trial.Ask(less), what, isOpened);
            if (answer.IsBroken)
            {
                break;
            }
        }

        return answer;
    }

    private static LawAnswer Compare(ReconciliationResult before, ReconciliationResult after, string what, bool isOpened)
    {
        bool isAnyHigher = false;
        foreach ((LineConclusion old, LineConclusion now) in before.AllLines.Join(after.AllLines, KeyOf, KeyOf, static (old, now) => (old, now)))
        {
            bool isHigher = now.IsAccounted && !old.IsAccounted;
            isAnyHigher |= isHigher;
            if (isHigher && !LineDoubt.IsIn(old))
            {
                return LawAnswer.Changed($"without {what} still {old}", ResultText.Line(old), ResultText.Line(now));
            }
        }

        return !isAnyHigher && !isOpened && after.Kit.State == KitState.Complete && before.Kit.State != KitState.Complete
            ? LawAnswer.Changed($"without {what} the kit is not complete, as before", ResultText.Kit(before), ResultText.Kit(after))
            : LawAnswer.Holds;
    }

    private static (string Label, ToolId? Tool) KeyOf(LineConclusion line) => (line.Label, line.Line.Tool?.Id);

    /// <summary>Whether a line rests on the number that the list says and on nothing that changes it, so that a count of that number supports it.</summary>
    private static bool IsPlain(LineConclusion line) => line.Evidence is { KnownShort: 0, Balance: null or { JobCount: 0 } };

    /// <summary>The case with less to support it, one piece at a time.</summary>
    private static IEnumerable<(string What, ReconciliationCase Less)> Less(LawTrial trial)
    {
        SessionCase[] presented = [.. trial.Case.Sessions.Where(session => session.Kits.Contains(trial.Case.Subject))];
        if (presented.Length > 0)
        {
            SessionCase session = trial.Pick(presented);
            foreach ((string what, SessionCase worse) in Worse(session, trial))
            {
                yield return (what, trial.With(session, worse));
            }
        }

        LineConclusion[] lines = [.. trial.Result.Lines.Where(static line => !LineDoubt.IsIn(line))];
        if (lines.Length == 0)
        {
            yield break;
        }

        LineConclusion line = trial.Pick(lines);
        ToolId? tool = line.Line.Tool?.Id;
        var tags = trial.Case.Bindings.Where(binding => binding.Tool == tool).Select(static binding => binding.Tag).ToHashSet();
        double share = trial.Chance.Chance(0.5) ? 1 : 0.5;
        yield return ($"reads of line {line.Line.Number}", trial.Case with
        {
            Sessions = [.. trial.Case.Sessions.Select(session => session.Kits.Contains(trial.Case.Subject) ? Drop(session, read => tags.Contains(read.Tag) && trial.Chance.Chance(share)) : session)],
        });

        // A signature covers what it was made after: only those that covered the sheet before may cover it now.
        InventoryEntries covered = trial.Case.Entries with { Signatures = trial.Result.Signatures };
        foreach (Sighting sighting in covered.Sightings.Where(sighting => sighting.Tool == tool && sighting.At == line.Evidence.At && sighting.By == line.Evidence.By && IsSupport(line, sighting)))
        {
            yield return ($"the sighting of {tool}", trial.Case with { Entries = covered with { Sightings = [.. covered.Sightings.Where(other => other != sighting)] } });
        }

        foreach (LineCount count in covered.Counts.Where(count => count.Kit == trial.Case.Subject && count.LineNumber == line.Line.Number && count.Quantity == line.Line.Expected && count.Parts == 0 && IsPlain(line)))
        {
            yield return ($"the count of line {count.LineNumber} by {count.By}", trial.Case with { Entries = covered with { Counts = [.. covered.Counts.Where(other => other != count)] } });
        }

        foreach (PieceCount pieces in covered.PieceCounts.Where(pieces => pieces.Tool == tool && pieces.Pieces == line.Line.Tool?.PieceCount))
        {
            yield return ($"the piece count of {tool} by {pieces.By}", trial.Case with { Entries = covered with { PieceCounts = [.. covered.PieceCounts.Where(other => other != pieces)] } });
        }
    }

    /// <summary>A sighting that names no kit supports a line only where the line rests on it.</summary>
    private static bool IsSupport(LineConclusion line, Sighting sighting)
        => !sighting.InKit.IsEmpty || line.Basis == AccountingBasis.Sighted || line.OtherBases.Contains(AccountingBasis.Sighted);

    private static IEnumerable<(string What, SessionCase Worse)> Worse(SessionCase session, LawTrial trial)
    {
        AntennaPort antenna = trial.Pick(session.Station.Antennas);
        yield return ($"antenna {antenna} in {session.Id}", session with { Losses = [.. session.Losses, new ReportedLoss(SessionLoss.AntennaDisconnected, session.From, antenna)] });
        yield return ($"control reads on antenna {antenna} in {session.Id}", Drop(session, read => read.Antenna == antenna && session.Station.ControlTags.Any(control => control.Tag == read.Tag)));
        yield return ($"a clock check after {session.Id}", session with { ClockOffsetAfter = null });
    }

    private static SessionCase Drop(SessionCase session, Func<TagRead, bool> isDropped) => session with { Reads = [.. session.Reads.Where(read => !isDropped(read))] };
}
