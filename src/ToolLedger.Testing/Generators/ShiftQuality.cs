namespace ToolLedger.Testing.Generators;

/// <summary>How well a generated shift goes: complete kits must occur, and not only open ones.</summary>
public enum ShiftQuality
{
    /// <summary>Nearly everything is read well, seen and counted right.</summary>
    Good,

    /// <summary>Well-read, weak and silent tags, right and wrong counts side by side.</summary>
    Mixed,

    /// <summary>Little is read, little is said.</summary>
    Poor,
}
