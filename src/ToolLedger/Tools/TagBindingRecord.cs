using System;
using ToolLedger.Identifiers;
using ToolLedger.Records;

namespace ToolLedger.Tools;

/// <summary>A binding as stored: {"tag", "tid"?, "tool", "from", "until"?, "boundBy"?, "checkedBy"?, "tagModel"?}.</summary>
internal sealed class TagBindingRecord : JsonRecord
{
    public JsonText Tag { get; set; }

    public JsonText Tid { get; set; }

    public JsonText Tool { get; set; }

    public JsonText From { get; set; }

    public JsonText Until { get; set; }

    public JsonText BoundBy { get; set; }

    public JsonText CheckedBy { get; set; }

    public JsonText TagModel { get; set; }

    internal static TagBindingRecord Of(TagBinding binding) => new()
    {
        Tag = new JsonText(binding.Tag.ToString()),
        Tid = new JsonText(binding.Tid.IsEmpty ? null : binding.Tid.ToString()),
        Tool = new JsonText(binding.Tool.Value),
        From = new JsonText(RecordTime.ToText(binding.From)),
        Until = new JsonText(binding.Until is { } until ? RecordTime.ToText(until) : null),
        BoundBy = new JsonText(binding.BoundBy.IsEmpty ? null : binding.BoundBy.Value),
        CheckedBy = new JsonText(binding.CheckedBy.IsEmpty ? null : binding.CheckedBy.Value),
        TagModel = new JsonText(binding.TagModel),
    };

    /// <summary>Null and issues if a member is missing or wrong.</summary>
    internal TagBinding? Read(RecordReader reader, string place)
    {
        int before = reader.Issues.Reported;
        reader.RefuseUnknown(this, place);
        TagId tag = ReadTag(Tag, reader, place);
        Tid tid = ReadTid(reader, place);
        string? tool = reader.Text(Tool, place, "tool", IdText.MaxLength);
        if (From.IsAbsent)
        {
            reader.Report(place, new Reason(TagRules.NoEffectiveTime));
        }

        DateTimeOffset? from = reader.OptionalTime(From, place, "from");
        DateTimeOffset? until = reader.OptionalTime(Until, place, "until");
        string? boundBy = reader.OptionalText(BoundBy, place, "boundBy", IdText.MaxLength);
        string? checkedBy = reader.OptionalText(CheckedBy, place, "checkedBy", IdText.MaxLength);
        string? tagModel = reader.OptionalText(TagModel, place, "tagModel", TagBinding.MaxModelLength);
        return reader.Issues.Reported > before || tool is null || from is null ? null : new TagBinding
        {
            Tag = tag,
            Tid = tid,
            Tool = new ToolId(tool),
            From = from.Value,
            Until = until,
            BoundBy = boundBy is null ? default : new PersonId(boundBy),
            CheckedBy = checkedBy is null ? default : new PersonId(checkedBy),
            TagModel = tagModel,
        };
    }

    /// <summary>The tag in the member "tag"; the default value and an issue if it is missing or none.</summary>
    internal static TagId ReadTag(JsonText text, RecordReader reader, string place)
    {
        TagId tag = default;
        if (text.IsAbsent)
        {
            reader.Missing(place, "tag");
        }
        else if (reader.IsString(text, place, "tag") && !TagId.TryParse(text.Value, out tag))
        {
            reader.Report(place + ".tag", new Reason(RecordRules.BadForm,
                ("expected", "epc:HEX, iso11784:HEX, iso15693:HEX, text:TEXT or bare EPC digits"), ("found", SafeText.Excerpt(text.Value))));
        }

        return tag;
    }

    private Tid ReadTid(RecordReader reader, string place)
    {
        Tid tid = default;
        if (reader.IsString(Tid, place, "tid") && (!Identifiers.Tid.TryParse(Tid.Value, out tid) || tid.IsEmpty))
        {
            reader.Report(place + ".tid", new Reason(RecordRules.BadForm,
                ("expected", "1 to 512 hexadecimal digits"), ("found", SafeText.Excerpt(Tid.Value))));
        }

        return tid;
    }
}
