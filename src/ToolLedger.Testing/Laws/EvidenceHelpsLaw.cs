using System;
using System.Globalization;
using System.Linq;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Testing.Cases;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Laws;

/// <inheritdoc cref="ReconciliationLaw.EvidenceHelps"/>
internal sealed class EvidenceHelpsLaw : Law
{
    public override ReconciliationLaw Kind => ReconciliationLaw.EvidenceHelps;

    public override LawAnswer Try(LawTrial trial)
    {
        SessionCase[] sessions = [.. trial.UsedSessions()];
        if (sessions.Length == 0)
        {
            return LawAnswer.Silent;
        }

        SessionCase session = trial.Pick(sessions);
        TagBinding[] bindings = [.. trial.BindingsThrough(session).Where(binding => IsGenuine(trial, binding))];
        if (bindings.Length == 0)
        {
            return LawAnswer.Silent;
        }

        TagBinding binding = trial.Pick(bindings);
        DateTimeOffset at = session.From + trial.Chance.Between(TimeSpan.Zero, session.To - session.From);
        TagRead read = new(binding.Tag, trial.Pick(session.Station.Antennas), at + session.ClockOffset.GetValueOrDefault()) { Tid = binding.Tid };
        ReconciliationResult after = trial.Ask(trial.With(session, session with { Reads = [.. session.Reads, read] }));
        return Compare(trial.Result, after, binding, IsStationAsBefore(trial.Result, after), string.Create(CultureInfo.InvariantCulture, $"a read of {binding.Tag} ({binding.Tool}) in {session.Id} at {at:O}"));
    }

    private static LawAnswer Compare(ReconciliationResult before, ReconciliationResult after, TagBinding binding, bool isStationAsBefore, string what)
    {
        foreach ((LineConclusion old, LineConclusion now) in before.AllLines.Zip(after.AllLines))
        {
            bool isOwn = IsAbout(old, binding.Tool);
            if (old.IsAccounted && !now.IsAccounted)
            {
                return LawAnswer.Changed($"{what} leaves {old}", ResultText.Line(old), ResultText.Line(now));
            }

            if (!isOwn && isStationAsBefore && (old.State != now.State || old.Basis != now.Basis))
            {
                return LawAnswer.Changed($"{what} does not touch {old}", ResultText.Line(old), ResultText.Line(now));
            }
        }

        return LawAnswer.Holds;
    }

    /// <summary>A read of a tool whose identity is in doubt, or that is on two lists, is a contradiction and no help.</summary>
    private static bool IsGenuine(LawTrial trial, TagBinding binding)
        => !trial.Result.AllLines.Any(line => line.Line.Tool?.Id == binding.Tool && LineDoubt.IsIn(line))
        && !trial.Case.Manifests.Any(manifest => manifest.FindLine(binding.Tool) is not null && trial.Parts.All(part => part.Id != manifest.Id));

    /// <summary>A box is settled by what is in it, so that a read of a tool inside is about the box too.</summary>
    private static bool IsAbout(LineConclusion line, ToolId tool) => line.Line.Tool?.Id == tool || line.Inner.Any(inner => IsAbout(inner, tool));

    /// <summary>A read also shows that its antenna works; where that lifts the station, other lines may rise with it.</summary>
    private static bool IsStationAsBefore(ReconciliationResult before, ReconciliationResult after)
        => before.Sessions.Zip(after.Sessions).All(static pair => pair.First.Session.Health.State == pair.Second.Session.Health.State
            && pair.First.Session.LiveAntennas.SequenceEqual(pair.Second.Session.LiveAntennas));
}
