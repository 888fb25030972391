using System;
using System.Globalization;

namespace ToolLedger.Testing.Cases;

/// <summary>How cases are printed.</summary>
internal static class CaseText
{
    internal static string Time(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm:ss.FFFFFFFzzz", CultureInfo.InvariantCulture);
}
