using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace ToolLedger.Browser.Tests;

/// <summary>Numbers as the page holds them.</summary>
internal static class Places
{
    public static IEnumerable<string?> ToPlaces(this IEnumerable<int> numbers) => numbers.Select(static number => number.ToString(CultureInfo.InvariantCulture));
}
