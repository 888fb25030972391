using System.Linq;
using System.Text.Json;
using ToolLedger.Presence;
using ToolLedger.Tests.Statistics;
using Xunit;

namespace ToolLedger.Tests.Presence;

/// <summary>
/// Worked examples with a certain read rate. The model holds them: a pass of one look is read with exactly the mean of its beta rate, whatever its spread, so that n rounds are n passes of one look;
/// a stray share of 1 makes every tag that is not there answer at the stray rate.
/// </summary>
public sealed class ModelVectorTests
{
    private static readonly VectorFile Vectors = new("tests", "ToolLedger.Tests", "Statistics", "Data", "statistics.json");

    [Fact]
    public void What_one_round_with_a_read_and_one_without_are_worth() => Assert.All(Vectors.Of("sprt_read_llr"), static vector =>
    {
        DetectionModel model = Certain(vector);
        VectorFile.Close(vector, model.LogOdds([new PassLooks(1, 1)], 0.5, isBounded: false), "llr_hit");
        VectorFile.Close(vector, model.LogOdds([new PassLooks(1, 0)], 0.5, isBounded: false), "llr_miss");
    });

    [Fact]
    public void The_probability_that_a_tool_is_away() => Assert.All(Vectors.Of("posterior_away"), static vector =>
    {
        int reads = (int)VectorFile.Number(vector, "reads");
        PassLooks[] rounds = [.. Enumerable.Range(0, (int)VectorFile.Number(vector, "rounds")).Select(round => new PassLooks(1, round < reads ? 1 : 0))];
        VectorFile.Close(vector, 1 - Certain(vector).Posterior(rounds, VectorFile.Number(vector, "prior_away"), isBounded: false));
    });

    // Of a sequential test the library ships the last step: what all rounds together say. Where the hits needed cannot be undone by the misses that are left, that is the same, and the policy
    // at the test's own error rate settles as many tools that are there, by its exact recursion. More rounds than a tag has passes weighed are left to the sequential test.
    [Fact]
    public void How_often_so_many_rounds_say_that_a_tool_is_there() => Assert.All(
        Vectors.Of("sprt_truncated_cannot_tell").Where(static vector => VectorFile.Number(vector, "max_rounds") <= StatedRiskPolicy.MaxPassCount), static vector =>
    {
        const decimal Even = 0.5m;
        var policy = new StatedRiskPolicy
        {
            Model = Certain(vector),
            RobustnessFactor = 1,
            AbsentShare = Even,
            LineRiskMax = 0.5m,
            KitRiskLimit = Even * (decimal)VectorFile.Number(vector, "beta_false_present"),
        };
        PresencePlan plan = policy.Plan((int)VectorFile.Number(vector, "max_rounds"), looks: 1, lineCount: 1);

        VectorFile.Close(vector, plan.ChanceSettled, "p_say_present");
        VectorFile.Close(vector, 1 - plan.ChanceSettled, "p_cannot_tell");
        VectorFile.Close(vector, 0, "p_say_missing");
        Assert.InRange(plan.ChanceAccountedWhenAbsent, 0, VectorFile.Number(vector, "beta_false_present"));
    });

    /// <summary>A tag that is there and never covered, read with a certain rate; and tags that are not there, read with another one, the smallest there is where that is none.</summary>
    private static DetectionModel Certain(JsonElement vector)
    {
        decimal read = (decimal)VectorFile.Number(vector, "p_read"), stray = (decimal)VectorFile.Number(vector, "q_stray");
        return stray > 0
            ? new DetectionModel(0, new BetaRate(read, 1 - read), 1, new BetaRate(stray, 1 - stray))
            : new DetectionModel(0, new BetaRate(read, 1 - read), DetectionModel.MinStrayShare, new BetaRate(BetaRate.MinParameter, BetaRate.MaxParameter));
    }
}
