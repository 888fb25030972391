using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Tools;

namespace ToolLedger.Tests.Reconciliation.Closeouts;

/// <summary>What is true of one closeout, drawn from its seed. Shares are inventions, chosen so that ten thousand closeouts hold thousands of tools in every place.</summary>
internal sealed class CloseoutTruth
{
    private readonly Dictionary<ToolId, TruePlace> places = [];

    public CloseoutTruth(int seed, IEnumerable<ToolId> tools)
    {
        var random = new Random(seed);
        IsWet = random.Next(20) == 0;
        BrokenAntenna = random.Next(20) == 0;
        ReaderDropsOut = random.Next(20) == 0;
        StationDies = random.Next(40) == 0;
        BagPasses = random.Next(4) == 0;
        KeyIsAbsent = random.Next(40) == 0;
        foreach (ToolId tool in tools)
        {
            int draw = random.Next(200);
            places[tool] = draw switch
            {
                < 4 => TruePlace.Absent,
                < 7 => TruePlace.InAPocketBeside,
                < 10 => TruePlace.InTheNeighboursBag,
                < 12 => TruePlace.InTheBagDeadTag,
                < 18 => TruePlace.InTheBagShielded,
                _ => IsWet ? TruePlace.InTheWetBag : TruePlace.InTheBag,
            };
        }
    }

    /// <summary>The whole bag is wet: radio hardly reaches any tag in it.</summary>
    public bool IsWet { get; }

    /// <summary>Antenna 2 hears nothing from the first minute on.</summary>
    public bool BrokenAntenna { get; }

    /// <summary>The reader is silent for 40 s and does not say so.</summary>
    public bool ReaderDropsOut { get; }

    /// <summary>The reader falls silent before the end and stays so.</summary>
    public bool StationDies { get; }

    /// <summary>A third bag is carried past.</summary>
    public bool BagPasses { get; }

    /// <summary>One key of the set is not there; whoever counts sees it.</summary>
    public bool KeyIsAbsent { get; }

    public bool IsAnyNotInTheBag => places.Values.Any(place => !IsInTheBag(place));

    /// <summary>What whoever counts the set finds: nine keys and their holder, less what is not there.</summary>
    public int CountInSet(ToolId holder) => (KeyIsAbsent ? 8 : 9) + (IsInTheBag(PlaceOf(holder)) ? 1 : 0);

    public TruePlace PlaceOf(ToolId tool) => places[tool];

    public ToolId[] In(params IReadOnlyList<TruePlace> which) => [.. places.Where(pair => which.Contains(pair.Value)).Select(pair => pair.Key)];

    public static bool IsInTheBag(TruePlace place) => place <= TruePlace.InTheBagDeadTag;
}
