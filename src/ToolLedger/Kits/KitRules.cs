using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Kits;

/// <summary>What a register of kits refuses, and the faults it shows without refusing.</summary>
public static class KitRules
{
    /// <summary>One revision of a kit with two contents: a signed revision was edited. Refused.</summary>
    public static ReasonKind RevisionEdited { get; } = new("kit.revision-edited", "Revision {revision} of kit {kit} is given twice with different content.");

    /// <summary>One tool on the live manifests of two kits. A fault of lists that exist, refused only of one that is added.</summary>
    public static ReasonKind ToolInTwoKits { get; } = new("kit.tool-in-two-kits", "The tool {tool} is on the manifests of kits {kit} and {otherKit} from {from} on.");

    /// <summary>More manifests than a register may hold. Refused.</summary>
    public static ReasonKind TooManyManifests { get; } = new("kit.too-many-manifests", "There are more than {limit} manifests.");

    /// <summary>A kit inside itself, over one or more sub-kits. Refused.</summary>
    public static ReasonKind SubKitCycle { get; } = new("kit.sub-kit-cycle", "Revision {revision} of kit {kit} contains itself: {path}.");

    /// <summary>Sub-kits inside sub-kits, too many levels deep. Refused.</summary>
    public static ReasonKind SubKitsTooDeep { get; } = new("kit.sub-kits-too-deep", "Below revision {revision} of kit {kit} there are more than {limit} levels of sub-kits.");

    /// <summary>A sub-kit whose manifest is not in the register. A fault of lists that exist, refused only of one that is added.</summary>
    public static ReasonKind SubKitUnresolved { get; } = new("kit.sub-kit-unresolved",
        "Revision {revision} of kit {kit} lists revision {subRevision} of kit {subKit}, which is not in the register.");

    /// <summary>A sub-kit listed by a revision that is not in force as long as the list is. A fault of lists that exist, refused only of one that is added and takes effect while it is not.</summary>
    public static ReasonKind SubKitNotInForce { get; } = new("kit.sub-kit-not-in-force",
        "Revision {revision} of kit {kit} lists revision {subRevision} of kit {subKit}, which is not in force all the time that list is.");

    /// <summary>One sub-kit on the live manifests of two kits. A fault of lists that exist, refused only of one that is added.</summary>
    public static ReasonKind SubKitInTwoKits { get; } = new("kit.sub-kit-in-two-kits", "The sub-kit {subKit} is on the manifests of kits {kit} and {otherKit} from {from} on.");

    /// <summary>One mark on tools of two kits in force together, so that it identifies neither. A fault of lists that exist, refused only of one that is added.</summary>
    public static ReasonKind MarkInTwoKits { get; } = new("kit.mark-in-two-kits",
        "The mark {mark} is on tool {tool} of kit {kit} and on tool {otherTool} of kit {otherKit} from {from} on.");

    /// <summary>A new revision that is not higher than the latest one of its kit. Refused where it is added to a register.</summary>
    public static ReasonKind RevisionNotLatest { get; } = new("kit.revision-not-latest", "Revision {revision} of kit {kit} is to be added, and revision {latest} is there already.");

    /// <summary>A tool that carries the mark of one that was not found. Refused where the list is added to a register.</summary>
    public static ReasonKind MarkOfToolNotFound { get; } = new("kit.mark-of-tool-not-found",
        "The mark {mark} of tool {tool} is that of tool {gone}, which was not found: whoever reads it may take one for the other.");

    /// <summary>Every kind for registers of kits.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
    [
        RevisionEdited, ToolInTwoKits, TooManyManifests, SubKitCycle, SubKitsTooDeep, SubKitUnresolved, SubKitNotInForce, SubKitInTwoKits, MarkInTwoKits,
        RevisionNotLatest, MarkOfToolNotFound,
    ];
}
