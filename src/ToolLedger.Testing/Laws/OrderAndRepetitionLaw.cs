using System.Linq;
using ToolLedger.Reads;
using ToolLedger.Testing.Cases;

namespace ToolLedger.Testing.Laws;

/// <inheritdoc cref="ReconciliationLaw.OrderAndRepetition"/>
internal sealed class OrderAndRepetitionLaw : Law
{
    public override ReconciliationLaw Kind => ReconciliationLaw.OrderAndRepetition;

    public override LawAnswer Try(LawTrial trial)
    {
        ReconciliationCase facts = trial.Case;
        ReconciliationCase shuffled = facts with
        {
            Sessions = trial.Shuffled(facts.Sessions.Select(session => Shuffle(session, trial))),
            Manifests = trial.Shuffled(facts.Manifests),
            Bindings = trial.Shuffled(facts.Bindings),
            Entries = facts.Entries with
            {
                Sightings = trial.Shuffled(facts.Entries.Sightings),
                Counts = trial.Shuffled(facts.Entries.Counts),
                PieceCounts = trial.Shuffled(facts.Entries.PieceCounts),
                Openings = trial.Shuffled(facts.Entries.Openings),
                Annotations = trial.Shuffled(facts.Entries.Annotations),
                Uses = trial.Shuffled(facts.Entries.Uses),
                Breakages = trial.Shuffled(facts.Entries.Breakages),
                Reconstructions = trial.Shuffled(facts.Entries.Reconstructions),
                Joinings = trial.Shuffled(facts.Entries.Joinings),
                UnlistedItems = trial.Shuffled(facts.Entries.UnlistedItems),
                Seals = trial.Shuffled(facts.Entries.Seals),
                SealChecks = trial.Shuffled(facts.Entries.SealChecks),
                Substitutions = trial.Shuffled(facts.Entries.Substitutions),
                Signatures = trial.Shuffled(facts.Entries.Signatures),
            },
            Quarantines = trial.Shuffled(facts.Quarantines),
            Calibrations = trial.Shuffled(facts.Calibrations),
            Custody = trial.Shuffled(facts.Custody),
        };
        return LawAnswer.Same("the same answer in another order", ResultText.Accounting(trial.Result), ResultText.Accounting(trial.Ask(shuffled)));
    }

    private static SessionCase Shuffle(SessionCase session, LawTrial trial)
    {
        TagRead[] again = [.. session.Reads.Where(_ => trial.Chance.Chance(0.5))];
        return session with { NearbyKits = trial.Shuffled(session.NearbyKits), SurroundingsChanges = trial.Shuffled(session.SurroundingsChanges), Reads = trial.Shuffled(session.Reads.Concat(again)) };
    }
}
