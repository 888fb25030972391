using System.Diagnostics.CodeAnalysis;

namespace ToolLedger.Records;

/// <summary>The one rule for ids of every room: 1 to 64 printable characters, no white space at an end.</summary>
internal static class IdText
{
    internal const int MaxLength = 64;

    internal static bool IsValid([NotNullWhen(true)] string? value) => RecordText.Check(value, MaxLength) is null;

    internal static string Require(string value, string parameterName) =>
        RecordText.Require(value, MaxLength, parameterName);
}
