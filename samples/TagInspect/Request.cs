using System.Collections.Generic;
using ToolLedger.Identifiers;

namespace TagInspect;

/// <summary>One item to inspect.</summary>
internal sealed record Request
{
    /// <summary>hex, memoryHex, tagUri, pureIdentity, elementString, digitalLink or ai.</summary>
    internal required string Input { get; init; }

    internal string Value { get; init; } = string.Empty;

    internal IReadOnlyList<Gs1Element> Elements { get; init; } = [];

    /// <summary>How many bits of the hexadecimal digits count; all of them by default.</summary>
    internal int? Bits { get; init; }

    internal int? PrefixLength { get; init; }

    internal string? Scheme { get; init; }

    internal int Filter { get; init; }
}
