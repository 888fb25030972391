namespace ToolLedger.Testing.Laws;

/// <summary>What must hold of every reconciliation, whatever the policy and whatever further rules withhold.</summary>
public enum ReconciliationLaw
{
    /// <summary>Every manifest line gets one conclusion, every read one explanation, and the counts add up.</summary>
    Partition,

    /// <summary>Without a usable session nothing rests on reads; without any evidence nothing is accounted for; an open line keeps the kit open.</summary>
    SafeDefault,

    /// <summary>The order of reads, sessions, lists and entries, and reports delivered twice, change no conclusion, basis or figure.</summary>
    OrderAndRepetition,

    /// <summary>Another genuine read of an expected tag never takes its line from accounted for, and touches no other line.</summary>
    EvidenceHelps,

    /// <summary>Less supporting evidence never settles anything; nor does a dead antenna, an unknown clock, a tag in quarantine or a broken seal, whatever spoke against a line before.</summary>
    DoubtIsMonotone,

    /// <summary>No conclusion says missing, lost, found or released: only people do.</summary>
    NoInvention,

    /// <summary>A count over what is expected is a difference; such a kit is never complete.</summary>
    SurplusMatters,

    /// <summary>What takes effect, is read or is said later changes no answer about an earlier instant.</summary>
    AsOf,

    /// <summary>Calibration never changes accounting, nor accounting calibration.</summary>
    TwoAnswers,

    /// <summary>The same facts give the same answer, whatever the culture of the host and whatever was asked before.</summary>
    Determinism,

    /// <summary>A tag that says a live tool's identity in other bits than bound makes that tool's line a conflict, and its read is never expected nor unknown.</summary>
    OtherWords,

    /// <summary>Every conclusion says why, on which basis and under which policy, and every open one what would settle it.</summary>
    Reasons,

    /// <summary>With a further rule nothing stands better than without it, its place among other rules decides nothing, and its name, version and settings stay what they are.</summary>
    RulesOnlyWithhold,
}
