using System;
using System.Text.Json;
using ToolLedger.Custody;
using ToolLedger.Records;

namespace ToolLedger.Holds;

/// <summary>A step of the search was made.</summary>
/// <remarks>Which steps must be made is a setting. The place of the entry is where was searched. Immutable and thread-safe.</remarks>
public sealed class SearchStep : HoldEntry
{
    /// <inheritdoc/>
    public override string Kind => HoldKinds.SearchStep;

    /// <summary>The declaration that began the hold.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required EntryId Hold { get; init => field = Given(value, value.IsEmpty, "The entry needs the hold it belongs to."); }

    /// <summary>The step, 1 to 64 printable characters, in the words of the policy.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Step { get; init => field = RecordText.Require(value, IdText.MaxLength, nameof(value)); }

    /// <summary>What came of it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such result.</exception>
    public required SearchResult Result
    {
        get;
        init => field = Enum.IsDefined(value) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "There is no such result.");
    }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("hold"u8, Hold.Value);
        writer.WriteString("step"u8, Step);
        writer.WriteString("result"u8, Result switch
        {
            SearchResult.Found => "found",
            SearchResult.Inaccessible => "inaccessible",
            _ => "not-found",
        });
    }

    internal static SearchStep? Read(EntryFields fields) => fields.Made(static f => new SearchStep
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Hold = new EntryId(f.Text("hold")),
        Step = f.Text("step", IdText.MaxLength),
        Result = f.Word<SearchResult>("result", ("not-found", SearchResult.NotFound), ("found", SearchResult.Found), ("inaccessible", SearchResult.Inaccessible)),
    });
}
