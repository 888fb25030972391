using System;
using System.Globalization;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>A rule of the host failed: it threw, gave no verdict, or spoke of a line that the kit does not have. There is no answer for that kit, since nobody knows what the rule would have withheld.</summary>
/// <remarks>
/// What the rule threw is the inner exception. Nothing else is touched: the inputs and the reconciler stay as they are, results of other kits stand, and the same call without the rule, or with the rule mended, gives its answer.
/// An <see cref="OperationCanceledException"/> of a rule is passed on as it is.
/// </remarks>
public sealed class RuleException : InvalidOperationException
{
    /// <summary>Makes an exception that names no rule.</summary>
    public RuleException()
    {
    }

    /// <summary>Makes an exception that names no rule.</summary>
    /// <param name="message">The message.</param>
    public RuleException(string message)
        : base(message)
    {
    }

    /// <summary>Makes an exception that names no rule.</summary>
    /// <param name="message">The message.</param>
    /// <param name="innerException">What caused it.</param>
    public RuleException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    internal RuleException(IReconciliationRule rule, KitManifest kit, string line, string what, Exception? innerException)
        : base(MessageFor(rule, kit, line, what), innerException)
    {
        RuleName = rule.Name;
        RuleVersion = rule.Version;
        RuleType = rule.GetType().FullName ?? "";
        Kit = kit.Id;
        Revision = kit.Revision;
        LineLabel = line;
    }

    /// <summary>The name of the rule; empty where none is named.</summary>
    public string RuleName { get; } = "";

    /// <summary>Its version; empty where no rule is named.</summary>
    public string RuleVersion { get; } = "";

    /// <summary>The full name of its type, which says where its code is; empty where no rule is named.</summary>
    public string RuleType { get; } = "";

    /// <summary>The kit under check.</summary>
    public KitId Kit { get; }

    /// <summary>The revision it was checked against; 0 where no rule is named.</summary>
    public int Revision { get; }

    /// <summary>The line the rule was asked about as reports print it, such as 7 or 7.3; empty where no rule is named.</summary>
    public string LineLabel { get; } = "";

    private static string MessageFor(IReconciliationRule rule, KitManifest kit, string line, string what) => SafeText.Escape(string.Create(
        CultureInfo.InvariantCulture,
        $"Rule \"{rule.Name}\" version \"{rule.Version}\" ({rule.GetType().FullName}) {what}, asked about line {line} of kit \"{kit.Id}\" revision {kit.Revision}. There is no answer for this kit."));
}
