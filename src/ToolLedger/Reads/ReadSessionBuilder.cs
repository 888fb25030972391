using System;
using System.Collections.Generic;
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
    private readonly ReadPlacer _placer;
    private readonly LossTally _losses = new();
    private readonly List<NearbyKit> _nearby = [];
    private readonly List<SurroundingsChange> _changes = [];
    private readonly long _from;
    private readonly long _end;
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
        _from = presentation.From.UtcTicks;
        _end = Math.Min(presentation.Until?.UtcTicks ?? long.MaxValue, _from + policy.MaximumWindow.Ticks);
        _placer = new ReadPlacer(presentation, policy, _end, () => SessionLog.LimitReached(_logger, presentation.Id));
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
        return _placer.Add(in read);
    }

    /// <summary>Adds many reads, in any order: the same as adding each, and faster, because many tags are looked up together. Only over a limit of the policy, where not every look can be kept, may other looks be left.</summary>
    /// <param name="reads">The reads.</param>
    /// <returns>How many were accepted.</returns>
    /// <exception cref="InvalidOperationException">The session is closed.</exception>
    public int AddRange(ReadOnlySpan<TagRead> reads)
    {
        RequireOpen();
        return _placer.AddRange(reads);
    }

    /// <summary>Says that a further pass begins: the bag was turned, moved or put back.</summary>
    /// <param name="at">When.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is not later than the start of the pass before, or not before the
    /// end of the session.</exception>
    /// <exception cref="InvalidOperationException">The session is closed, or there are 100 passes.</exception>
    public void BeginPass(DateTimeOffset at)
    {
        RequireOpen();
        if (_placer.PassCount == Presentation.MaxPassCount)
        {
            throw new InvalidOperationException("A presentation has at most 100 passes.");
        }

        long start = at.UtcTicks;
        if (start <= _placer.LastPassStart || start >= _end)
        {
            throw new ArgumentOutOfRangeException(
                nameof(at), at, "A pass begins later than the pass before it and before the end of the session.");
        }

        _placer.BeginPass(start);
        SessionLog.PassBegan(_logger, _presentation.Id, _placer.PassCount, at);
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

    /// <summary>Says that somebody changed what stands around the station. Begin a new pass at that instant: a change in the midst of a pass separates nothing.</summary>
    /// <param name="change">Who changed what, and when.</param>
    /// <exception cref="ArgumentNullException"><paramref name="change"/> is null.</exception>
    /// <exception cref="InvalidOperationException">The session is closed, or 1,000 changes were noted.</exception>
    public void NoteChange(SurroundingsChange change)
    {
        ArgumentNullException.ThrowIfNull(change);
        RequireOpen();
        if (_changes.Count == Presentation.MaxSurroundingsChangeCount)
        {
            throw new InvalidOperationException("At most 1,000 changes of the surroundings can be noted in a session.");
        }

        _changes.Add(change);
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
        SessionFacts facts = _placer.Close(to, after, _losses, _nearby, _changes);
        var session = new ReadSession(facts);
        SessionLog.SessionClosed(_logger, _presentation.Id, to, session.Health.State, session.TagCount, facts.ReadCount);
        if (session.Health.State != SessionState.Valid && _logger.IsEnabled(LogLevel.Warning))
        {
            SessionLog.SessionDoubtful(_logger, _presentation.Id, session.Health.State, string.Join(" ", session.Health.Reasons));
        }

        return session;
    }

    private void RequireOpen()
    {
        if (_isClosed)
        {
            throw new InvalidOperationException("The session is closed.");
        }
    }
}
