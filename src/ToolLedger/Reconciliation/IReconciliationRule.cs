namespace ToolLedger.Reconciliation;

/// <summary>A rule of a site or a host that can withhold "accounted for" and add findings. It can never grant it.</summary>
/// <remarks>
/// The conclusion of a line is the lowest verdict of all rules, so rules compose in any order. A rule must be a pure function of the facts and
/// of its settings, and safe to call from several threads; what it throws ends the
/// answer for that kit with a <see cref="RuleException"/>. Name, version and settings go into the policy digest of every result.
/// </remarks>
public interface IReconciliationRule
{
    /// <summary>A short stable name, for example "torque-tools-need-sighting".</summary>
    string Name { get; }

    /// <summary>The version of the rule's logic; change it whenever the rule may answer differently.</summary>
    string Version { get; }

    /// <summary>The rule's settings as text, empty where it has none; part of the policy digest.</summary>
    string Settings { get; }

    /// <summary>Judges one line.</summary>
    /// <param name="facts">What is known of the line.</param>
    /// <returns>
    /// <see cref="Verdict.NoObjection"/>, or a lower state with its reason and what settles it; never null. Findings name lines by their numbers in <see cref="LineFacts.Manifest"/>; those of a sub-kit are
    /// renumbered by its place in the kit.
    /// </returns>
    Verdict Judge(in LineFacts facts);
}
