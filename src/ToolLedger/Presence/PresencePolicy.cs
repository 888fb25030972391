using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Presence;

/// <summary>Turns the looks of one tag into an answer. The kinds are closed, so that a stored policy can always be read back; a host that wants to be stricter adds a rule to the reconciler.</summary>
/// <remarks>Immutable and thread-safe. Whatever the kind: no look is never more than <see cref="PresenceState.NotRead"/>, and another look of the same tag never lowers the answer.</remarks>
public abstract class PresencePolicy
{
    private protected PresencePolicy()
    {
    }

    /// <summary>The name of the kind in stored policies, for example "counting".</summary>
    public abstract string Kind { get; }

    /// <summary>Judges the evidence of one tag.</summary>
    /// <param name="evidence">The looks.</param>
    /// <returns>The answer with its reasons.</returns>
    public abstract PresenceJudgement Judge(PresenceEvidence evidence);

    /// <summary>True where silent passes count, so that what is a pass of its own must not depend on what was read in it.</summary>
    internal virtual bool WeighsSilence => false;

    internal static PresencePolicy FromJson(JsonElement element, string place, IssueList issues)
        => element.ValueKind == JsonValueKind.Object && element.TryGetProperty("kind"u8, out JsonElement kind) && kind.ValueKind == JsonValueKind.String && kind.ValueEquals("stated-risk"u8)
            ? StatedRiskPolicy.FromJsonObject(element, place, issues)
            : CountingPolicy.FromJsonObject(element, place, issues);

    internal abstract void WriteJson(Utf8JsonWriter writer);
}
