using System;
using System.Collections.Generic;
using ToolLedger.Reads;

namespace ToolLedger.Testing.Simulation;

/// <summary>Makes the reports of one tag: when, by which antenna, how strong, when delivered, whether delivered again.</summary>
internal sealed class ReaderModel
{
    private readonly SessionScenario _scenario;
    private readonly SimulationSettings _settings;
    private readonly ulong _seed;
    private readonly double[] _weights;
    private readonly double _weightSum;

    public ReaderModel(SessionScenario scenario, SimulationSettings settings, ulong seed)
    {
        _scenario = scenario;
        _settings = settings;
        _seed = seed;
        _weights = new double[scenario.Station.Antennas.Count];
        Array.Fill(_weights, 1);
        foreach (AntennaCoverage coverage in scenario.Coverage)
        {
            for (int i = 0; i < _weights.Length; i++)
            {
                _weights[i] = scenario.Station.Antennas[i] == coverage.Antenna ? coverage.Weight : _weights[i];
            }
        }

        foreach (double weight in _weights)
        {
            _weightSum += weight;
        }
    }

    /// <summary>Adds the reports of a tag and returns how many there are, repeats not counted.</summary>
    public int Report(SimulatedTag tag, List<SimulatedReport> reports) => tag.Placement switch
    {
        TagPlacement.Absent => 0,
        TagPlacement.Control => ReportControlTag(tag, reports),
        _ => _weightSum > 0 ? ReportTag(tag, reports) : 0,
    };

    private int ReportTag(SimulatedTag tag, List<SimulatedReport> reports)
    {
        SplitMix64 lasting = SplitMix64.ForSubject(_seed, tag.Tag.ToString(), 0);
        double lastingPart = lasting.Exponential();
        double strength = _settings.StrengthMeanDbm - LossDb(tag) + (_settings.StrengthTagSpreadDb * lasting.Bell());
        AntennaPort? onlyAntenna = lasting.Chance(_settings.OneAntennaShare) ? PickAntenna(lasting) : null;
        int count = 0;
        for (int pass = 1; pass <= _scenario.PassCount; pass++)
        {
            SplitMix64 chance = SplitMix64.ForSubject(_seed, tag.Tag.ToString(), pass);
            double mean = ReportsMean(tag) * (lastingPart + chance.Exponential() + chance.Exponential()) / 3;
            DateTimeOffset from = _scenario.From + (_scenario.PassLength * (pass - 1));
            if (tag.Placement == TagPlacement.Stray)
            {
                mean = _settings.StrayReportsMean / _scenario.PassCount;
                count += pass == 1 ? Deliver(tag, from + chance.Between(TimeSpan.Zero, _scenario.PassLength), strength, onlyAntenna, chance, reports) : 0;
            }

            count += ReportPass(tag, from, mean, strength, onlyAntenna, chance, reports);
        }

        return count;
    }

    /// <summary>A Poisson process over one pass: exponential gaps, in units of the mean gap.</summary>
    private int ReportPass(
        SimulatedTag tag, DateTimeOffset from, double mean, double strength, AntennaPort? onlyAntenna, SplitMix64 chance, List<SimulatedReport> reports)
    {
        int count = 0;
        for (double at = chance.Exponential(); at < mean; at += chance.Exponential())
        {
            count += Deliver(tag, from + (_scenario.PassLength * (at / mean)), strength, onlyAntenna, chance, reports);
        }

        return count;
    }

    private int ReportControlTag(SimulatedTag tag, List<SimulatedReport> reports)
    {
        int count = 0;
        foreach (AntennaPort antenna in _scenario.Station.Antennas)
        {
            if (!IsInField(tag, antenna))
            {
                continue;
            }

            SplitMix64 chance = SplitMix64.ForSubject(_seed, tag.Tag.ToString(), antenna.Number);
            for (DateTimeOffset at = _scenario.From; at < _scenario.To; at += _settings.ControlTagInterval)
            {
                DateTimeOffset seen = at + chance.Between(TimeSpan.Zero, _settings.ControlTagInterval);
                bool isMissed = chance.Chance(_settings.ControlTagMissShare);
                count += isMissed || seen >= _scenario.To ? 0 : Deliver(tag, seen, _settings.StrengthMeanDbm, antenna, chance, reports);
            }
        }

        return count;
    }

    private bool IsInField(SimulatedTag tag, AntennaPort antenna)
    {
        foreach (ControlTag control in _scenario.Station.ControlTags)
        {
            if (control.Tag == tag.Tag && (!control.Antenna.IsKnown || control.Antenna == antenna))
            {
                return true;
            }
        }

        return false;
    }

    private int Deliver(
        SimulatedTag tag, DateTimeOffset seen, double strength, AntennaPort? onlyAntenna, SplitMix64 chance, List<SimulatedReport> reports)
    {
        // Readers stamp whole microseconds. Every draw is made whether it is needed or not, so that a silence or a setting changes no other report.
        seen = new DateTimeOffset(seen.UtcTicks / TimeSpan.TicksPerMicrosecond * TimeSpan.TicksPerMicrosecond, TimeSpan.Zero);
        AntennaPort antenna = onlyAntenna ?? PickAntenna(chance);
        double dbm = Math.Clamp(strength + (_settings.StrengthReportSpreadDb * chance.Bell()), -120, 0);
        bool isLate = chance.Chance(_settings.LateReportShare);
        TimeSpan delay = chance.Between(_settings.LateReportDelayMin, Longest(_settings.LateReportDelayMin, _settings.LateReportDelayMax));
        TimeSpan late = isLate ? delay : TimeSpan.Zero;
        bool isRepeated = chance.Chance(_settings.RepeatShare);
        TimeSpan again = chance.Between(TimeSpan.Zero, _settings.RepeatDelayMax);
        if (IsSilent(seen, antenna))
        {
            return 0;
        }

        var read = new TagRead(tag.Tag, antenna, seen + ClockErrorAt(seen))
        {
            Tid = _settings.ReportsTid ? tag.Tid : default,
            Strength = Rssi.FromDbm(Math.Round(dbm * 2, MidpointRounding.ToEven) / 2), // in half decibels, as readers report it
        };
        reports.Add(new SimulatedReport(seen + late, seen, IsRepeat: false, read));
        if (isRepeated)
        {
            reports.Add(new SimulatedReport(seen + late + again, seen, IsRepeat: true, read));
        }

        return 1;
    }

    private AntennaPort PickAntenna(SplitMix64 chance)
    {
        double at = chance.Unit() * _weightSum;
        int last = 0;
        for (int i = 0; i < _weights.Length; i++)
        {
            if (_weights[i] > 0)
            {
                last = i;
                if (at < _weights[i])
                {
                    break;
                }
            }

            at -= _weights[i];
        }

        return _scenario.Station.Antennas[last];
    }

    private bool IsSilent(DateTimeOffset at, AntennaPort antenna)
    {
        foreach (ReaderDropOut dropOut in _scenario.DropOuts)
        {
            if (dropOut.Covers(at, antenna))
            {
                return true;
            }
        }

        return false;
    }

    private TimeSpan ClockErrorAt(DateTimeOffset at)
    {
        double share = (at - _scenario.From) / (_scenario.To - _scenario.From);
        long drift = (long)(_scenario.ReaderClockDrift.Ticks * share);
        return _scenario.ReaderClockOffset + TimeSpan.FromTicks(drift / TimeSpan.TicksPerMicrosecond * TimeSpan.TicksPerMicrosecond);
    }

    private double ReportsMean(SimulatedTag tag) => _settings.ReportsPerPassMean
        * (tag.IsObscured ? _settings.ObscuredFactor : 1)
        * (tag.Placement == TagPlacement.Neighbour ? _settings.NeighbourFactor : 1);

    private double LossDb(SimulatedTag tag) => (tag.IsObscured ? _settings.ObscuredLossDb : 0)
        + (tag.Placement == TagPlacement.Neighbour ? _settings.NeighbourLossDb : 0);

    private static TimeSpan Longest(TimeSpan one, TimeSpan other) => one > other ? one : other;
}
