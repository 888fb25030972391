namespace ToolLedger.Samples.Tests.Documents;

/// <summary>A fenced block of a document.</summary>
/// <param name="LineNumber">The line of the opening fence, from 1.</param>
/// <param name="Language">What stands behind the opening fence, in lower case.</param>
/// <param name="Note">The HTML comment on the line before the fence, without its brackets; empty if there is none.</param>
/// <param name="Text">The lines between the fences, each with a line feed.</param>
internal sealed record CodeBlock(int LineNumber, string Language, string Note, string Text)
{
    private const string ExampleNote = "example: ";

    public bool IsCSharp => Language is "csharp" or "cs" or "c#";

    /// <summary>The file that the block repeats, or null when the note names none.</summary>
    public string? ExampleFile =>
        Note.StartsWith(ExampleNote, System.StringComparison.Ordinal) ? Note[ExampleNote.Length..].Trim() : null;

    /// <summary>Whether the block claims to be what the example before it writes.</summary>
    public bool IsOutput => Note is "output";
}
