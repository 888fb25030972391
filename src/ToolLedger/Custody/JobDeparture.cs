using System;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>The kit left a job: the end of a <see cref="JobVisit"/> that had none. It accounts for nothing.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class JobDeparture : CustodyEntry
{
    /// <inheritdoc/>
    public override string Kind => CustodyKinds.JobDeparture;

    /// <summary>The visit that ends.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required EntryId Visit { get; init => field = Given(value, value.IsEmpty, "A departure needs the visit that it ends."); }

    private protected override void WriteMembers(Utf8JsonWriter writer) => writer.WriteString("visit"u8, Visit.Value);

    internal static JobDeparture? Read(EntryFields fields) => fields.Made(static f => new JobDeparture
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Visit = f.Entry("visit"),
    });
}
