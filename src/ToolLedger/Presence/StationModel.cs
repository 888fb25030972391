using System;
using System.Collections.Generic;
using System.Text.Json;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Presence;

/// <summary>How tags of one mounting class, and strays, answer at one station.</summary>
/// <remarks>Immutable and thread-safe; compared by value.</remarks>
public sealed record StationModel
{
    /// <summary>Makes an entry.</summary>
    /// <param name="station">The station; not empty.</param>
    /// <param name="mounting">The class as bindings name it (<see cref="TagBinding.TagModel"/>), compared ordinally; null for tags of which none is stated.</param>
    /// <param name="model">The model.</param>
    /// <exception cref="ArgumentException">The station is empty, or the class is no text of 1 to 64 printable characters.</exception>
    /// <exception cref="ArgumentNullException">The model is null.</exception>
    public StationModel(StationId station, string? mounting, DetectionModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        Station = station.IsEmpty ? throw new ArgumentException("A model belongs to a station.", nameof(station)) : station;
        Mounting = RecordText.RequireOrNull(mounting, TagBinding.MaxModelLength, nameof(mounting));
        Model = model;
    }

    /// <summary>The station.</summary>
    public StationId Station { get; }

    /// <summary>The mounting class; null for tags of which none is stated.</summary>
    public string? Mounting { get; }

    /// <summary>The model.</summary>
    public DetectionModel Model { get; }

    internal static int Compare(StationModel left, StationModel right)
    {
        int order = string.CompareOrdinal(left.Station.Value, right.Station.Value);
        return order != 0 ? order : string.CompareOrdinal(left.Mounting, right.Mounting);
    }

    internal static Reason Twice(StationModel model) => new(
        DetectionModelRules.ModelTwice, ("station", model.Station.Value), ("mounting", model.Mounting ?? "not stated"));

    /// <summary>Reads {"station", "mounting"?} and the members of a model; all entries or none.</summary>
    internal static IReadOnlyList<StationModel> FromFields(JsonFields owner, IssueList issues)
    {
        int before = issues.Reported;
        var found = new List<StationModel>();
        var seen = new HashSet<(string Station, string? Mounting)>();
        foreach (JsonFields fields in owner.Objects("models", StatedRiskPolicy.MaxModelCount))
        {
            int clean = issues.Reported;
            string? station = fields.RequiredText("station", IdText.MaxLength);
            string? mounting = fields.Text("mounting", null, TagBinding.MaxModelLength);
            DetectionModel model = DetectionModel.FromFields(fields, issues);
            if (issues.Reported > clean || station is null)
            {
                continue;
            }

            var entry = new StationModel(new StationId(station), mounting, model);
            if (!seen.Add((station, mounting)))
            {
                fields.Report("station", Twice(entry));
            }

            found.Add(entry);
        }

        return issues.Reported > before ? [] : found;
    }

    internal void WriteJson(Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        writer.WriteString("station"u8, Station.Value);
        if (Mounting is not null)
        {
            writer.WriteString("mounting"u8, Mounting);
        }

        Model.WriteMembers(writer);
        writer.WriteEndObject();
    }
}
