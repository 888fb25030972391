using System;
using System.Collections.Generic;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Simulation;

/// <summary>A simulated presentation: what the host would have been told, and what is true. Immutable and thread-safe.</summary>
public sealed class SimulatedSession
{
    private readonly Dictionary<TagId, TagTruth> _truthByTag = [];

    internal SimulatedSession(SessionScenario scenario, Presentation presentation, IReadOnlyList<TagRead> reads, IReadOnlyList<TagTruth> truth)
    {
        Scenario = scenario;
        Presentation = presentation;
        Reads = reads;
        Truth = truth;
        foreach (TagTruth one in truth)
        {
            _truthByTag.Add(one.Tag, one);
        }
    }

    /// <summary>What truly happens.</summary>
    public SessionScenario Scenario { get; }

    /// <summary>The presentation sheet the host would have written.</summary>
    public Presentation Presentation { get; }

    /// <summary>The reads in the order of delivery, stamped by the reader's clock; late and repeated ones among them.</summary>
    public IReadOnlyList<TagRead> Reads { get; }

    /// <summary>What is true of every tag that plays a part, in the order of the tags.</summary>
    public IReadOnlyList<TagTruth> Truth { get; }

    /// <summary>What the host measures at the end: how far the reader's clock is ahead; <see langword="null"/> if it does not measure.</summary>
    public TimeSpan? ReaderClockOffsetAfter =>
        Scenario.IsClockOffsetKnown ? Scenario.ReaderClockOffset + Scenario.ReaderClockDrift : null;

    /// <summary>What is true of one tag.</summary>
    /// <param name="tag">The tag.</param>
    /// <returns>Its truth, or <see langword="null"/> if it plays no part in the scenario.</returns>
    public TagTruth? Find(TagId tag) => _truthByTag.GetValueOrDefault(tag);

    /// <summary>Hands the reads to a session builder and closes it at the true end.</summary>
    /// <param name="policy">When a session is valid.</param>
    /// <exception cref="ArgumentNullException"><paramref name="policy"/> is <see langword="null"/>.</exception>
    public ReadSession Close(SessionPolicy policy)
    {
        var builder = new ReadSessionBuilder(Presentation, policy);
        foreach (TagRead read in Reads)
        {
            builder.Add(read);
        }

        return builder.Close(Scenario.To, ReaderClockOffsetAfter);
    }
}
