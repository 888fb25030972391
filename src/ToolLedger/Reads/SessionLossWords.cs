using System;

namespace ToolLedger.Reads;

/// <summary>The stable words for kinds of loss, as records and reasons write them.</summary>
internal static class SessionLossWords
{
    private static readonly string[] Words =
        ["buffer-overflow", "antenna-disconnected", "connection-closed", "reader-fault", "decode-error", "rows-refused", "stream-lost"];

    internal static string All => string.Join(", ", Words);

    internal static string Of(SessionLoss loss) => Words[(int)loss];

    internal static bool TryParse(string word, out SessionLoss loss)
    {
        int index = Array.IndexOf(Words, word);
        loss = (SessionLoss)Math.Max(index, 0);
        return index >= 0;
    }
}
