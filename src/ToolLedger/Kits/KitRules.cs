using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Kits;

/// <summary>What a register of kits refuses, and the faults it shows without refusing.</summary>
public static class KitRules
{
    /// <summary>One revision of a kit with two contents: a signed revision was edited. Refused.</summary>
    public static ReasonKind RevisionEdited { get; } = new("kit.revision-edited", "Revision {revision} of kit {kit} is given twice with different content.");

    /// <summary>One tool on the live manifests of two kits. A fault of the data, not refused.</summary>
    public static ReasonKind ToolInTwoKits { get; } = new("kit.tool-in-two-kits", "The tool {tool} is on the manifests of kits {kit} and {otherKit} from {from} on.");

    /// <summary>More manifests than a register may hold. Refused.</summary>
    public static ReasonKind TooManyManifests { get; } = new("kit.too-many-manifests", "There are more than {limit} manifests.");

    /// <summary>Every kind for registers of kits.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } = [RevisionEdited, ToolInTwoKits, TooManyManifests];
}
