using System;
using System.Collections.Generic;
using System.Linq;
using Xunit;

namespace ToolLedger.Tests.Architecture;

/// <summary>The two answers a check is tested for: silence about the library, and its voice about the bad house.</summary>
internal static class Breaches
{
    /// <summary>Fails and shows every breach, one a line.</summary>
    public static void None(IEnumerable<Breach> breaches)
    {
        Breach[] found = [.. breaches];
        Assert.True(found.Length == 0, $"{found.Length} breaches:{Environment.NewLine}{string.Join(Environment.NewLine, (object[])found)}");
    }

    /// <summary>Fails unless exactly these subjects are named: a check that stays silent, or blames sound code, proves nothing.</summary>
    public static void ExactlyFor(IEnumerable<string> subjects, IEnumerable<Breach> breaches) => Assert.Equal(
        subjects.Order(StringComparer.Ordinal),
        breaches.Select(breach => breach.Subject).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
}
