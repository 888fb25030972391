using System;
using System.Globalization;
using ToolLedger.Records;

namespace ToolLedger.Interchange;

/// <summary>What was not understood in a row of a master inventory list: where, what stood there, and by which rule.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class MasterListIssue
{
    internal MasterListIssue(long rowNumber, string? column, string found, Reason reason)
    {
        RowNumber = rowNumber;
        Column = column;
        Found = found;
        Reason = reason;
    }

    /// <summary>The number of the line in the file, from 1, the header and blank lines counted: what an editor shows.</summary>
    public long RowNumber { get; }

    /// <summary>The column as the file calls it; null when it is the row as a whole.</summary>
    public string? Column { get; }

    /// <summary>What stood in the column, or the beginning of the row: at most 80 characters of it, those that are not printable escaped.</summary>
    public string Found { get; }

    /// <summary>What is wrong.</summary>
    public Reason Reason { get; }

    /// <summary>The stable code of the rule that was broken.</summary>
    public string Rule => Reason.Code;

    /// <summary>Place, sentence and rule, and what was found where the sentence does not quote it.</summary>
    /// <returns>One line of text.</returns>
    public override string ToString()
    {
        string said = Reason.ToString();
        string found = Found.Length == 0 || said.Contains($"\"{Found}\"", StringComparison.Ordinal) ? "" : " " + Found;
        return string.Create(CultureInfo.InvariantCulture, $"line {RowNumber} of the file{(Column is null ? "" : ", column " + SafeText.Escape(Column))}: {said} ({Rule}){found}");
    }
}
