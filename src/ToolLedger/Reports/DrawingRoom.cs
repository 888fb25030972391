namespace ToolLedger.Reports;

/// <summary>How much may still be drawn on a page: open lines and settled ones have room of their own, so that many settled lines take none from the open ones.</summary>
internal sealed class DrawingRoom
{
    /// <summary>The most looks that are drawn of open lines, and as many of settled ones.</summary>
    internal const int LookLimit = 100_000;

    /// <summary>The most passes that are drawn of a line: the latest ones.</summary>
    internal const int PassLimit = 12;

    /// <summary>The most looks that are drawn of a pass and antenna; a session policy rarely keeps more.</summary>
    internal const int RowLimit = 512;

    // A row costs markup also where nothing is drawn in it.
    private const int RowCost = 20;

    private int openLeft = LookLimit;
    private int settledLeft = LookLimit;

    /// <summary>Takes the room that a timeline needs; false where there is not enough left.</summary>
    internal bool TryTake(bool isOpen, int rows, int looks)
    {
        ref int left = ref isOpen ? ref openLeft : ref settledLeft;
        long needed = ((long)rows * RowCost) + looks;
        if (needed > left)
        {
            return false;
        }

        left -= (int)needed;
        return true;
    }
}
