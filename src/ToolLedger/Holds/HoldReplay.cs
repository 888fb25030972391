using System.Collections.Generic;
using ToolLedger.Custody;
using ToolLedger.Records;

namespace ToolLedger.Holds;

/// <summary>Lets entries about holds take effect one after the other.</summary>
internal static class HoldReplay
{
    private static readonly EntryOrder Order = new(static entry => RankOf((HoldEntry)entry));

    internal static EntryReplay<HoldEntry> Of(HoldJudge judge, IEnumerable<HoldEntry> entries) => new EntryReplay<HoldEntry>(Order, judge.Apply).With(entries);

    /// <summary>Within one instant: what begins a hold, then what was done, then what takes a declaration back, then what ends the hold. So what is said in the same instant can only keep it.</summary>
    private static int RankOf(HoldEntry entry) => entry switch
    {
        MissingDeclaration or DropRecord => 0,
        FoundDeclaration => 2,
        FoundWithdrawal => 3,
        HoldRelease => 5,
        ItemRecovery => 4,
        _ => 1,
    };
}
