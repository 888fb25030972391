using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reads;

/// <summary>Makes a presentation of its stored form and reports everything that is wrong with it.</summary>
internal sealed class PresentationReader
{
    private const decimal OffsetLimit = 36_525m * 86_400m;

    private readonly RecordReader _reader;
    private readonly IssueList _issues;

    internal PresentationReader(IssueList issues)
    {
        _issues = issues;
        _reader = new RecordReader(issues);
    }

    internal Presentation? Read(PresentationFile file)
    {
        _reader.RefuseUnknown(file, "$");
        string? session = _reader.Text(file.Session, "$", "session", IdText.MaxLength);
        ReadStation? station = Station(file.Station);
        KitId[] kits = Kits(file.Kits);
        DateTimeOffset? from = _reader.Time(file.From, "$", "from");
        DateTimeOffset? until = _reader.OptionalTime(file.Until, "$", "until");
        DateTimeOffset[] passStarts = PassStarts(file.PassStarts ?? []);
        TimeSpan? before = Offset(file.ReaderClockOffsetSeconds, "readerClockOffsetSeconds");
        TimeSpan? after = Offset(file.ReaderClockOffsetAfterSeconds, "readerClockOffsetAfterSeconds");
        ReportedLoss[] losses = Losses(file.Losses ?? []);
        NearbyKit[] nearby = NearbyKits(file.NearbyKits ?? []);
        SurroundingsChange[] changes = SurroundingsChanges(file.SurroundingsChanges ?? []);
        ReadTimeSource source = TimeSource(file.TimeSource);
        if (_issues.Reported > 0)
        {
            return null;
        }

        var presentation = new Presentation
        {
            Id = new SessionId(session!),
            Station = station!,
            Kits = kits,
            From = from!.Value,
            Until = until,
            PassStarts = passStarts,
            ReaderClockOffset = before,
            ReaderClockOffsetAfter = after,
            Losses = losses,
            NearbyKits = nearby,
            SurroundingsChanges = changes,
            TimeSource = source,
        };
        presentation.Check(_issues);
        return _issues.Reported == 0 ? presentation : null;
    }

    private ReadStation? Station(StationRecord? record)
    {
        if (record is null)
        {
            _reader.Missing("$", "station");
            return null;
        }

        _reader.RefuseUnknown(record, "$.station");
        string? id = _reader.Text(record.Id, "$.station", "id", IdText.MaxLength);
        if (record.Antennas is null)
        {
            _reader.Missing("$.station", "antennas");
        }

        List<AntennaPort> antennas = [];
        for (int i = 0; i < Math.Min(record.Antennas?.Count ?? 0, ReadStation.MaxAntennaCount + 1); i++)
        {
            antennas.Add(Antenna(record.Antennas![i], "$.station", Item("antennas", i), required: true));
        }

        List<ControlTag> controls = [];
        for (int i = 0; i < Math.Min(record.ControlTags?.Count ?? 0, ReadStation.MaxControlTagCount + 1); i++)
        {
            string place = "$." + Item("station.controlTags", i);
            if (_reader.NotNull(record.ControlTags![i], place) is { } control)
            {
                controls.Add(Control(control, place));
            }
        }

        if (_issues.Reported == 0)
        {
            RequireDistinct("$.station.antennas", PresentationRules.StationAntennas, antennas, 1, ReadStation.MaxAntennaCount);
            RequireDistinct("$.station.controlTags", PresentationRules.StationControlTags, controls, 0, ReadStation.MaxControlTagCount);
        }

        return _issues.Reported > 0 ? null
            : new ReadStation { Id = new StationId(id!), Antennas = antennas, ControlTags = controls };
    }

    private ControlTag Control(ControlTagRecord record, string place)
    {
        _reader.RefuseUnknown(record, place);
        string? text = _reader.Text(record.Tag, place, "tag", JsonLimits.RecordTextByteCount);
        TagId tag = default;
        if (text is not null && (!TagId.TryParse(text, out tag) || tag.IsEmpty))
        {
            _reader.Report(place + ".tag", new Reason(PresentationRules.BadTag, ("found", SafeText.Excerpt(text))));
        }

        return new ControlTag(tag, Antenna(record.Antenna, place, "antenna", required: false));
    }

    private AntennaPort Antenna(JsonNumber number, string place, string member, bool required)
    {
        int? port = required
            ? _reader.Int32(number, place, member, 1, byte.MaxValue)
            : _reader.OptionalInt32(number, place, member, 1, byte.MaxValue);
        return AntennaPort.FromNumber((byte)port.GetValueOrDefault());
    }

    private KitId[] Kits(List<JsonText>? texts)
    {
        if (texts is null)
        {
            _reader.Missing("$", "kits");
            return [];
        }

        RequireCount("$.kits", PresentationRules.TooManyKits, texts.Count, Presentation.MaxKitCount);
        HashSet<KitId> kits = [];
        for (int i = 0; i < texts.Count; i++)
        {
            if (_reader.Text(texts[i], "$", Item("kits", i), IdText.MaxLength) is { } kit && !kits.Add(new KitId(kit)))
            {
                _reader.Report("$." + Item("kits", i), new Reason(PresentationRules.SameKitTwice, ("kit", kit)));
            }
        }

        return [.. kits];
    }

    private DateTimeOffset[] PassStarts(List<JsonText> texts)
    {
        RequireCount("$.passStarts", PresentationRules.TooManyPasses, texts.Count + 1, Presentation.MaxPassCount);
        List<DateTimeOffset> starts = [];
        for (int i = 0; i < texts.Count; i++)
        {
            if (_reader.Time(texts[i], "$", Item("passStarts", i)) is { } start)
            {
                if (starts.Count > 0 && start <= starts[^1])
                {
                    _reader.Report("$." + Item("passStarts", i), new Reason(PresentationRules.PassOutOfOrder, ("at", RecordTime.ToText(start))));
                }

                starts.Add(start);
            }
        }

        return [.. starts];
    }

    private ReportedLoss[] Losses(List<LossRecord> records)
    {
        RequireCount("$.losses", PresentationRules.TooManyLosses, records.Count, Presentation.MaxLossCount);
        var losses = new ReportedLoss[records.Count];
        for (int i = 0; i < losses.Length; i++)
        {
            string place = "$." + Item("losses", i);
            if (_reader.NotNull(records[i], place) is not { } record)
            {
                continue;
            }

            _reader.RefuseUnknown(record, place);
            string? word = _reader.Text(record.Kind, place, "kind", IdText.MaxLength);
            SessionLoss kind = default;
            if (word is not null && !SessionLossWords.TryParse(word, out kind))
            {
                _reader.Report(place + ".kind", new Reason(RecordRules.UnknownWord, ("allowed", SessionLossWords.All), ("found", word)));
            }

            DateTimeOffset? at = _reader.Time(record.At, place, "at");
            losses[i] = new ReportedLoss(kind, at.GetValueOrDefault(), Antenna(record.Antenna, place, "antenna", required: false));
        }

        return losses;
    }

    private NearbyKit[] NearbyKits(List<NearbyKitRecord?> records)
    {
        RequireCount("$.nearbyKits", PresentationRules.TooManyNearbyKits, records.Count, Presentation.MaxNearbyKitCount);
        var nearby = new List<NearbyKit>();
        for (int i = 0; i < Math.Min(records.Count, Presentation.MaxNearbyKitCount); i++)
        {
            string place = "$." + Item("nearbyKits", i);
            if (_reader.NotNull(records[i], place) is not { } record)
            {
                continue;
            }

            _reader.RefuseUnknown(record, place);
            string? kit = _reader.Text(record.Kit, place, "kit", IdText.MaxLength);
            DateTimeOffset? from = _reader.Time(record.From, place, "from");
            DateTimeOffset? until = _reader.OptionalTime(record.Until, place, "until");
            if (kit is not null && from is not null)
            {
                nearby.Add(new NearbyKit(new KitId(kit), from.Value, until));
            }
        }

        return [.. nearby];
    }

    private SurroundingsChange[] SurroundingsChanges(List<SurroundingsChangeRecord?> records)
    {
        RequireCount("$.surroundingsChanges", PresentationRules.TooManySurroundingsChanges, records.Count, Presentation.MaxSurroundingsChangeCount);
        var changes = new List<SurroundingsChange>();
        for (int i = 0; i < Math.Min(records.Count, Presentation.MaxSurroundingsChangeCount); i++)
        {
            string place = "$." + Item("surroundingsChanges", i);
            if (_reader.NotNull(records[i], place)?.Read(_reader, place) is { } change)
            {
                changes.Add(change);
            }
        }

        return [.. changes];
    }

    private ReadTimeSource TimeSource(JsonText text)
    {
        string? word = _reader.OptionalText(text, "$", "timeSource", IdText.MaxLength);
        if (word is not (null or Presentation.ReaderClockWord or Presentation.HostArrivalWord))
        {
            _reader.Report("$.timeSource", new Reason(
                RecordRules.UnknownWord, ("allowed", Presentation.ReaderClockWord + ", " + Presentation.HostArrivalWord), ("found", word)));
        }

        return string.Equals(word, Presentation.HostArrivalWord, StringComparison.Ordinal) ? ReadTimeSource.HostArrival : ReadTimeSource.ReaderClock;
    }

    private TimeSpan? Offset(JsonNumber number, string member)
    {
        if (!_reader.IsNumber(number, "$", member))
        {
            return null;
        }

        if (number.Value is not { } seconds || seconds > OffsetLimit || seconds < -OffsetLimit || decimal.Round(seconds, 7) != seconds)
        {
            _reader.Report("$." + member, new Reason(RecordRules.OutOfRange,
                ("range", "at most 36,525 days in seconds, at most 7 decimals"), ("found", RecordReader.TextOf(number))));
            return null;
        }

        return TimeSpan.FromTicks((long)(seconds * TimeSpan.TicksPerSecond));
    }

    private void RequireCount(string place, ReasonKind kind, int count, int limit)
    {
        if (count > limit)
        {
            _reader.Report(place, new Reason(kind, ("count", Text(count)), ("limit", Text(limit))));
        }
    }

    private void RequireDistinct<T>(string place, ReasonKind kind, List<T> items, int lowest, int highest)
    {
        int distinct = items.Distinct().Count();
        if (items.Count < lowest || items.Count > highest || distinct != items.Count)
        {
            _reader.Report(place, new Reason(kind, ("limit", Text(highest)), ("count", Text(items.Count)), ("distinct", Text(distinct))));
        }
    }

    private static string Item(string member, int index) => string.Create(CultureInfo.InvariantCulture, $"{member}[{index}]");

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
