using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Linq;
using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <content>The stored form, and the checks that need more than one member.</content>
public sealed partial class Presentation
{
    internal const string Schema = "toolledger/presentation/1";
    internal const string ReaderClockWord = "reader-clock";
    internal const string HostArrivalWord = "host-arrival";

    /// <summary>The digest of the stored form: SHA-256 over its canonical JSON (RFC 8785).</summary>
    public Digest Digest => Digest.Of(CanonicalJson.Canonicalize(ToJson()));

    /// <summary>Reads the stored form.</summary>
    /// <param name="utf8Json">JSON in UTF-8, at most 64 MiB.</param>
    /// <returns>The presentation.</returns>
    /// <exception cref="RecordException">The JSON was refused; every issue is listed.</exception>
    public static Presentation Parse(ReadOnlySpan<byte> utf8Json) =>
        TryParse(utf8Json, out Presentation? presentation, out IReadOnlyList<RecordIssue> issues) ? presentation
            : throw new RecordException(issues);

    /// <summary>Reads the stored form, without an exception.</summary>
    /// <param name="utf8Json">JSON in UTF-8, at most 64 MiB.</param>
    /// <param name="presentation">The presentation, or null.</param>
    /// <param name="issues">What is wrong; empty when the answer is true.</param>
    /// <returns>Whether it was read.</returns>
    public static bool TryParse(
        ReadOnlySpan<byte> utf8Json, [NotNullWhen(true)] out Presentation? presentation, out IReadOnlyList<RecordIssue> issues)
    {
        IssueList found = [];
        presentation = RecordJson.TryRead(
                utf8Json, ReadsJson.Default.PresentationFile, Schema, JsonLimits.ForRecord(MaxKitCount), found, out PresentationFile? file)
            ? new PresentationReader(found).Read(file)
            : null;
        issues = found;
        return presentation is not null;
    }

    /// <summary>Writes the stored form.</summary>
    /// <returns>JSON in UTF-8, always the same bytes for the same presentation.</returns>
    public byte[] ToJson() => RecordJson.Write(
        new PresentationFile
        {
            Schema = new JsonText(Schema),
            Session = new JsonText(Id.Value),
            Station = new StationRecord
            {
                Id = new JsonText(Station.Id.Value),
                Antennas = [.. Station.Antennas.Select(antenna => new JsonNumber(antenna.Number))],
                ControlTags = Station.ControlTags.Count == 0 ? null : [.. Station.ControlTags.Select(control => new ControlTagRecord
                {
                    Tag = new JsonText(control.Tag.ToString()),
                    Antenna = NumberOf(control.Antenna),
                })],
            },
            Kits = [.. Kits.Select(kit => new JsonText(kit.Value))],
            From = new JsonText(RecordTime.ToText(From)),
            Until = new JsonText(Until is { } until ? RecordTime.ToText(until) : null),
            PassStarts = PassStarts.Count == 0 ? null : [.. PassStarts.Select(start => new JsonText(RecordTime.ToText(start)))],
            ReaderClockOffsetSeconds = SecondsOf(ReaderClockOffset),
            ReaderClockOffsetAfterSeconds = SecondsOf(ReaderClockOffsetAfter),
            Losses = Losses.Count == 0 ? null : [.. Losses.Select(loss => new LossRecord
            {
                Kind = new JsonText(SessionLossWords.Of(loss.Loss)),
                At = new JsonText(RecordTime.ToText(loss.At)),
                Antenna = NumberOf(loss.Antenna),
            })],
            NearbyKits = NearbyKits.Count == 0 ? null : [.. NearbyKits.Select(NearbyKitRecord.Of)],
            SurroundingsChanges = SurroundingsChanges.Count == 0 ? null : [.. SurroundingsChanges.Select(SurroundingsChangeRecord.Of)],
            TimeSource = new JsonText(TimeSource == ReadTimeSource.HostArrival ? HostArrivalWord : null),
        },
        ReadsJson.Default.PresentationFile);

    /// <summary>Reports what does not fit together.</summary>
    internal void Check(IssueList issues)
    {
        if (Until <= From)
        {
            issues.Report("$.until", new Reason(
                PresentationRules.EndBeforeStart, ("until", RecordTime.ToText(Until.Value)), ("from", RecordTime.ToText(From))));
        }

        DateTimeOffset before = From;
        for (int i = 0; i < PassStarts.Count; i++)
        {
            if (PassStarts[i] <= before || PassStarts[i] >= Until)
            {
                issues.Report(
                    string.Create(CultureInfo.InvariantCulture, $"$.passStarts[{i}]"),
                    new Reason(PresentationRules.PassOutOfOrder, ("at", RecordTime.ToText(PassStarts[i]))));
            }

            before = PassStarts[i];
        }

        CheckNearbyKits(issues);
        if (TimeSource == ReadTimeSource.HostArrival && (ReaderClockOffset ?? ReaderClockOffsetAfter) is not null)
        {
            issues.Report("$.timeSource", new Reason(PresentationRules.OffsetOfArrivalTimes));
        }

        for (int i = 0; i < Station.ControlTags.Count; i++)
        {
            ControlTag control = Station.ControlTags[i];
            if (control.Antenna.IsKnown && !Station.HasAntenna(control.Antenna))
            {
                issues.Report(
                    string.Create(CultureInfo.InvariantCulture, $"$.station.controlTags[{i}].antenna"),
                    new Reason(PresentationRules.ControlTagAntenna, ("tag", control.Tag.ToString()), ("antenna", control.Antenna.ToString())));
            }
        }
    }

    private void CheckNearbyKits(IssueList issues)
    {
        for (int i = 0; i < NearbyKits.Count; i++)
        {
            NearbyKit nearby = NearbyKits[i];
            string place = string.Create(CultureInfo.InvariantCulture, $"$.nearbyKits[{i}]");
            if (Presents(nearby.Kit))
            {
                issues.Report(place, new Reason(PresentationRules.NearbyKitPresented, ("kit", nearby.Kit.Value)));
            }

            if (nearby.Until <= nearby.From)
            {
                issues.Report(place + ".until", new Reason(
                    PresentationRules.NearbyEndBeforeStart, ("until", RecordTime.ToText(nearby.Until.Value)), ("from", RecordTime.ToText(nearby.From))));
            }
        }
    }

    internal void RequireConsistent()
    {
        IssueList issues = [];
        Check(issues);
        if (issues.Reported > 0)
        {
            throw new RecordException(issues);
        }
    }

    private static JsonNumber NumberOf(AntennaPort antenna) => antenna.IsKnown ? new JsonNumber(antenna.Number) : default;

    private static JsonNumber SecondsOf(TimeSpan? time) =>
        time is { } value ? new JsonNumber(value.Ticks / (decimal)TimeSpan.TicksPerSecond) : default;
}
