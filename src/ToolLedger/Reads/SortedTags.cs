using System;
using System.Collections;
using System.Collections.Generic;

namespace ToolLedger.Reads;

/// <summary>The tags of a session in order; the evidence of each is made when it is asked for.</summary>
internal sealed class SortedTags : IReadOnlyCollection<TagEvidence>
{
    private readonly EvidenceCache _evidence;
    private readonly int[] _order;

    internal SortedTags(EvidenceStore store, EvidenceCache evidence)
    {
        _evidence = evidence;
        _order = new int[store.Tags.Count];
        for (int i = 0; i < _order.Length; i++)
        {
            _order[i] = i;
        }

        Array.Sort(_order, (left, right) => store.Tags.Compare(store.Tags[left], store.Tags[right]));
    }

    /// <inheritdoc/>
    public int Count => _order.Length;

    /// <summary>Indexes of the entries in order of the tags.</summary>
    internal ReadOnlySpan<int> Order => _order;

    /// <inheritdoc/>
    public IEnumerator<TagEvidence> GetEnumerator()
    {
        foreach (int index in _order)
        {
            yield return _evidence.Of(index);
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
