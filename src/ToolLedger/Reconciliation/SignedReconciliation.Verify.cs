using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

public sealed partial class SignedReconciliation
{
    /// <summary>Computes the result again from its inputs and compares it with what was signed, byte for byte.</summary>
    /// <remarks>The same inputs, policy, rules and library version give the same bytes. Another version may answer differently; then that is said, with the lines that differ.</remarks>
    /// <param name="input">The inputs, as they were.</param>
    /// <param name="reconciler">A reconciler of the policy and rules, as they were.</param>
    /// <returns>What differs; empty if nothing does.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The register of the input holds no manifest of its subject.</exception>
    public IReadOnlyList<Reason> Verify(ReconciliationInput input, Reconciler reconciler)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(reconciler);
        byte[] bytes = reconciler.Reconcile(input).ToJson();
        if (bytes.AsSpan().SequenceEqual(result))
        {
            return [];
        }

        var issues = new IssueList();
        using JsonDocument document = JsonDocument.Parse(bytes);
        return SignedContent.Read(document.RootElement, "$", issues) is { } again ? [.. DifferencesTo(again), new Reason(SigningReasons.BytesDiffer)] : [new Reason(SigningReasons.BytesDiffer)];
    }

    /// <summary>What a later result says otherwise than what was signed: the state of the kit and of each line, and which inputs differ.</summary>
    /// <param name="later">The later result.</param>
    /// <returns>The differences; empty if there are none.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="later"/> is null.</exception>
    public IReadOnlyList<Reason> DifferencesTo(ReconciliationResult later)
    {
        ArgumentNullException.ThrowIfNull(later);
        var issues = new IssueList();
        using JsonDocument document = JsonDocument.Parse(later.ToJson());
        return SignedContent.Read(document.RootElement, "$", issues) is { } again ? [.. DifferencesTo(again)] : throw new RecordException(issues);
    }

    private IEnumerable<Reason> DifferencesTo(SignedContent other)
    {
        if (!string.Equals(LibraryVersion, other.LibraryVersion, StringComparison.Ordinal))
        {
            yield return new Reason(SigningReasons.OtherVersion, ("signed", LibraryVersion), ("now", other.LibraryVersion));
        }

        if (Kit != other.Kit || AsOf != other.AsOf || Revision != other.Revision)
        {
            yield return new Reason(SigningReasons.OtherSubject,
                ("signed", $"{Kit} revision {LineConclusion.Text(Revision)} at {RecordTime.ToText(AsOf)}"),
                ("now", $"{other.Kit} revision {LineConclusion.Text(other.Revision)} at {RecordTime.ToText(other.AsOf)}"));
        }

        if (PolicyDigest != other.PolicyDigest)
        {
            yield return new Reason(SigningReasons.OtherPolicy, ("signed", PolicyDigest.ToShortString()), ("now", other.PolicyDigest.ToShortString()));
        }

        foreach (string name in Inputs.Concat(other.Inputs).Select(static input => input.Name).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
        {
            Digest signed = DigestOf(Inputs, name), now = DigestOf(other.Inputs, name);
            if (signed != now)
            {
                yield return new Reason(SigningReasons.OtherInput, ("input", name),
                    ("signed", signed.IsEmpty ? "none" : signed.ToShortString()), ("now", now.IsEmpty ? "none" : now.ToShortString()));
            }
        }

        if (!string.Equals(State, other.State, StringComparison.Ordinal))
        {
            yield return new Reason(SigningReasons.OtherKitState, ("signed", State), ("now", other.State));
        }

        Dictionary<string, SignedLine> lines = other.Lines.ToDictionary(static line => line.Label, StringComparer.Ordinal);
        foreach (SignedLine line in Lines)
        {
            lines.Remove(line.Label, out SignedLine? again);
            if (!string.Equals(line.ToString(), again?.ToString(), StringComparison.Ordinal))
            {
                yield return new Reason(SigningReasons.OtherLine, ("line", line.Label), ("what", line.Description), ("signed", line.Standing),
                    ("now", again is null ? "not expected"
                        : string.Equals(line.Description, again.Description, StringComparison.Ordinal) ? again.Standing : again.Description + ": " + again.Standing));
            }
        }

        foreach (SignedLine added in lines.Values)
        {
            yield return new Reason(SigningReasons.OtherLine, ("line", added.Label), ("what", added.Description), ("signed", "not expected"), ("now", added.Standing));
        }
    }

    private static Digest DigestOf(IReadOnlyList<InputDigest> inputs, string name) =>
        inputs.FirstOrDefault(input => string.Equals(input.Name, name, StringComparison.Ordinal)).Digest;
}
