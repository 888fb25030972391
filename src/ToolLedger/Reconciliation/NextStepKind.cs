namespace ToolLedger.Reconciliation;

/// <summary>What would settle an open line fastest.</summary>
public enum NextStepKind
{
    /// <summary>Open the bag, turn it, present it again; then look.</summary>
    PresentAgain,

    /// <summary>One more separate pass at the same station.</summary>
    SecondPass,

    /// <summary>Look at the tool and read its own mark.</summary>
    SightTool,

    /// <summary>Count the items of the line in its unit.</summary>
    CountItems,

    /// <summary>Count the pieces of the tool.</summary>
    CountPieces,

    /// <summary>A piece or an item is short: search for it and follow the local lost-tool procedure.</summary>
    SearchShortage,

    /// <summary>More than expected: find out where the surplus belongs.</summary>
    ResolveSurplus,

    /// <summary>Identity in doubt: sight the tool by its own mark and check its tags.</summary>
    SettleIdentity,

    /// <summary>There is no usable session of the kit: present it at a station that works, or make a manual inventory.</summary>
    PresentAtStation,

    /// <summary>Open the sub-kit and settle its open lines.</summary>
    SettleSubKit,

    /// <summary>What a sub-kit must hold is not known for certain: hand in its signed manifest of the right revision, or bring the list up to date.</summary>
    HandInManifest,

    /// <summary>Its tag was heard only while another kit stood near: look in that kit, which the value "kit" of the sentence names.</summary>
    LookInKit,
}
