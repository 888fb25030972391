using System.Collections.Generic;
using ToolLedger.Presence;

namespace WornTagTrials;

/// <summary>How often one policy said what.</summary>
internal sealed class PolicyFigures
{
    public PolicyFigures(string name, PresencePolicy policy)
    {
        Name = name;
        Policy = policy;
    }

    public string Name { get; }

    public PresencePolicy Policy { get; }

    public int Accounted { get; private set; }

    public int Weak { get; private set; }

    public int NotRead { get; private set; }

    public int WindowCount => Accounted + Weak + NotRead;

    /// <summary>The three policies compared.</summary>
    public static IReadOnlyList<PolicyFigures> ThreePolicies() =>
    [
        new("1 look", new CountingPolicy { LooksNeeded = 1, AntennasNeeded = 1 }),
        new("3 looks", new CountingPolicy { LooksNeeded = 3, AntennasNeeded = 1 }),
        new("3 looks, 2 antennas", new CountingPolicy { LooksNeeded = 3, AntennasNeeded = 2 }),
    ];

    public void Ask(PresenceEvidence evidence)
    {
        switch (Policy.Judge(evidence).State)
        {
            case PresenceState.Accounted:
                Accounted++;
                break;
            case PresenceState.Weak:
                Weak++;
                break;
            default:
                NotRead++;
                break;
        }
    }
}
