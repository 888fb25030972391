namespace ToolLedger.Interchange.Llrp;

/// <summary>How a reader answers: a code and what it says about it.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
/// <param name="Code">The protocol's code; 0 is success.</param>
/// <param name="Description">The reader's words, at most 65,535 bytes of UTF-8; characters that are not UTF-8 are replaced. May be empty.</param>
public sealed record LlrpStatus(int Code, string Description)
{
    /// <summary>Whether the request was carried out.</summary>
    public bool IsSuccess => Code == 0;
}
