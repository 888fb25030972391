using System;
using System.Text;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>Rows of comma-separated values: RFC 4180, lines ended by CR LF.</summary>
/// <remarks>A text that a spreadsheet would take for a formula, because it starts with =, +, -, @ or a tab, gets an apostrophe in front; characters that are not printable are escaped.</remarks>
internal sealed class CsvText
{
    private readonly StringBuilder text = new();
    private bool isFirst = true;

    internal CsvText Field(string? value)
    {
        string safe = SafeText.Escape(value ?? "");
        ReadOnlySpan<char> start = safe.AsSpan().TrimStart();

        // Spreadsheets drop spaces before a formula, and some take the full-width forms of its first character (from memory).
        bool isFormula = start.Length > 0 && start[0] is '=' or '+' or '-' or '@' or '\uFF1D' or '\uFF0B' or '\uFF0D' or '\uFF20';
        return Put(isFormula ? "'" + safe : safe);
    }

    /// <summary>A number that this library wrote, which is no formula.</summary>
    internal CsvText Number(string value) => Put(value);

    internal void End()
    {
        text.Append("\r\n");
        isFirst = true;
    }

    public override string ToString() => text.ToString();

    private CsvText Put(string value)
    {
        text.Append(isFirst ? "" : ",");
        isFirst = false;
        bool isQuoted = value.AsSpan().IndexOfAny(",\"\r\n") >= 0 || (value.Length > 0 && (value[0] == ' ' || value[^1] == ' '));
        text.Append(isQuoted ? "\"" + value.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"" : value);
        return this;
    }
}
