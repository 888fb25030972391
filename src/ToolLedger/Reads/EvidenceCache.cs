using System.Threading;

namespace ToolLedger.Reads;

/// <summary>
/// The evidence of each tag of a closed session, made when it is first asked for. Sessions of so many tags as a few kits hold keep what they
/// made, since a reconciliation asks for one tag several times; larger ones make it anew, so that memory does not grow with what was asked.
/// </summary>
/// <remarks>Thread-safe: threads that make the same evidence at once make the same.</remarks>
internal sealed class EvidenceCache(EvidenceStore store)
{
    /// <summary>The most tags of a session that keeps its evidence.</summary>
    internal const int MaxTagCount = 4096;

    private TagEvidence?[]? _made;

    /// <summary>The evidence of a tag by its number in the store.</summary>
    internal TagEvidence Of(int tag)
    {
        if (store.Tags.Count > MaxTagCount)
        {
            return store.ToEvidence(tag);
        }

        TagEvidence?[] made = Volatile.Read(ref _made) ?? Keep(ref _made, new TagEvidence?[store.Tags.Count]);
        return Volatile.Read(ref made[tag]) ?? Keep(ref made[tag], store.ToEvidence(tag));
    }

    private static T Keep<T>(ref T? place, T made)
        where T : class
        => Interlocked.CompareExchange(ref place, made, null) ?? made;
}
