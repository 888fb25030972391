using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <summary>Judges the health of a closed session. Every test is such that fewer reads, a dead antenna or a less certain
/// clock can only lower the state.</summary>
internal sealed class SessionJudge
{
    private readonly SessionFacts _facts;
    private readonly SessionPolicy _policy;
    private readonly List<Reason> _invalid = [];
    private readonly List<Reason> _degraded = [];
    private readonly List<Reason> _information = [];
    private readonly List<AntennaPort> _live = [];

    internal SessionJudge(SessionFacts facts)
    {
        _facts = facts;
        _policy = facts.Policy;
        JudgeWindow();
        JudgeStamps();
        JudgeTimeSource();
        JudgeLimits();
        JudgeAntennas();
        JudgeLosses();
        JudgeSilence();
        SessionState state = _invalid.Count > 0 || _live.Count == 0 ? SessionState.Invalid
            : _degraded.Count > 0 ? SessionState.Degraded
            : SessionState.Valid;
        Health = new SessionHealth(state, [.. _invalid, .. _degraded, .. _information]);
    }

    internal SessionHealth Health { get; }

    internal IReadOnlyList<AntennaPort> LiveAntennas => _live;

    private void JudgeWindow()
    {
        TimeSpan window = _facts.To - _facts.Presentation.From;
        if (window < _policy.MinimumWindow)
        {
            _invalid.Add(new Reason(SessionReasons.WindowTooShort,
                ("seconds", Seconds(window)), ("minimum", Seconds(_policy.MinimumWindow))));
        }

        if (_facts.LastAccepted >= _facts.To.UtcTicks)
        {
            _invalid.Add(new Reason(SessionReasons.ReadAfterClose,
                ("last", RecordTime.ToText(new DateTimeOffset(_facts.LastAccepted, TimeSpan.Zero))), ("to", RecordTime.ToText(_facts.To))));
        }
    }

    private void JudgeStamps()
    {
        long limit = _policy.StampDistanceMax.Ticks;
        long early = _facts.Presentation.From.UtcTicks - _facts.EarliestOutside;
        long late = _facts.LatestOutside - _facts.To.UtcTicks;
        bool isEarly = _facts.EarliestOutside != long.MaxValue && early > limit;
        bool isLate = _facts.LatestOutside != long.MinValue && late > limit;
        if (isEarly || isLate)
        {
            long stamp = Math.Clamp(isEarly ? _facts.EarliestOutside : _facts.LatestOutside, 0, DateTimeOffset.MaxValue.UtcTicks);
            _invalid.Add(new Reason(SessionReasons.StampsFarOutside,
                ("stamp", RecordTime.ToText(new DateTimeOffset(stamp, TimeSpan.Zero))),
                ("days", _policy.StampDistanceMax.TotalDays.ToString("0.#", CultureInfo.InvariantCulture))));
        }
    }

    private void JudgeTimeSource()
    {
        if (_facts.Presentation.TimeSource == ReadTimeSource.ReaderClock)
        {
            JudgeClock();
        }
        else if (_policy.HostArrivalAccepted)
        {
            _degraded.Add(new Reason(SessionReasons.ArrivalTimes));
        }
        else
        {
            _invalid.Add(new Reason(SessionReasons.ArrivalTimesNotAccepted));
        }
    }

    // Two known offsets are good when they agree, whatever their size, or when both are small and so is what remains after
    // the correction by the first one.
    private void JudgeClock()
    {
        TimeSpan? before = _facts.Presentation.ReaderClockOffset;
        TimeSpan? after = _facts.ClockOffsetAfter;
        if (before is null || after is null)
        {
            string end = before is not null ? "end" : after is not null ? "start" : "start and end";
            _invalid.Add(new Reason(SessionReasons.ClockOffsetUnknown, ("end", end)));
            return;
        }

        if (before.Value.Duration() > _policy.ClockCorrectionMax)
        {
            _invalid.Add(new Reason(SessionReasons.ClockOffsetTooLarge,
                ("seconds", Seconds(before.Value)), ("limit", Seconds(_policy.ClockCorrectionMax))));
        }

        TimeSpan drift = (after.Value - before.Value).Duration();
        bool small = before.Value.Duration() <= _policy.ClockOffsetMax && after.Value.Duration() <= _policy.ClockOffsetMax;
        if (drift > _policy.ClockDriftMax && !(small && drift <= _policy.ClockOffsetMax))
        {
            _invalid.Add(new Reason(SessionReasons.ClockOffsetChanged,
                ("before", Seconds(before.Value)), ("after", Seconds(after.Value))));
        }
        else if (before != TimeSpan.Zero)
        {
            _information.Add(new Reason(SessionReasons.ClockCorrected, ("seconds", Seconds(before.Value))));
        }
    }

    private void JudgeLimits()
    {
        if (_facts.IsLookLimitReached)
        {
            _invalid.Add(new Reason(SessionReasons.LookLimit, ("limit", Text(_policy.LookLimit))));
        }
        else if (_facts.OverLimitCount > 0)
        {
            _invalid.Add(new Reason(SessionReasons.TagLimit, ("limit", Text(_policy.TagLimit))));
        }

        for (int antenna = 1; antenna < _facts.Unlisted.Length; antenna++)
        {
            if (_facts.Unlisted[antenna])
            {
                _information.Add(new Reason(SessionReasons.UnlistedAntenna, ("antenna", Text(antenna))));
            }
        }
    }

    private void JudgeAntennas()
    {
        ReadStation station = _facts.Presentation.Station;
        if (station.ControlTags.Count == 0)
        {
            _degraded.Add(new Reason(SessionReasons.NoControlTags));
            if (_facts.LastAccepted == long.MinValue)
            {
                _invalid.Add(new Reason(SessionReasons.NothingRead));
            }
        }

        foreach (AntennaPort antenna in station.Antennas)
        {
            ControlTag[] controls = [.. station.ControlTagsOn(antenna)];
            bool live = controls.Length > 0 || _facts.Activity[antenna.Number] is not null
                || (station.Antennas.Count > 1 && _facts.Activity[0] is not null && station.ControlTags.Count == 0);
            foreach (ControlTag control in controls)
            {
                live &= IsSeenAtBothEnds(control, antenna);
            }

            if (controls.Length == 0 && station.ControlTags.Count > 0)
            {
                _degraded.Add(new Reason(SessionReasons.AntennaWithoutControlTag, ("antenna", antenna.ToString())));
            }

            if (live)
            {
                _live.Add(antenna);
            }
        }
    }

    private bool IsSeenAtBothEnds(ControlTag control, AntennaPort antenna)
    {
        long edge = _policy.ControlTagEdge.Ticks;
        int index = _facts.Store.Tags.Find(control.Tag);
        bool start = false;
        bool end = false;
        if (index >= 0 && _facts.Store.TryGetSpan(index, antenna.Number, out long first, out long last))
        {
            start = first - _facts.Presentation.From.UtcTicks <= edge;
            end = _facts.To.UtcTicks - last <= edge;
        }

        if (!start || !end)
        {
            _degraded.Add(new Reason(SessionReasons.ControlTagMissing, ("tag", control.Tag.ToString()),
                ("antenna", antenna.ToString()), ("end", start ? "end" : end ? "start" : "start and end")));
        }

        return start && end;
    }

    private void JudgeLosses()
    {
        foreach ((ReportedLoss loss, long count) in _facts.Losses.All)
        {
            bool isTotal = loss.Loss is SessionLoss.ConnectionClosed or SessionLoss.ReaderFault or SessionLoss.StreamLost
                || (loss.Loss is SessionLoss.AntennaDisconnected && !loss.Antenna.IsKnown);
            if (loss.Loss is SessionLoss.AntennaDisconnected)
            {
                _live.Remove(loss.Antenna);
            }

            (isTotal ? _invalid : _degraded).Add(new Reason(SessionReasons.Loss, ("kind", SessionLossWords.Of(loss.Loss)),
                ("antenna", loss.Antenna.ToString()), ("count", Text(count)), ("at", RecordTime.ToText(loss.At))));
        }
    }

    // Only an antenna with a control tag must hear something all the time; without any, the station as a whole must.
    private void JudgeSilence()
    {
        ReadStation station = _facts.Presentation.Station;
        if (station.ControlTags.Count == 0)
        {
            ReportSilence("any", ActivityMap.Union(_facts.Activity));
            return;
        }

        foreach (AntennaPort antenna in _live.Where(antenna => station.ControlTagsOn(antenna).Any()))
        {
            ReportSilence(antenna.ToString(), _facts.Activity[antenna.Number]!);
        }
    }

    private void ReportSilence(string antenna, ActivityMap activity)
    {
        DateTimeOffset start = _facts.Presentation.From.ToUniversalTime();
        int count = activity.FindSilences(_policy.SlotLength.Ticks, (_facts.To - start).Ticks, _policy.SilenceGapMax.Ticks, out long from, out long longest);
        if (count > 0)
        {
            _degraded.Add(new Reason(SessionReasons.SilenceGap, ("antenna", antenna), ("seconds", Seconds(TimeSpan.FromTicks(longest))),
                ("from", RecordTime.ToText(start.AddTicks(from))), ("count", Text(count))));
        }
    }

    private static string Seconds(TimeSpan time) => (time.Ticks / (decimal)TimeSpan.TicksPerSecond).ToString("0.#######", CultureInfo.InvariantCulture);

    private static string Text(long number) => number.ToString(CultureInfo.InvariantCulture);
}
