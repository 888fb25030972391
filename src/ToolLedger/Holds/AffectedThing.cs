using System;
using ToolLedger.Records;

namespace ToolLedger.Holds;

/// <summary>Something an item could be in: equipment, a job, a place, or several of them together.</summary>
/// <param name="Equipment">The equipment; empty if not stated.</param>
/// <param name="Job">The job; empty if not stated.</param>
/// <param name="Place">The place; empty if not stated.</param>
public readonly record struct AffectedThing(EquipmentId Equipment, JobId Job = default, Place Place = default)
{
    /// <summary>The most of them that one entry names.</summary>
    public const int MaxCount = 1000;

    /// <summary>True if nothing is named.</summary>
    public bool IsEmpty => Equipment.IsEmpty && Job.IsEmpty && Place.IsEmpty;

    /// <summary>Whether a decision about this one is about another too: everything that it names is the same there.</summary>
    /// <param name="other">The other.</param>
    /// <returns>True if nothing that is named here differs there.</returns>
    public bool Covers(AffectedThing other) =>
        !IsEmpty && (Equipment.IsEmpty || Equipment == other.Equipment) && (Job.IsEmpty || Job == other.Job) && (Place.IsEmpty || Place == other.Place);

    /// <summary>Equipment, job and place, as far as stated.</summary>
    /// <returns>Text for people.</returns>
    public override string ToString()
    {
        string[] parts = [Equipment.Value, Job.IsEmpty ? "" : "job " + Job.Value, Place.Value];
        return string.Join(", ", Array.FindAll(parts, static part => part.Length > 0));
    }
}
