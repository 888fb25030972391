using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
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
        foreach ((string what, ReconciliationCase doubted) in Doubted(trial))
        {
            // Nothing was taken away, so that what speaks against a line stands, and no line is passed over.
            answer = Compare(trial.Result, trial.Ask(doubted), what, isAllKept: true, isOpened: false);
            if (answer.IsBroken)
            {
                return answer;
            }
        }

        foreach ((string what, ReconciliationCase less) in Less(trial))
        {
            // After an opening only what was said since counts together, and before it only what was said then: who needs whom is no question of more or less.
            bool isOpened = trial.Case.Entries.Openings.Any(opening => opening.At <= trial.Case.AsOf) && less.Entries != trial.Case.Entries;
            answer = Compare(trial.Result, trial.Ask(less), what, isAllKept: false, isOpened);
            if (answer.IsBroken)
            {
                return answer;
            }
        }

        return answer;
    }

    private static LawAnswer Compare(ReconciliationResult before, ReconciliationResult after, string what, bool isAllKept, bool isOpened)
    {
        bool isAnyHigher = false;
        foreach ((LineConclusion old, LineConclusion now) in before.AllLines.Join(after.AllLines, KeyOf, KeyOf, static (old, now) => (old, now)))
        {
            bool isHigher = now.IsAccounted && !old.IsAccounted;
            isAnyHigher |= isHigher;
            if (isHigher && (isAllKept || !LineDoubt.IsIn(old)))
            {
                return LawAnswer.Changed($"{what}: still {old}", ResultText.Line(old), ResultText.Line(now));
            }
        }

        return !isAnyHigher && !isOpened && after.Kit.State == KitState.Complete && before.Kit.State != KitState.Complete
            ? LawAnswer.Changed($"{what}: the kit is not complete, as before", ResultText.Kit(before), ResultText.Kit(after))
            : LawAnswer.Holds;
    }

    private static (string Label, ToolId? Tool) KeyOf(LineConclusion line) => (line.Label, line.Line.Tool?.Id);

    /// <summary>Whether a line rests on the number that the list says and on nothing that changes it, so that a count of that number supports it.</summary>
    private static bool IsPlain(LineConclusion line) => line.Evidence is { KnownShort: 0, Balance: null or { JobCount: 0 } };

    /// <summary>The case with all it has, of which one piece is worth less: a session of the kit or of another, a tag, the seals.</summary>
    private static IEnumerable<(string What, ReconciliationCase Doubted)> Doubted(LawTrial trial)
    {
        SessionCase[] presented = Presented(trial);
        if (presented.Length > 0)
        {
            SessionCase session = trial.Pick(presented);
            foreach ((string what, SessionCase worse) in Worse(session, trial))
            {
                yield return (what, trial.With(session, worse));
            }
        }

        SessionCase[] others = [.. trial.Case.Sessions.Except(presented)];
        if (others.Length > 0)
        {
            SessionCase session = trial.Pick(others);
            (string what, SessionCase worse) = trial.Pick([.. Worse(session, trial)]);
            yield return (what, trial.With(session, worse));
        }

        TagBinding[] trusted = [.. trial.Case.Bindings.Where(binding => binding.From <= trial.Case.AsOf && !trial.Case.Quarantines.Any(doubt => doubt.Tag == binding.Tag && doubt.Tool == binding.Tool))];
        if (trusted.Length > 0)
        {
            TagBinding binding = trial.Pick(trusted);
            var doubt = new BindingQuarantine { Tag = binding.Tag, Tool = binding.Tool, From = binding.From, By = binding.BoundBy, Reason = "mark and tag differ" };
            yield return ($"tag {binding.Tag} on {binding.Tool} in quarantine", trial.Case with { Quarantines = [.. trial.Case.Quarantines, doubt] });
        }

        if (trial.Case.Entries.SealChecks.Count > 0)
        {
            SealCheck check = trial.Pick(trial.Case.Entries.SealChecks);
            var broken = new SealCheck { Kit = check.Kit, NumberRead = check.NumberRead, IsIntact = false, By = check.By, At = check.At };
            InventoryEntries covered = Covered(trial);
            yield return ($"the seal of {check.Kit} seen broken by {check.By}", trial.Case with { Entries = covered with { SealChecks = [.. covered.SealChecks.Select(one => one == check ? broken : one)] } });
        }
    }

    private static SessionCase[] Presented(LawTrial trial) => [.. trial.Case.Sessions.Where(session => session.Kits.Contains(trial.Case.Subject))];

    /// <summary>A signature covers what it was made after: only those that covered the sheet before may cover it now.</summary>
    private static InventoryEntries Covered(LawTrial trial) => trial.Case.Entries with { Signatures = trial.Result.Signatures };

    /// <summary>The case with less to support it, one piece at a time.</summary>
    private static IEnumerable<(string What, ReconciliationCase Less)> Less(LawTrial trial)
    {
        SessionCase[] presented = Presented(trial);
        if (presented.Length > 0)
        {
            SessionCase session = trial.Pick(presented);
            AntennaPort antenna = trial.Pick(session.Station.Antennas);
            yield return ($"without reads on antenna {antenna} in {session.Id}", trial.With(session, Drop(session, read => read.Antenna == antenna)));
            if (session.PassStarts.Count > 0)
            {
                int pass = trial.Chance.Below(session.PassStarts.Count + 1);
                yield return (FormattableString.Invariant($"without reads of pass {pass + 1} of {session.Id}"), trial.With(session, Drop(session, read => PassOf(session, read) == pass)));
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
        yield return ($"without reads of line {line.Line.Number}", trial.Case with
        {
            Sessions = [.. trial.Case.Sessions.Select(session => session.Kits.Contains(trial.Case.Subject) ? Drop(session, read => tags.Contains(read.Tag) && trial.Chance.Chance(share)) : session)],
        });

        InventoryEntries covered = Covered(trial);
        foreach (Sighting sighting in covered.Sightings.Where(sighting => sighting.Tool == tool && sighting.At == line.Evidence.At && sighting.By == line.Evidence.By && IsSupport(line, sighting)))
        {
            yield return ($"without the sighting of {tool}", trial.Case with { Entries = covered with { Sightings = [.. covered.Sightings.Where(other => other != sighting)] } });
            if (!sighting.Witness.IsEmpty)
            {
                yield return ($"without the witness of the sighting of {tool}", trial.Case with { Entries = covered with { Sightings = [.. covered.Sightings.Select(other => other == sighting ? Alone(sighting) : other)] } });
            }
        }

        foreach (LineCount count in covered.Counts.Where(count => count.Kit == trial.Case.Subject && count.LineNumber == line.Line.Number && count.Quantity == line.Line.Expected && count.Parts == 0 && IsPlain(line)))
        {
            string what = $"the count of line {count.LineNumber} by {count.By}";
            yield return ("without " + what, trial.Case with { Entries = covered with { Counts = [.. covered.Counts.Where(other => other != count)] } });
            yield return ("with one more in " + what, trial.Case with { Entries = covered with { Counts = [.. covered.Counts.Select(other => other == count ? Counted(count, 1, count.Witness) : other)] } });
            if (!count.Witness.IsEmpty)
            {
                yield return ("without the witness of " + what, trial.Case with { Entries = covered with { Counts = [.. covered.Counts.Select(other => other == count ? Counted(count, 0, default) : other)] } });
            }
        }

        // Of a tool that broke the number on the list is one of several, and a count of it may speak against another.
        bool isWhole = !covered.Breakages.Any(breakage => breakage.Tool == tool) && !covered.Reconstructions.Any(decided => decided.Tool == tool);
        foreach (PieceCount pieces in covered.PieceCounts.Where(pieces => isWhole && pieces.Tool == tool && pieces.Pieces == line.Line.Tool?.PieceCount))
        {
            yield return ($"without the piece count of {tool} by {pieces.By}", trial.Case with { Entries = covered with { PieceCounts = [.. covered.PieceCounts.Where(other => other != pieces)] } });
        }
    }

    /// <summary>A sighting that names no kit supports a line only where the line rests on it.</summary>
    private static bool IsSupport(LineConclusion line, Sighting sighting)
        => !sighting.InKit.IsEmpty || line.Basis == AccountingBasis.Sighted || line.OtherBases.Contains(AccountingBasis.Sighted);

    private static IEnumerable<(string What, SessionCase Worse)> Worse(SessionCase session, LawTrial trial)
    {
        AntennaPort antenna = trial.Pick(session.Station.Antennas);
        yield return ($"without antenna {antenna} in {session.Id}", session with { Losses = [.. session.Losses, new ReportedLoss(SessionLoss.AntennaDisconnected, session.From, antenna)] });

        // One that is bound to a tool may say where the tool was.
        bool IsControl(TagId tag) => session.Station.ControlTags.Any(control => control.Tag == tag) && !trial.Case.Bindings.Any(binding => binding.Tag == tag);
        yield return ($"without control reads on antenna {antenna} in {session.Id}", Drop(session, read => read.Antenna == antenna && IsControl(read.Tag)));
        yield return ($"without a clock check after {session.Id}", session with { ClockOffsetAfter = null });
    }

    private static int PassOf(SessionCase session, TagRead read) => session.PassStarts.Count(start => start <= read.FirstSeen - session.ClockOffset.GetValueOrDefault());

    private static Sighting Alone(Sighting sighting) => new()
    {
        Tool = sighting.Tool,
        MarkRead = sighting.MarkRead,
        AlsoIdentifiedBy = sighting.AlsoIdentifiedBy,
        By = sighting.By,
        At = sighting.At,
        Where = sighting.Where,
        InKit = sighting.InKit,
    };

    private static LineCount Counted(LineCount count, int more, PersonId witness) => new()
    {
        Kit = count.Kit,
        LineNumber = count.LineNumber,
        Quantity = new Quantity(count.Quantity.Amount + more, count.Quantity.Unit),
        Parts = count.Parts,
        By = count.By,
        At = count.At,
        Witness = witness,
    };

    private static SessionCase Drop(SessionCase session, Func<TagRead, bool> isDropped) => session with { Reads = [.. session.Reads.Where(read => !isDropped(read))] };
}
