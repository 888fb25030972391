using System;
using System.Collections.Generic;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Threading;
using ToolLedger.Reads;
using ToolLedger.Records;

namespace ToolLedger.Presence;

/// <summary>Counts distinct looks: accounted with enough looks on enough antennas or in enough separate passes. A rule of thumb without a stated risk.</summary>
/// <remarks>
/// A look is pass x antenna x time slot, so that a tag that answers a hundred times in one slot has shown itself once. In a degraded session only
/// separate passes give a second view. The default values (P0) are examples of this library, not a directive's. Immutable and thread-safe.
/// </remarks>
public sealed partial class CountingPolicy : PresencePolicy
{
    // Said of most tags, and without a value of their own.
    private static readonly Reason NoLook = new(PresenceReasons.NoLook);
    private static readonly Reason EpcOnly = new(PresenceReasons.EpcOnly);

    private readonly KnownView?[] _known = new KnownView?[256];

    /// <inheritdoc/>
    public override string Kind => "counting";

    /// <summary>Looks needed.</summary>
    /// <value>1 to 100. The default is 3.</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public int LooksNeeded { get; init => field = InRange(value, 1, 100, nameof(LooksNeeded)); } = 3;

    /// <summary>Antennas that make a second view within one pass.</summary>
    /// <value>1 to 64. The default is 2.</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public int AntennasNeeded { get; init => field = InRange(value, 1, 64, nameof(AntennasNeeded)); } = 2;

    /// <summary>Separate passes that make a second view instead.</summary>
    /// <value>1 to 100. The default is 2.</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public int PassesNeeded { get; init => field = InRange(value, 1, 100, nameof(PassesNeeded)); } = 2;

    /// <summary>Separate passes needed where looks of degraded sessions count; antennas then do not help.</summary>
    /// <value>1 to 100. The default is 2.</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public int DegradedPassesNeeded { get; init => field = InRange(value, 1, 100, nameof(DegradedPassesNeeded)); } = 2;

    /// <summary>Whether reads without a chip number (TID) may account for a tool; they are labelled either way. Where not, only looks of sessions in
    /// which the chip number was reported count: another session may have heard a copy.</summary>
    /// <value>The default is true.</value>
    public bool EpcOnlyAccepted { get; init; } = true;

    /// <inheritdoc/>
    public override PresenceJudgement Judge(PresenceEvidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        var reasons = new List<Reason>(2);
        int looks = evidence.LookCount;
        if (looks == 0)
        {
            reasons.Add(NoLook);
            AddHistory(evidence, reasons, isSilent: true);
            return new PresenceJudgement(PresenceState.NotRead, reasons);
        }

        View all = ViewOf(evidence, degradedToo: true, withTidOnly: false);
        View valid = ViewOf(evidence, degradedToo: false, withTidOnly: false);
        bool enough = IsEnough(all, valid);
        if (enough && (EpcOnlyAccepted
            || IsEnough(ViewOf(evidence, degradedToo: true, withTidOnly: true), ViewOf(evidence, degradedToo: false, withTidOnly: true))))
        {
            reasons.Add(new Reason(
                PresenceReasons.EnoughLooks, ("looks", Text(all.Looks)), ("antennas", Text(all.Antennas)), ("passes", Text(all.Passes))));
            AddEpcOnly(evidence, reasons);
            return new PresenceJudgement(PresenceState.Accounted, reasons);
        }

        Explain(all, valid, enough, reasons);
        AddBaseline(evidence, reasons);
        AddEpcOnly(evidence, reasons);
        return new PresenceJudgement(PresenceState.Weak, reasons);
    }

    /// <summary>Judges a tag of one good pass and no known history. What was judged alike before is not made again.</summary>
    /// <param name="looks">The looks, 0 or more.</param>
    /// <param name="antennas">The different antennas among them.</param>
    /// <param name="hasTid">Whether its TID was read.</param>
    /// <returns>The same as <see cref="Judge"/>.</returns>
    internal PresenceJudgement JudgeOnePass(int looks, int antennas, bool hasTid)
    {
        KnownView?[] known = _known;
        ref KnownView? place = ref known[((looks * 31) + (antennas * 2) + (hasTid ? 1 : 0)) & (known.Length - 1)];
        KnownView? view = place;
        if (view is null || view.Looks != looks || view.Antennas != antennas || view.HasTid != hasTid)
        {
            // Two threads may make the same one: whichever stays says the same.
            view = new KnownView(looks, antennas, hasTid, Judge(OnePass(looks, antennas, hasTid)));
            Volatile.Write(ref place, view);
        }

        return view.Judgement;
    }

    private static PresenceEvidence OnePass(int looks, int antennas, bool hasTid)
    {
        int tidLooks = hasTid ? looks : 0;
        var views = new AntennaEvidence[antennas];
        for (int i = 0; i < antennas; i++)
        {
            views[i] = new AntennaEvidence(default, new AntennaPort((byte)(i + 1)), IsDegraded: false, looks) { TidLookCount = tidLooks };
        }

        return new PresenceEvidence
        {
            Tag = default,
            Passes = looks == 0 ? [] : [new PassEvidence(default, 1, IsDegraded: false, looks, looks) { TidLookCount = tidLooks }],
            Antennas = views,
            HasTid = hasTid,
        };
    }

    private bool IsEnough(View all, View valid)
        => IsEnough(valid) || (all.Looks >= LooksNeeded && all.Passes >= DegradedPassesNeeded && all.Passes >= PassesNeeded);

    private bool IsEnough(View view)
        => view.Looks >= LooksNeeded && (view.Antennas >= AntennasNeeded || view.Passes >= PassesNeeded);

    private void Explain(View all, View valid, bool enough, List<Reason> reasons)
    {
        if (enough)
        {
            reasons.Add(new Reason(PresenceReasons.EpcOnlyNotAccepted));
        }
        else if (all.Looks < LooksNeeded)
        {
            reasons.Add(new Reason(PresenceReasons.FewLooks, ("looks", Text(all.Looks)), ("needed", Text(LooksNeeded))));
        }
        else if (all.Looks > valid.Looks)
        {
            reasons.Add(new Reason(
                PresenceReasons.DegradedStation,
                ("passes", Text(all.Passes)),
                ("passesNeeded", Text(int.Max(DegradedPassesNeeded, PassesNeeded)))));
        }
        else
        {
            reasons.Add(new Reason(
                PresenceReasons.OneView,
                ("antennas", Text(all.Antennas)),
                ("passes", Text(all.Passes)),
                ("antennasNeeded", Text(AntennasNeeded)),
                ("passesNeeded", Text(PassesNeeded))));
        }
    }

    private static void AddEpcOnly(PresenceEvidence evidence, List<Reason> reasons)
    {
        if (!evidence.HasTid)
        {
            reasons.Add(EpcOnly);
        }
    }

    internal static void AddBaseline(PresenceEvidence evidence, List<Reason> reasons)
    {
        const int WorthSaying = 600; // 6 dB, half the field strength: common practice for "clearly weaker"
        if (evidence is { Strongest: { } strongest, History.StrengthBaseline: { } baseline } && baseline.CentiDbm - strongest.CentiDbm >= WorthSaying)
        {
            string decibels = ((baseline.CentiDbm - strongest.CentiDbm) / 100m).ToString("0.#", CultureInfo.InvariantCulture);
            reasons.Add(new Reason(PresenceReasons.BelowBaseline, ("decibels", decibels)));
        }
    }

    /// <param name="evidence">The evidence with its history.</param>
    /// <param name="reasons">Gets what the history says.</param>
    /// <param name="isSilent">True for a silent tag; of one that was heard a history only says where it is poor.</param>
    internal static void AddHistory(PresenceEvidence evidence, List<Reason> reasons, bool isSilent)
    {
        if (evidence.History is not { SessionsPresented: > 0 } history)
        {
            return;
        }

        // Ours: under two thirds a tag explains its own silence; from nine tenths its silence is worth the first look.
        ReasonKind? kind = history.SessionsRead * 3L < history.SessionsPresented * 2L ? PresenceReasons.PoorHistory
            : isSilent && history.SessionsRead * 10L >= history.SessionsPresented * 9L ? PresenceReasons.GoodHistory
            : null;
        if (kind is not null)
        {
            reasons.Add(new Reason(kind, ("read", Text(history.SessionsRead)), ("presented", Text(history.SessionsPresented))));
        }
    }

    private static View ViewOf(PresenceEvidence evidence, bool degradedToo, bool withTidOnly)
    {
        int looks = 0, passes = 0, antennas = 0;
        bool unnamed = false;
        for (int i = 0; i < evidence.Passes.Count; i++)
        {
            PassEvidence pass = evidence.Passes[i];
            int counted = withTidOnly ? (degradedToo || !pass.IsDegraded ? pass.TidLookCount : 0)
                : degradedToo ? pass.LookCount : pass.ValidLookCount;
            if (counted > 0)
            {
                looks += counted;
                passes++;
            }
        }

        for (int i = 0; i < evidence.Antennas.Count; i++)
        {
            AntennaEvidence antenna = evidence.Antennas[i];
            if ((degradedToo || !antenna.IsDegraded) && (!withTidOnly || antenna.TidLookCount > 0))
            {
                antennas += antenna.Antenna.IsKnown ? 1 : 0;
                unnamed |= !antenna.Antenna.IsKnown;
            }
        }

        // Reports that name no antenna may come from one that was named: they make a view only where there is no other.
        return new View(looks, passes, antennas == 0 && unnamed ? 1 : antennas);
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static int InRange(int value, int min, int max, string name)
        => value >= min && value <= max ? value : throw new ArgumentOutOfRangeException(name, value, string.Create(CultureInfo.InvariantCulture, $"{name} must be {min} to {max}."));

    private sealed record KnownView(int Looks, int Antennas, bool HasTid, PresenceJudgement Judgement);

    [StructLayout(LayoutKind.Auto)]
    private readonly record struct View(int Looks, int Passes, int Antennas);
}
