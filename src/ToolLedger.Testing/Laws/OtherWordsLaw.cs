using System;
using System.Linq;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Testing.Cases;
using ToolLedger.Testing.Generators;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Laws;

/// <inheritdoc cref="ReconciliationLaw.OtherWords"/>
internal sealed class OtherWordsLaw : Law
{
    public override ReconciliationLaw Kind => ReconciliationLaw.OtherWords;

    public override LawAnswer Try(LawTrial trial)
    {
        SessionCase[] sessions = [.. trial.UsedSessions()];
        if (sessions.Length == 0)
        {
            return LawAnswer.Silent;
        }

        SessionCase session = trial.Pick(sessions);
        TagBinding[] bindings = [.. trial.BindingsThrough(session).Where(binding => trial.Result.AllLines.Any(line => line.Line.Tool?.Id == binding.Tool))];
        if (bindings.Length == 0)
        {
            return LawAnswer.Silent;
        }

        TagBinding binding = trial.Pick(bindings);
        TagId other = ShiftPool.InOtherWords(binding.Tag);
        DateTimeOffset at = session.From + trial.Chance.Between(TimeSpan.Zero, session.To - session.From);
        var read = new TagRead(other, trial.Pick(session.Station.Antennas), at + session.ClockOffset.GetValueOrDefault());
        ReconciliationResult result = trial.Ask(trial.With(session, session with { Reads = [.. session.Reads, read] }));
        return Judge(result, session.Id, other, binding.Tool);
    }

    private static LawAnswer Judge(ReconciliationResult result, SessionId session, TagId tag, ToolId tool)
    {
        ReadExplanation? strange = result.Reads.FirstOrDefault(one => one.Session == session && one.Tag == tag && one.Kind is (ReadExplanationKind.Expected or ReadExplanationKind.Unknown));
        if (strange is not null)
        {
            return LawAnswer.Broken($"tag {tag} says {tool} in other bits and is unexpected", strange.Kind + ": " + strange);
        }

        LineConclusion line = result.AllLines.First(one => one.Line.Tool?.Id == tool);
        bool isSettled = line.Reasons.Any(static reason => reason.Kind == ReconciliationReasons.IdentitySettled);
        return line.State == LineState.Conflict || isSettled
            ? LawAnswer.Holds
            : LawAnswer.Broken($"tag {tag} says {tool} in other bits, so its line is a conflict until its mark is sighted", line.ToString());
    }
}
