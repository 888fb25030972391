namespace ToolLedger.Tests.Architecture;

/// <summary>One thing a check found.</summary>
/// <param name="Subject">The type, member, file or folder.</param>
/// <param name="Sentence">What is wrong with it.</param>
internal sealed record Breach(string Subject, string Sentence)
{
    public override string ToString() => $"{Subject}: {Sentence}";
}
