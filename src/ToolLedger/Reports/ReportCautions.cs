using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>The cautions that every report carries. They can be translated by code; none may be left out.</summary>
/// <remarks>Thread-safe: immutable.</remarks>
public static class ReportCautions
{
    /// <summary>What the report is, and who decides.</summary>
    public static ReasonKind RecordKeepingAid { get; } = new("caution.record-keeping-aid", "Record-keeping aid: it does not decide that equipment is safe; authorised people and rules do.");

    /// <summary>What a read and its absence mean.</summary>
    public static ReasonKind ReadAndNotRead { get; } = new("caution.read-and-not-read", "\"Not read\" is not missing, and \"read\" is not in the bag. Look, and read the mark.");

    /// <summary>What "complete" means.</summary>
    public static ReasonKind Complete { get; } = new("caution.complete", "\"Complete\" is a basis on record for every line by this policy at that time, not an inspection.");

    /// <summary>What only people can cover.</summary>
    public static ReasonKind CountedByPeople { get; } = new("caution.counted-by-people", "Untagged, multi-piece and counted items are covered only as far as people counted them.");

    /// <summary>What to do if something is unaccounted for.</summary>
    public static ReasonKind StopNow { get; } = new("caution.stop-now", "If anything is unaccounted for, follow the lost-tool procedure now. A re-read releases nothing.");

    /// <summary>A hold stays.</summary>
    public static ReasonKind HoldStays { get; } = new("caution.hold-stays", "A later read never lifts a hold.");

    /// <summary>What percentages are.</summary>
    public static ReasonKind Percentages { get; } = new("caution.percentages", "Percentages, if any, are estimates; water, foil, crowding or a bad antenna upset them all.");

    /// <summary>Where calibration status comes from.</summary>
    public static ReasonKind CalibrationRecords { get; } = new("caution.calibration-records", "Calibration comes from entered records by the convention named; label and laboratory decide.");

    /// <summary>Radiation hazards are not assessed.</summary>
    public static ReasonKind Transmitters { get; } = new("caution.transmitters", "Transmitters near fuel, explosives, medical devices or open avionics need local clearance.");

    /// <summary>Tags come off.</summary>
    public static ReasonKind TagsComeOff { get; } = new("caution.tags-come-off", "Tags are foreign objects too: tag, glue or cap can come off. Mount, list and inspect them.");

    /// <summary>Records name people.</summary>
    public static ReasonKind NamedPeople { get; } = new("caution.named-people", "Records name people: privacy and fairness rules hold. A reported loss is a safety report.");

    /// <summary>Clocks and time zones.</summary>
    public static ReasonKind Clocks { get; } = new("caution.clocks", "Times carry their offset (no date: the day of the kit's answer); a corrected clock is named.");

    /// <summary>All twelve, in the order they are printed.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
    [
        RecordKeepingAid, ReadAndNotRead, Complete, CountedByPeople, StopNow, HoldStays,
        Percentages, CalibrationRecords, Transmitters, TagsComeOff, NamedPeople, Clocks,
    ];
}
