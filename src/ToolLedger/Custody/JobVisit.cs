using System;
using System.Text.Json;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>A kit was taken to a job: from then on whatever is not accounted for may have been left there.</summary>
/// <remarks>
/// A visit lasts from <see cref="RecordEntry.At"/> to <see cref="Until"/>, or to the <see cref="JobDeparture"/> that names it, or goes on. Visits may overlap: a kit can serve two
/// jobs at once. Immutable and thread-safe.
/// </remarks>
public sealed class JobVisit : CustodyEntry
{
    /// <inheritdoc/>
    public override string Kind => CustodyKinds.JobVisit;

    /// <summary>The kit.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required KitId Kit { get; init => field = Given(value, value.IsEmpty, "A visit needs its kit."); }

    /// <summary>The job.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required JobId Job { get; init => field = Given(value, value.IsEmpty, "A visit needs its job."); }

    /// <summary>What is worked on; empty (the default) if not stated.</summary>
    public EquipmentId Equipment { get; init; }

    /// <summary>When the kit left again; null (the default) if not yet, or if a <see cref="JobDeparture"/> says so.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public DateTimeOffset? Until { get; init => field = RecordTime.RequireOrNull(value, nameof(value)); }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("kit"u8, Kit.Value);
        writer.WriteString("job"u8, Job.Value);
        writer.WriteIfGiven("equipment", Equipment.Value);
        writer.WriteTime("until", Until);
    }

    internal static JobVisit? Read(EntryFields fields) => fields.Made(static f => new JobVisit
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Kit = f.Kit("kit"),
        Job = new JobId(f.Text("job")),
        Equipment = f.Optional("equipment", static text => new EquipmentId(text)),
        Until = f.OptionalTime("until"),
    });
}
