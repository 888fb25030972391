using ToolLedger.Presence;

namespace ToolLedger.Tests.Presence.Proof;

/// <summary>How tags really answer, where that may differ from the policy's model: the two shares times a factor, or rates of another kind.</summary>
internal sealed record RiskTruth(string Name, decimal Obscured, decimal Strays, BetaRate? Stray = null)
{
    /// <summary>The middle of the box and its four corners, in the order of the tables.</summary>
    public static RiskTruth[] Box { get; } =
    [
        new("as modelled", 1, 1), new("both shares halved", 0.5m, 0.5m), new("wet: obscured doubled, strays halved", 2, 0.5m),
        new("neighbours: strays doubled, obscured halved", 0.5m, 2), new("wet and neighbours: both doubled", 2, 2),
    ];

    /// <summary>Truths that the box does not hold. Nothing is claimed of them.</summary>
    public static RiskTruth[] Beyond { get; } =
    [
        new("both shares four times as large", 4, 4), new("strays that answer nearly twice as well, Beta(1.2, 8)", 1, 1, new BetaRate(1.2m, 8)), new("both", 4, 4, new BetaRate(1.2m, 8)),
    ];

    public bool IsOwn => this is { Obscured: 1, Strays: 1, Stray: null };

    public DetectionModel Of(DetectionModel model) => new(model.ObscuredShare * Obscured, model.Present, model.StrayShare * Strays, Stray ?? model.Stray);
}
