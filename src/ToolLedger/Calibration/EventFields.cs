using System;
using System.Collections.Generic;
using System.Text.Json;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Calibration;

/// <summary>Reads an event of a stored register. After an issue a stand-in is returned, so that reading goes on; what was made of stand-ins is thrown away.</summary>
internal sealed class EventFields
{
    internal const string StandIn = "?";

    // Within the years of records, so that values made from it are accepted.
    private static readonly DateTimeOffset StandInTime = DateTimeOffset.UnixEpoch;

    private EventFields(JsonElement element, string place, IssueList issues)
    {
        Issues = issues;
        Members = new JsonFields(element, place, issues);
        Tool = new ToolId(Members.RequiredText("tool", IdText.MaxLength) ?? StandIn);
        Function = Members.Text("function", null, IdText.MaxLength);
        RecordedAt = Time("recordedAt");
        RecordedBy = new PersonId(Members.RequiredText("recordedBy", IdText.MaxLength) ?? StandIn);
        Note = Members.Text("note", null, CalibrationEvent.MaxNoteLength);
    }

    internal IssueList Issues { get; }

    internal JsonFields Members { get; }

    internal ToolId Tool { get; }

    internal string? Function { get; }

    internal DateTimeOffset RecordedAt { get; }

    internal PersonId RecordedBy { get; }

    internal string? Note { get; }

    /// <summary>The event; null and issues if anything is missing or wrong.</summary>
    internal static CalibrationEvent? Read(JsonElement element, string place, IssueList issues)
    {
        int before = issues.Reported;
        if (element.ValueKind != JsonValueKind.Object)
        {
            issues.Report(place, new Reason(RecordRules.WrongType, ("expected", "an object"), ("found", RecordReader.NameOf(element.ValueKind))));
            return null;
        }

        var fields = new EventFields(element, place, issues);
        Func<EventFields, CalibrationEvent>? read = fields.Word<Func<EventFields, CalibrationEvent>?>("kind",
        [
            (CalibrationPlan.KindWord, CalibrationPlan.Read), (CalibrationLabel.KindWord, CalibrationLabel.Read), (CalibrationCheck.KindWord, CalibrationCheck.Read),
            (ConditionReport.KindWord, ConditionReport.Read), (CalibrationExtension.KindWord, CalibrationExtension.Read), (UsePeriod.KindWord, UsePeriod.Read),
        ]);
        if (issues.Reported > before)
        {
            return null;
        }

        CalibrationEvent made = read!(fields);
        fields.Members.End();
        if (issues.Reported == before)
        {
            made.AddIssues(place, issues);
        }

        return issues.Reported == before ? made : null;
    }

    internal T Word<T>(string name, params ReadOnlySpan<(string Word, T Value)> words) => Members.Require(name) ? Members.Word(name, words[0].Value, words) : words[0].Value;

    internal DateTimeOffset Time(string name) => Members.RequiredTime(name) ?? StandInTime;

    internal IEnumerable<JsonFields> Children(string name, int maxCount)
    {
        Members.Require(name);
        foreach ((JsonElement item, string place) in Members.Items(name, maxCount))
        {
            var child = new JsonFields(item, place, Issues);
            if (child.IsObject)
            {
                yield return child;
                child.End();
            }
        }
    }

    internal Signature SignatureOf(string name)
    {
        JsonFields? child = Members.Require(name) ? Members.Child(name) : null;
        string person = child?.RequiredText("person", IdText.MaxLength) ?? StandIn;
        DateTimeOffset at = child?.RequiredTime("at") ?? StandInTime;
        string? role = child?.Text("role", null, IdText.MaxLength);
        child?.End();
        return new Signature { By = new PersonId(person), At = at, Role = role is null ? default : new Role(role) };
    }
}
