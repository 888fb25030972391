namespace ToolLedger.Holds;

/// <summary>What came of a step of a search.</summary>
public enum SearchResult
{
    /// <summary>It was not found there.</summary>
    NotFound,

    /// <summary>It was found there; a declaration follows.</summary>
    Found,

    /// <summary>The place could not be reached.</summary>
    Inaccessible,
}
