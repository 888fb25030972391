using ToolLedger.Identifiers;

namespace TagInspect;

/// <summary>What was found out about one item.</summary>
internal sealed record Answer
{
    internal EpcFields? Fields { get; init; }

    internal EpcIdentity? Identity { get; init; }

    /// <summary>The raw URI of bits that stand for nothing that is read.</summary>
    internal string? RawUri { get; init; }

    /// <summary>The rule that is broken, when the item is refused.</summary>
    internal string? Rule { get; init; }

    internal EpcFault Fault { get; init; }

    internal string Message { get; init; } = string.Empty;

    internal static Answer Of(EpcFields fields) => new() { Fields = fields, Identity = fields.Identity };

    internal static Answer Refused(EpcFault fault, string? rawUri = null) =>
        new() { Rule = fault.Rule.ToString(), Fault = fault, Message = fault.ToString(), RawUri = rawUri };

    internal static Answer Refused(string rule, string message) => new() { Rule = rule, Message = message };
}
