using System;
using System.Collections.Generic;
using System.Linq;
using System.Runtime.CompilerServices;

namespace ToolLedger.Reads;

/// <summary>Places the reads of one presentation: finds the tag's entry, tells repeats, and adds looks by pass, antenna and slot.</summary>
internal sealed partial class ReadPlacer
{
    private readonly Presentation _presentation;
    private readonly SessionPolicy _policy;
    private readonly Action _onFirstOverLimit;
    private readonly EvidenceStore _store;
    private readonly RepeatWindow _repeats;
    private readonly ActivityMap?[] _activity = new ActivityMap?[256];
    private readonly bool[] _unlisted = new bool[256];
    private readonly bool[] _listed = new bool[256];
    private readonly byte _onlyAntenna;
    private readonly List<long> _passStarts = [];
    private readonly long _from;
    private readonly long _end;
    private readonly long _correction;
    private readonly long _slotLength;

    // The slot and pass that the read before fell into, and the ticks for which both hold.
    private long _slotFrom;
    private long _slotTo;
    private int _slot;
    private int _pass;
    private bool _isOfOnePass;

    // The antennas that were heard in that slot, where the whole slot is of one pass.
    private ulong _heard;

    private long _readCount;
    private long _repeatCount;
    private long _outsideCount;
    private long _unlistedCount;
    private long _overLimitCount;
    private long _lastAccepted = long.MinValue;
    private long _earliestOutside = long.MaxValue;
    private long _latestOutside = long.MinValue;
    private bool _isLookLimitReached;

    /// <summary>Begins with no read.</summary>
    /// <param name="presentation">A consistent presentation.</param>
    /// <param name="policy">The limits.</param>
    /// <param name="end">The ticks at which the session ends at the latest, excluded.</param>
    /// <param name="onFirstOverLimit">What to do when the first read finds no room.</param>
    internal ReadPlacer(Presentation presentation, SessionPolicy policy, long end, Action onFirstOverLimit)
    {
        _presentation = presentation;
        _policy = policy;
        _onFirstOverLimit = onFirstOverLimit;
        _repeats = new RepeatWindow(policy);
        _slotLength = policy.SlotLength.Ticks;
        _from = presentation.From.UtcTicks;
        _end = end;
        _store = new EvidenceStore(policy, _from, presentation.Station.ControlTags.Select(control => control.Tag));
        _correction = presentation.ReaderClockOffset.GetValueOrDefault().Ticks;
        _passStarts.Add(_from);
        _passStarts.AddRange(presentation.PassStarts.Select(start => start.UtcTicks));
        foreach (AntennaPort antenna in presentation.Station.Antennas)
        {
            _listed[antenna.Number] = true;
        }

        // A reader that does not report its only antenna means that one.
        _listed[0] = true;
        _onlyAntenna = presentation.Station.Antennas.Count == 1 ? presentation.Station.Antennas[0].Number : (byte)0;
    }

    internal int PassCount => _passStarts.Count;

    internal long LastPassStart => _passStarts[^1];

    /// <summary>Adds a read.</summary>
    internal ReadPlacement Add(in TagRead read)
    {
        _readCount++;
        return PlaceWithCare(_store.Tags.FindOrAdd(in read.TagInPlace), in read);
    }

    /// <summary>Begins a pass, later than those before it.</summary>
    internal void BeginPass(long start)
    {
        _passStarts.Add(start);
        _slotFrom = _slotTo = 0;
        if (_lastAccepted >= start)
        {
            int startSlot = (int)((start - _from) / _slotLength);
            int firstSlot = (int)((start - _from + _slotLength - 1) / _slotLength);
            _store.SplitPass(_passStarts.Count - 1, _passStarts.Count, startSlot, firstSlot);
        }
    }

    /// <summary>What a session is made of. Nothing may be added afterwards.</summary>
    internal SessionFacts Close(DateTimeOffset to, TimeSpan? clockOffsetAfter, LossTally losses, IReadOnlyList<NearbyKit> nearby, IReadOnlyList<SurroundingsChange> changes)
    {
        _store.SettleRecent();
        return new SessionFacts
        {
            Presentation = _presentation,
            Policy = _policy,
            Store = _store,
            Activity = _activity,
            Unlisted = _unlisted,
            Losses = losses,
            PassStarts = _passStarts,
            To = to,
            ClockOffsetAfter = clockOffsetAfter,
            NearbyKits = nearby,
            SurroundingsChanges = changes,
            LastAccepted = _lastAccepted,
            EarliestOutside = _earliestOutside,
            LatestOutside = _latestOutside,
            IsLookLimitReached = _isLookLimitReached || _store.IsOverLookLimit,
            ReadCount = _readCount,
            RepeatCount = _repeatCount,
            OutsideCount = _outsideCount,
            UnlistedCount = _unlistedCount,
            OverLimitCount = _overLimitCount,
        };
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private ReadPlacement PlaceWithCare(int index, in TagRead read)
    {
        if (index < 0)
        {
            return OverLimit();
        }

        bool repeat = _repeats.Observe(index, read);
        byte antenna = read.AntennaNumber == 0 ? _onlyAntenna : read.AntennaNumber;
        return PlaceWithCare(index, ref _store.Tags[index], read, antenna, repeat);
    }

    private ReadPlacement PlaceWithCare(int index, ref TagEntry entry, in TagRead read, byte antenna, bool repeat)
    {
        bool kept = true;
        bool inside = false;
        if (_listed[antenna])
        {
            inside = TryPlaceLook(index, ref entry, antenna, read.FirstTicks - _correction, ref kept);
            inside |= read.LastTicks != read.FirstTicks && TryPlaceLook(index, ref entry, antenna, read.LastTicks - _correction, ref kept);
        }
        else
        {
            _unlisted[antenna] = true;
        }

        // Evidence is a set, so a repeat is added like any other read and changes nothing.
        if (inside)
        {
            _store.AddDetails(index, ref entry, read);
        }

        if (repeat)
        {
            _repeatCount++;
            _store.CountRepeat(index);
            return ReadPlacement.Repeat;
        }

        if (!inside)
        {
            _outsideCount++;
            _unlistedCount += _listed[antenna] ? 0 : 1;
            _store.CountOutside(index);
            _earliestOutside = Math.Min(_earliestOutside, read.FirstTicks - _correction);
            _latestOutside = Math.Max(_latestOutside, read.LastTicks - _correction);
            return ReadPlacement.OutsideWindow;
        }

        if (!kept)
        {
            return OverLookLimit();
        }

        _store.CountAccepted(index, ref entry);
        return ReadPlacement.Accepted;
    }

    private bool TryPlaceLook(int index, ref TagEntry entry, byte antenna, long ticks, ref bool kept)
    {
        if (ticks < _from || ticks >= _end)
        {
            return false;
        }

        if (ticks < _slotFrom || ticks >= _slotTo)
        {
            MoveTo(ticks);
        }

        kept &= AddLook(index, ref entry, antenna, ticks);
        return true;
    }

    // In the slot and pass that the placer stands in.
    private bool AddLook(int index, ref TagEntry entry, byte antenna, long ticks)
    {
        if (ticks > _lastAccepted)
        {
            _lastAccepted = ticks;
        }

        (_activity[antenna] ??= new ActivityMap()).Mark(_slot);
        _heard |= _isOfOnePass && antenna < EvidenceStore.PlainAntennas ? 1UL << antenna : 0;
        return _store.AddLook(index, ref entry, _pass, antenna, _slot, _isOfOnePass, ticks);
    }

    private void MoveTo(long ticks)
    {
        _heard = 0;
        _slot = (int)((ticks - _from) / _slotLength);
        _pass = _passStarts.Count;
        while (_passStarts[_pass - 1] > ticks)
        {
            _pass--;
        }

        long slotStart = _from + (_slot * _slotLength);
        _isOfOnePass = _passStarts[_pass - 1] <= slotStart && (_pass == _passStarts.Count || _passStarts[_pass] >= slotStart + _slotLength);
        _slotFrom = Math.Max(slotStart, _passStarts[_pass - 1]);
        _slotTo = Math.Min(Math.Min(slotStart + _slotLength, _end), _pass < _passStarts.Count ? _passStarts[_pass] : long.MaxValue);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private ReadPlacement OverLookLimit()
    {
        _isLookLimitReached = true;
        return OverLimit();
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private ReadPlacement OverLimit()
    {
        if (_overLimitCount++ == 0)
        {
            _onFirstOverLimit();
        }

        return ReadPlacement.OverTagLimit;
    }
}
