using System;
using System.Collections.Generic;
using System.Collections.ObjectModel;
using System.Globalization;
using System.Linq;
using System.Threading;
using ToolLedger.Reads;
using ToolLedger.Statistics;

namespace ToolLedger.Presence;

/// <summary>Accounts for a tool where the risk that it is not there, by a stated model of how tags answer, is so small that a whole kit may be signed at a stated risk.</summary>
/// <remarks>
/// The probability is that of the model, bounded so that another read never lowers it, and the smallest over a box around the model's shares. It is as good as the model: its parameters are learned from
/// confirmed sessions, and the default ones are an example of this library. Immutable and thread-safe.
/// </remarks>
public sealed partial class StatedRiskPolicy : PresencePolicy
{
    private const int ShapesKept = 32;

    private readonly KnownShape?[] _shapes = new KnownShape?[ShapesKept];
    private RiskBox? _box;

    /// <inheritdoc/>
    public override string Kind => "stated-risk";

    /// <summary>How tags that are there, and strays, answer, where <see cref="Models"/> says nothing of them: best those of the poorest mounting.</summary>
    /// <value>The default is <see cref="DetectionModel.Example"/>.</value>
    /// <exception cref="ArgumentNullException">Null.</exception>
    public DetectionModel Model
    {
        get;
        init => field = value ?? throw new ArgumentNullException(nameof(value));
    } = DetectionModel.Example;

    /// <summary>How tags of a mounting class answer at a station, as learned there; in order of station and class, whatever the order given.</summary>
    /// <value>At most 1,000 entries. The default is none.</value>
    /// <exception cref="ArgumentNullException">The list or an entry is null.</exception>
    /// <exception cref="ArgumentException">There are too many, or two for the same tags.</exception>
    public IReadOnlyList<StationModel> Models
    {
        get;
        init => field = Sorted(value);
    } = [];

    /// <summary>The probability with which a kit may hold an accounted tool that is not there: the limit of what is expected of all such kits, and of each one.</summary>
    /// <value>0.000000001 to 0.5. The default is 0.001 (ours).</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public decimal KitRiskLimit { get; init => field = InRange(value, 0.000000001m, 0.5m, nameof(KitRiskLimit)); } = 0.001m;

    /// <summary>No line is accounted at a larger risk of its own, however small the kit is.</summary>
    /// <value>0.000000001 to 0.5. The default is 0.01 (ours).</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public decimal LineRiskMax { get; init => field = InRange(value, 0.000000001m, 0.5m, nameof(LineRiskMax)); } = 0.01m;

    /// <summary>By how much the obscured share and the stray share may be wrong, both ways, without the claim becoming wrong.</summary>
    /// <value>1 to 10. The default is 2 (ours).</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public decimal RobustnessFactor { get; init => field = InRange(value, 1, 10, nameof(RobustnessFactor)); } = 2;

    /// <summary>The probability before the session that a tool is not there, where nothing else is said of it.</summary>
    /// <value>0.000001 to 0.9. The default is 0.01 (ours).</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public decimal AbsentShare { get; init => field = InRange(value, MinAbsentShare, MaxAbsentShare, nameof(AbsentShare)); } = 0.01m;

    /// <summary>The same by what custody knew of a tool when the session began; the reconciler looks it up for every line.</summary>
    /// <value>The default is the example values of <see cref="Presence.CustodyShares"/>.</value>
    /// <exception cref="ArgumentNullException">Null.</exception>
    public CustodyShares CustodyShares
    {
        get;
        init => field = value ?? throw new ArgumentNullException(nameof(value));
    } = new();

    /// <summary>The probability before the session that the whole kit is somewhere else; it explains the silence of a whole kit and moves no line.</summary>
    /// <value>0 to 0.9. The default is 0.02 (ours).</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public decimal KitAwayShare { get; init => field = InRange(value, 0, MaxAbsentShare, nameof(KitAwayShare)); } = 0.02m;

    /// <summary>The probability before the session that the reader hears nothing of a kit, where nothing else was heard that shows it at work; it explains silence and moves no line.</summary>
    /// <value>0 to 0.9. The default is 0.005 (ours).</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public decimal ReaderDownShare { get; init => field = InRange(value, 0, MaxAbsentShare, nameof(ReaderDownShare)); } = 0.005m;

    /// <summary>The number of lines a kit is taken to have where nobody says it.</summary>
    /// <value>1 to 100,000. The default is 500 (ours): larger is more cautious.</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public int LineCountAssumed { get; init => field = (int)InRange(value, 1, MaxLineCount, nameof(LineCountAssumed)); } = 500;

    /// <summary>Whether reads without a chip number (TID) may account for a tool, as in <see cref="CountingPolicy.EpcOnlyAccepted"/>.</summary>
    /// <value>The default is true.</value>
    public bool EpcOnlyAccepted { get; init; } = true;

    /// <summary>The most lines of a kit.</summary>
    public const int MaxLineCount = 100_000;

    /// <summary>The most models beside <see cref="Model"/>.</summary>
    public const int MaxModelCount = 1_000;

    /// <summary>Most passes of one tag that are weighed; of more, those that offered most looks.</summary>
    public const int MaxPassCount = PassKey.MaxPasses;

    internal const decimal MinAbsentShare = 0.000001m;
    internal const decimal MaxAbsentShare = 0.9m;

    /// <summary>The same policy with other models by station and mounting, such as those learned since.</summary>
    /// <param name="models">As for <see cref="Models"/>.</param>
    /// <returns>A policy that differs in nothing else.</returns>
    /// <exception cref="ArgumentNullException">The list or an entry is null.</exception>
    /// <exception cref="ArgumentException">There are too many, or two for the same tags.</exception>
    public StatedRiskPolicy WithModels(IReadOnlyList<StationModel> models) => new()
    {
        Model = Model,
        Models = models,
        KitRiskLimit = KitRiskLimit,
        LineRiskMax = LineRiskMax,
        RobustnessFactor = RobustnessFactor,
        AbsentShare = AbsentShare,
        CustodyShares = CustodyShares,
        KitAwayShare = KitAwayShare,
        ReaderDownShare = ReaderDownShare,
        LineCountAssumed = LineCountAssumed,
        EpcOnlyAccepted = EpcOnlyAccepted,
    };

    internal static bool IsAbsentShare(decimal share) => share is >= MinAbsentShare and <= MaxAbsentShare && decimal.Round(share, 9) == share;

    internal override bool WeighsSilence => true;

    internal RiskBox Box => _box ??= new RiskBox(Model, Models, RobustnessFactor);

    /// <summary>A model by its number, as <see cref="PassLooks.Model"/>.</summary>
    internal DetectionModel ModelOf(int number) => number == 0 ? Model : Models[number - 1].Model;

    /// <summary>The number of the model of tags of a mounting class at a station.</summary>
    internal int NumberOf(StationId station, string? mounting)
    {
        int low = 0, high = Models.Count;
        while (low < high)
        {
            int middle = (low + high) / 2;
            int order = string.CompareOrdinal(Models[middle].Station.Value, station.Value);
            order = order != 0 ? order : string.CompareOrdinal(Models[middle].Mounting, mounting);
            if (order == 0)
            {
                return middle + 1;
            }

            (low, high) = order < 0 ? (middle + 1, high) : (low, middle);
        }

        return 0;
    }

    /// <summary>Decides on one tag. Nothing is allocated where passes of the same looks were decided on shortly before, as for the tags of one kit.</summary>
    /// <param name="passes">What each pass showed; at most 6.</param>
    /// <param name="lineCount">The lines of the kit; 1 to 100,000.</param>
    /// <param name="absentShare">The probability before the session that the tool is not there, 0.000001 to 0.9, from custody for instance; null for <see cref="AbsentShare"/>.</param>
    /// <returns>The decision with its risk.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There are too many passes, or a number is out of its range.</exception>
    public PresenceDecision Decide(ReadOnlySpan<PassLooks> passes, int lineCount, decimal? absentShare = null)
    {
        Check(passes, lineCount);
        decimal absent = absentShare is { } share ? InRange(share, MinAbsentShare, MaxAbsentShare, nameof(absentShare)) : AbsentShare;
        ref KnownShape? place = ref _shapes[KnownShape.HashOf(passes, lineCount, absent) & (ShapesKept - 1)];
        KnownShape? shape = Volatile.Read(ref place);
        if (shape is null || !shape.Fits(passes, lineCount, absent))
        {
            // Two threads may make it twice: whichever stays says the same.
            int prior = PriorOf(absent);
            shape = new KnownShape(Box, passes, lineCount, absent, prior, ThresholdOf(Box, passes, lineCount, absent, prior));
            Volatile.Write(ref place, shape);
        }

        if (!shape.TryScore(passes, out EvidenceScore score, out bool isRead))
        {
            score = Box.ScoreOf(passes, out isRead);
        }

        PresenceState state = PresenceState.NotRead;
        foreach (PassLooks pass in passes)
        {
            state = pass.Reads > 0 ? PresenceState.Weak : state;
        }

        return new PresenceDecision(isRead && score.Least >= shape.Threshold ? PresenceState.Accounted : state, shape.Prior, score, shape.Threshold);
    }

    /// <summary>The probability that a tool that is not there is accounted for, at the worst corner of the robustness box. Exact for usual passes (of the example model six of 100 looks,
    /// three of 600, two of 2,400); where all sums of scores would take more than 2^27 steps the scores are rounded up for it, so that it is no less than the exact one, and the cut is made by the same sums.</summary>
    /// <param name="passes">The looks that each pass offers; reads are not looked at. At most 6.</param>
    /// <param name="lineCount">The lines of the kit; 1 to 100,000.</param>
    /// <param name="absentShare">As in <see cref="Decide"/>.</param>
    /// <returns>0 to 1: times the lines and the absent share at most <see cref="KitRiskLimit"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There are too many passes, or a number is out of its range.</exception>
    public double ChanceAccountedWhenAbsent(ReadOnlySpan<PassLooks> passes, int lineCount, decimal? absentShare = null)
    {
        Check(passes, lineCount);
        decimal absent = absentShare is { } share ? InRange(share, MinAbsentShare, MaxAbsentShare, nameof(absentShare)) : AbsentShare;

        // A sum of chances at different corners can pass 1.
        return double.Min(1, Box.SpreadOf(passes).AtLeast(ThresholdOf(Box, passes, lineCount, absent, PriorOf(absent))));
    }

    /// <summary>The lowest score of evidence that accounts for a line: within the kit's limit for all such lines, and within the line's own.</summary>
    private int ThresholdOf(RiskBox box, ReadOnlySpan<PassLooks> passes, int lineCount, decimal absent, int prior)
    {
        int byKit = box.SpreadOf(passes).Threshold((double)(KitRiskLimit / (lineCount * absent)));
        int own = PassScores.Limit - PassScores.ToScore(64 - LogOddsOf(LineRiskMax));
        return byKit == int.MaxValue ? byKit : int.Max(byKit, own - prior);
    }

    private static int PriorOf(decimal absent) => PassScores.ToScore(LogOddsOf(absent));

    private static double LogOddsOf(decimal risk) => Elementary.Log((double)((1 - risk) / risk));

    private void Check(ReadOnlySpan<PassLooks> passes, int lineCount)
    {
        if (passes.Length > MaxPassCount)
        {
            throw new ArgumentOutOfRangeException(nameof(passes), passes.Length, "At most 6 passes are weighed.");
        }

        if (lineCount is < 1 or > MaxLineCount)
        {
            throw new ArgumentOutOfRangeException(nameof(lineCount), lineCount, "A kit has 1 to 100,000 lines.");
        }

        foreach (PassLooks pass in passes)
        {
            if (pass.Looks is < 0 or > DetectionModel.MaxLooks || pass.Reads < 0 || pass.Reads > pass.Looks)
            {
                throw new ArgumentOutOfRangeException(nameof(passes), pass, "A pass has 0 to 65,535 looks and no more reads than looks.");
            }

            if ((uint)pass.Model > (uint)Models.Count)
            {
                throw new ArgumentOutOfRangeException(nameof(passes), pass, "The policy has no model of that number.");
            }
        }
    }

    private static ReadOnlyCollection<StationModel> Sorted(IReadOnlyList<StationModel> models)
    {
        ArgumentNullException.ThrowIfNull(models);
        StationModel[] copy = [.. models.Take(MaxModelCount + 1)];
        if (copy.Length > MaxModelCount)
        {
            throw new ArgumentException("A policy has at most 1,000 models.", nameof(models));
        }

        foreach (StationModel model in copy)
        {
            ArgumentNullException.ThrowIfNull(model, nameof(models));
        }

        Array.Sort(copy, StationModel.Compare);
        for (int i = 1; i < copy.Length; i++)
        {
            if (StationModel.Compare(copy[i - 1], copy[i]) == 0)
            {
                throw new ArgumentException(StationModel.Twice(copy[i]).ToString(), nameof(models));
            }
        }

        return Array.AsReadOnly(copy);
    }

    private static decimal InRange(decimal value, decimal min, decimal max, string name) => value >= min && value <= max && decimal.Round(value, 9) == value
        ? value
        : throw new ArgumentOutOfRangeException(name, value, string.Create(CultureInfo.InvariantCulture, $"{name} must be {min} to {max} with at most 9 decimals."));
}
