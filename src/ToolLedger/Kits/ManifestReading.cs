namespace ToolLedger.Kits;

/// <summary>What a caller declares about stored manifests that they do not say themselves.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed record ManifestReading
{
    /// <summary>Nothing declared: a manifest says everything itself.</summary>
    public static ManifestReading Strict { get; } = new();

    /// <summary>Whether a tool whose number of pieces is not stated is of one piece.</summary>
    /// <value>The default is false: such a tool is refused, since a tag on the handle says nothing of the tip. A manifest that was read so states the number when it is written again.</value>
    public bool PiecesNotStatedMeansOne { get; init; }
}
