using System;
using System.Collections.Generic;
using Xunit;

namespace ToolLedger.Identifiers.Tests.Vectors;

/// <summary>Runs a check on every row and reports all rows that fail, by id.</summary>
internal static class ForEach
{
    internal static void Row(
        IEnumerable<IReadOnlyDictionary<string, string>> rows, Action<IReadOnlyDictionary<string, string>> check)
    {
        var failures = new List<string>();
        foreach (IReadOnlyDictionary<string, string> row in rows)
        {
            try
            {
                check(row);
            }
            catch (Xunit.Sdk.XunitException failure)
            {
                failures.Add(row["id"] + ": " + failure.Message);
            }
        }

        Assert.Empty(failures);
    }
}
