using System.Collections.Generic;
using System.IO;
// <example>
using ToolLedger.Policies;
using ToolLedger.Presence;
using ToolLedger.Records;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The example of docs/policies.md: a stored policy that says only what differs, one that is refused, and a change.</summary>
internal static class OneSitesRules
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        _ = File;
        // <example>
        SitePolicy policy = SitePolicy.Parse("""
            {
              "schema": "toolledger/site-policy/1",
              "name": "Depot, invented example",
              "presence": { "kind": "counting", "looksNeeded": 5 },
              "inventory": { "countWitnessNeeded": true, "counterMaySign": false }
            }
            """u8);
        Console.WriteLine($"{policy.Name}: {((CountingPolicy)policy.Presence).LooksNeeded} looks, sessions of at least {policy.Sessions.MinimumWindow.TotalSeconds} s");

        // A misspelt setting must not fall back to its default in silence, and every issue is named at once.
        if (!SitePolicy.TryParse("""
            {
              "schema": "toolledger/site-policy/1",
              "inventory": { "countWitnesNeeded": true, "manualInventoryPersonsNeeded": 0 }
            }
            """u8, out _, out IReadOnlyList<RecordIssue> issues))
        {
            Console.WriteLine(string.Join('\n', issues));
        }

        // A change makes another policy with another digest; results carry the digest they were made under.
        SitePolicy alone = policy with { Inventory = policy.Inventory with { ManualInventoryPersonsNeeded = 1 } };
        Console.WriteLine($"same policy: {alone.Digest == policy.Digest}; read back: {SitePolicy.Parse(policy.ToJson()).Digest == policy.Digest}");
        // </example>
    }
}
