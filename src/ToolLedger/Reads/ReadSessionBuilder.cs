using System;
using System.Collections.Generic;
using System.Linq;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <summary>
/// Takes the reads of one presentation, one at a time, and makes a <see cref="ReadSession"/> of them. What is kept grows
/// with the number of different tags and looks, never with the number of reads.
/// </summary>
/// <remarks>
/// <para>A look is one pass, one antenna, one time slot. A report gives a look at its first and at its last instant, as far
/// as these lie in the presentation; how often it counted the tag in between adds nothing.</para>
/// <para>Announce a pass before adding its reads. If reads of it came first, their looks are moved to the new pass by whole
/// slots, as far as the limit of looks kept has not dropped them. What came before the announcement in the slot in which the
/// pass begins could be of either pass: it counts, as one look, only for a tag that has no other look.</para>
/// <para>Not thread-safe: one presentation, one thread at a time.</para>
/// </remarks>
public sealed class ReadSessionBuilder
{
    private readonly Presentation _presentation;
    private readonly SessionPolicy _policy;
    private readonly ILogger _logger;
    private readonly EvidenceStore _store;
    private readonly RepeatWindow _repeats;
    private readonly ActivityMap?[] _activity = new ActivityMap?[256];
    private readonly bool[] _unlisted = new bool[256];
    private readonly bool[] _listed = new bool[256];
    private readonly byte _onlyAntenna;
    private readonly List<long> _passStarts = [];
    private readonly LossTally _losses = new();
    private readonly List<NearbyKit> _nearby = [];
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

    private long _readCount;
    private long _repeatCount;
    private long _outsideCount;
    private long _unlistedCount;
    private long _overLimitCount;
    private long _lastAccepted = long.MinValue;
    private long _earliestOutside = long.MaxValue;
    private long _latestOutside = long.MinValue;
    private bool _isLookLimitReached;
    private bool _isClosed;

    /// <summary>Opens a session.</summary>
    /// <param name="presentation">What is presented, where and from when.</param>
    /// <param name="policy">When the session is usable, and the limits of what is kept.</param>
    /// <param name="logger">Where to say that the session opened, closed, or lost something; null for nowhere.</param>
    /// <exception cref="ArgumentNullException">The presentation or the policy is null.</exception>
    /// <exception cref="RecordException">The end or a pass of the presentation does not fit its start.</exception>
    public ReadSessionBuilder(Presentation presentation, SessionPolicy policy, ILogger? logger = null)
    {
        ArgumentNullException.ThrowIfNull(presentation);
        ArgumentNullException.ThrowIfNull(policy);
        presentation.RequireConsistent();
        _presentation = presentation;
        _policy = policy;
        _logger = logger ?? NullLogger.Instance;
        _repeats = new RepeatWindow(policy);
        _slotLength = policy.SlotLength.Ticks;
        _from = presentation.From.UtcTicks;
        _store = new EvidenceStore(policy, _from, presentation.Station.ControlTags.Select(control => control.Tag));
        _end = Math.Min(presentation.Until?.UtcTicks ?? long.MaxValue, _from + policy.MaximumWindow.Ticks);
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
        SessionLog.SessionOpened(_logger, presentation.Id, presentation.Station.Id, presentation.From, presentation.Kits.Count);
        foreach (ReportedLoss loss in presentation.Losses)
        {
            ReportLoss(loss.Loss, loss.At, loss.Antenna);
        }
    }

    /// <summary>Adds a read. Any order is fine.</summary>
    /// <param name="read">The read.</param>
    /// <returns>What became of it.</returns>
    /// <exception cref="InvalidOperationException">The session is closed.</exception>
    public ReadPlacement Add(in TagRead read)
    {
        RequireOpen();
        return Place(_store.Tags.FindOrAdd(in read.TagInPlace), in read);
    }

    /// <summary>Adds many reads, in any order: the same as adding each, and faster, because many tags are looked up together.</summary>
    /// <param name="reads">The reads.</param>
    /// <returns>How many were accepted.</returns>
    /// <exception cref="InvalidOperationException">The session is closed.</exception>
    public int AddRange(ReadOnlySpan<TagRead> reads)
    {
        RequireOpen();
        Span<int> found = stackalloc int[TagTable.BatchLength];
        int accepted = 0;
        while (!reads.IsEmpty)
        {
            ReadOnlySpan<TagRead> batch = reads[..Math.Min(reads.Length, TagTable.BatchLength)];
            reads = reads[batch.Length..];
            _store.Tags.FindTogether(batch, found);
            for (int i = 0; i < batch.Length; i++)
            {
                ref readonly TagRead read = ref batch[i];
                int index = found[i] >= 0 ? found[i] : _store.Tags.FindOrAdd(in read.TagInPlace);
                accepted += Place(index, in read) == ReadPlacement.Accepted ? 1 : 0;
            }
        }

        return accepted;
    }

    /// <summary>Says that a further pass begins: the bag was turned, moved or put back.</summary>
    /// <param name="at">When.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is not later than the start of the pass before, or not before the
    /// end of the session.</exception>
    /// <exception cref="InvalidOperationException">The session is closed, or there are 100 passes.</exception>
    public void BeginPass(DateTimeOffset at)
    {
        RequireOpen();
        if (_passStarts.Count == Presentation.MaxPassCount)
        {
            throw new InvalidOperationException("A presentation has at most 100 passes.");
        }

        long start = at.UtcTicks;
        if (start <= _passStarts[^1] || start >= _end)
        {
            throw new ArgumentOutOfRangeException(
                nameof(at), at, "A pass begins later than the pass before it and before the end of the session.");
        }

        _passStarts.Add(start);
        _slotFrom = _slotTo = 0;
        if (_lastAccepted >= start)
        {
            int startSlot = (int)((start - _from) / _slotLength);
            int firstSlot = (int)((start - _from + _slotLength - 1) / _slotLength);
            _store.SplitPass(_passStarts.Count - 1, _passStarts.Count, startSlot, firstSlot);
        }

        SessionLog.PassBegan(_logger, _presentation.Id, _passStarts.Count, at);
    }

    /// <summary>Says that something was lost.</summary>
    /// <param name="loss">What.</param>
    /// <param name="at">When.</param>
    /// <param name="antenna">On which antenna; the default value when that is not known or all are meant.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such kind of loss, or the time is outside the
    /// years 1970 to 2999.</exception>
    /// <exception cref="InvalidOperationException">The session is closed.</exception>
    public void ReportLoss(SessionLoss loss, DateTimeOffset at, AntennaPort antenna = default)
    {
        RequireOpen();
        if (!Enum.IsDefined(loss))
        {
            throw new ArgumentOutOfRangeException(nameof(loss), loss, "There is no such kind of loss.");
        }

        _losses.Add(new ReportedLoss(loss, RecordTime.Require(at, nameof(at)), antenna));
        SessionLog.LossReported(_logger, _presentation.Id, loss, at, antenna);
    }

    /// <summary>Says that another kit stands, or stood, within reach of the antennas. State it again with its end when it is moved away, and begin a new pass.</summary>
    /// <param name="nearby">The kit and when it stood there.</param>
    /// <exception cref="ArgumentException">It names no kit, one that is presented, or an end that is not later than its start.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A time is outside the years 1970 to 2999.</exception>
    /// <exception cref="InvalidOperationException">The session is closed, or 1,000 entries were noted.</exception>
    public void NoteNearby(NearbyKit nearby)
    {
        RequireOpen();
        Presentation.CheckNearby(nearby);
        if (_presentation.Presents(nearby.Kit) || nearby.Until <= nearby.From)
        {
            throw new ArgumentException("A kit nearby is not presented itself, and is moved away later than it came.", nameof(nearby));
        }

        if (_nearby.Count == Presentation.MaxNearbyKitCount)
        {
            throw new InvalidOperationException("At most 1,000 kits nearby can be noted in a session.");
        }

        // The same kit from the same instant on is the same stay; the later statement says more.
        _nearby.RemoveAll(known => known.Kit == nearby.Kit && known.From == nearby.From);
        _nearby.Add(nearby);
    }

    /// <summary>Closes the session and judges its health. The builder takes nothing more.</summary>
    /// <param name="to">The end, excluded: later than the start and not later than the presentation's stated end.</param>
    /// <param name="readerClockOffsetAfter">How far the reader's clock was ahead of true time after the last read; null to
    /// use what the presentation states, or for unknown.</param>
    /// <returns>The session.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The end does not fit, or the offset is over 36,525 days.</exception>
    /// <exception cref="InvalidOperationException">The session is closed.</exception>
    public ReadSession Close(DateTimeOffset to, TimeSpan? readerClockOffsetAfter = null)
    {
        RequireOpen();
        if (to.UtcTicks <= _from || to.UtcTicks > _end)
        {
            throw new ArgumentOutOfRangeException(
                nameof(to), to, "A session ends after its start, and not after its stated end or its longest allowed time.");
        }

        TimeSpan? after = Presentation.CheckOffset(readerClockOffsetAfter) ?? _presentation.ReaderClockOffsetAfter;
        _isClosed = true;
        var facts = new SessionFacts
        {
            Presentation = _presentation,
            Policy = _policy,
            Store = _store,
            Activity = _activity,
            Unlisted = _unlisted,
            Losses = _losses,
            PassStarts = _passStarts,
            To = to,
            ClockOffsetAfter = after,
            NearbyKits = _nearby,
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
        var session = new ReadSession(facts);
        SessionLog.SessionClosed(_logger, _presentation.Id, to, session.Health.State, session.TagCount, _readCount);
        if (session.Health.State != SessionState.Valid && _logger.IsEnabled(LogLevel.Warning))
        {
            SessionLog.SessionDoubtful(_logger, _presentation.Id, session.Health.State, string.Join(" ", session.Health.Reasons));
        }

        return session;
    }

    private ReadPlacement Place(int index, in TagRead read)
    {
        _readCount++;
        if (index < 0)
        {
            return OverLimit();
        }

        ref TagEntry entry = ref _store.Tags[index];
        bool repeat = _repeats.Observe(index, read);
        byte antenna = read.AntennaNumber == 0 ? _onlyAntenna : read.AntennaNumber;
        bool kept = true;
        bool inside = _listed[antenna] && PlaceLooks(index, ref entry, read, antenna, out kept);
        _unlisted[antenna] |= !_listed[antenna];

        // Evidence is a set, so a repeat has been added like any other read and has changed nothing.
        if (repeat)
        {
            _repeatCount++;
            _store.CountRepeat(ref entry);
            return ReadPlacement.Repeat;
        }

        if (!inside)
        {
            _outsideCount++;
            _unlistedCount += _listed[antenna] ? 0 : 1;
            _store.CountOutside(ref entry);
            _earliestOutside = Math.Min(_earliestOutside, read.FirstTicks - _correction);
            _latestOutside = Math.Max(_latestOutside, read.LastTicks - _correction);
            return ReadPlacement.OutsideWindow;
        }

        if (!kept)
        {
            _isLookLimitReached = true;
            return OverLimit();
        }

        _store.CountAccepted(ref entry);
        return ReadPlacement.Accepted;
    }

    private bool PlaceLooks(int index, ref TagEntry entry, in TagRead read, byte antenna, out bool kept)
    {
        kept = true;
        long first = read.FirstTicks - _correction;
        long last = read.LastTicks - _correction;
        bool inside = PlaceLook(index, ref entry, antenna, first, ref kept);
        if (last != first)
        {
            inside |= PlaceLook(index, ref entry, antenna, last, ref kept);
        }

        if (!inside)
        {
            return false;
        }

        if (read.HasStrength)
        {
            EvidenceStore.AddStrength(ref entry, read.CentiDbm);
        }

        if (read.HasTid)
        {
            _store.AddTid(ref entry, read.Tid);
        }

        return true;
    }

    private bool PlaceLook(int index, ref TagEntry entry, byte antenna, long ticks, ref bool kept)
    {
        if (ticks < _slotFrom || ticks >= _slotTo)
        {
            if (ticks < _from || ticks >= _end)
            {
                return false;
            }

            MoveTo(ticks);
        }

        if (ticks > _lastAccepted)
        {
            _lastAccepted = ticks;
        }

        (_activity[antenna] ??= new ActivityMap()).Mark(_slot);
        kept &= _store.AddLook(index, ref entry, _pass, antenna, _slot, _isOfOnePass, ticks);
        return true;
    }

    private void MoveTo(long ticks)
    {
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

    private ReadPlacement OverLimit()
    {
        if (_overLimitCount++ == 0)
        {
            SessionLog.LimitReached(_logger, _presentation.Id);
        }

        return ReadPlacement.OverTagLimit;
    }

    private void RequireOpen()
    {
        if (_isClosed)
        {
            throw new InvalidOperationException("The session is closed.");
        }
    }
}
