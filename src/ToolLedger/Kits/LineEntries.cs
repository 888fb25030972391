using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using ToolLedger.Records;

namespace ToolLedger.Kits;

/// <summary>Which manifests list a thing (a tool, a mark, a sub-kit), and where two of different kits that list it are in force at one instant.</summary>
internal sealed class LineEntries<TKey>
    where TKey : notnull
{
    private readonly KitManifest[] _manifests;
    private readonly DateTimeOffset[] _ends;
    private readonly KeyOfLine _keyOf;
    private readonly Dictionary<TKey, int> _first;
    private readonly int[] _manifestOf;
    private readonly int[] _next;

    /// <param name="manifests">Ordered by kit and revision.</param>
    /// <param name="ends">When each of them stops being in force.</param>
    /// <param name="keyOf">What a line lists, if it lists a thing of this kind.</param>
    internal LineEntries(KitManifest[] manifests, DateTimeOffset[] ends, KeyOfLine keyOf)
    {
        _keyOf = keyOf;
        _manifests = manifests;
        _ends = ends;
        int count = 0;
        foreach (KitManifest manifest in manifests)
        {
            count += manifest.Lines.Count;
        }

        _first = new Dictionary<TKey, int>(count);
        _manifestOf = new int[count];
        _next = new int[count];
        Fill();
    }

    /// <summary>The manifests in force then that list the thing, in the order of the manifests.</summary>
    internal IReadOnlyList<KitManifest> Live(TKey key, DateTimeOffset at)
    {
        List<KitManifest>? live = null;
        for (int entry = _first.GetValueOrDefault(key, -1); entry >= 0; entry = _next[entry])
        {
            if (IsLive(_manifestOf[entry], at))
            {
                (live ??= []).Add(_manifests[_manifestOf[entry]]);
            }
        }

        return live is null ? [] : live.AsReadOnly();
    }

    /// <summary>The first manifest in force then that lists the thing, in the order of the manifests.</summary>
    internal KitManifest? FirstLive(TKey key, DateTimeOffset at)
    {
        for (int entry = _first.GetValueOrDefault(key, -1); entry >= 0; entry = _next[entry])
        {
            if (IsLive(_manifestOf[entry], at))
            {
                return _manifests[_manifestOf[entry]];
            }
        }

        return null;
    }

    /// <summary>The manifests that list the thing and were in force at any instant of a stretch of time, or are to be looked at all the same.</summary>
    internal IEnumerable<KitManifest> Listing(TKey key, DateTimeOffset from, DateTimeOffset to, Predicate<KitManifest> isWanted)
    {
        for (int entry = _first.GetValueOrDefault(key, -1); entry >= 0; entry = _next[entry])
        {
            KitManifest manifest = _manifests[_manifestOf[entry]];
            if ((manifest.EffectiveFrom <= to && from < _ends[_manifestOf[entry]]) || isWanted(manifest))
            {
                yield return manifest;
            }
        }
    }

    /// <summary>Whether a manifest of another kit in force then lists the thing.</summary>
    internal bool IsOnOther(TKey key, KitId kit, DateTimeOffset at)
    {
        for (int entry = _first.GetValueOrDefault(key, -1); entry >= 0; entry = _next[entry])
        {
            if (IsLive(_manifestOf[entry], at) && _manifests[_manifestOf[entry]].Id != kit)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Reports every stretch of time in which two kits list one thing, named by where it starts.</summary>
    internal void FindFaults(IssueList faults, FaultOf faultOf)
    {
        var stretches = new List<int>();
        var done = new HashSet<TKey>();

        // In the order of the manifests, not of the dictionary, so that the list is the same on every machine.
        for (int manifest = 0; manifest < _manifests.Length; manifest++)
        {
            foreach (ManifestLine line in _manifests[manifest].Lines)
            {
                if (faults.Reported > IssueList.MaxCount)
                {
                    return;
                }

                if (_keyOf(line, out TKey? key) && _first[key] is int entry && _manifestOf[entry] == manifest && _next[entry] >= 0 && done.Add(key))
                {
                    Collect(entry, stretches);
                    FindFaults(key, stretches, faults, faultOf);
                }
            }
        }
    }

    private void Fill()
    {
        int entry = _next.Length;

        // From the last manifest to the first, so that each chain runs forward.
        for (int manifest = _manifests.Length - 1; manifest >= 0; manifest--)
        {
            foreach (ManifestLine line in _manifests[manifest].Lines)
            {
                if (!_keyOf(line, out TKey? key))
                {
                    continue;
                }

                entry--;
                _manifestOf[entry] = manifest;
                ref int first = ref System.Runtime.InteropServices.CollectionsMarshal.GetValueRefOrAddDefault(_first, key, out bool exists);
                _next[entry] = exists ? first : -1;
                first = entry;
            }
        }
    }

    private bool IsLive(int manifest, DateTimeOffset at) => _manifests[manifest].EffectiveFrom <= at && at < _ends[manifest];

    private void Collect(int entry, List<int> stretches)
    {
        stretches.Clear();
        for (; entry >= 0; entry = _next[entry])
        {
            // A revision overtaken before it came into force is never live. Lines of one manifest that list one thing (a mark) are one stretch.
            if (_manifests[_manifestOf[entry]].EffectiveFrom < _ends[_manifestOf[entry]] && (stretches.Count == 0 || stretches[^1] != _manifestOf[entry]))
            {
                stretches.Add(_manifestOf[entry]);
            }
        }

        stretches.Sort((left, right) =>
        {
            int order = _manifests[left].EffectiveFrom.CompareTo(_manifests[right].EffectiveFrom);
            return order != 0 ? order : left.CompareTo(right);
        });
    }

    /// <summary>Compares each stretch with the one of another kit that reaches furthest: linear, and no overlap goes unnamed.</summary>
    private void FindFaults(TKey key, List<int> stretches, IssueList faults, FaultOf faultOf)
    {
        int furthest = -1;
        int furthestOfOtherKit = -1;
        foreach (int manifest in stretches)
        {
            KitManifest later = _manifests[manifest];
            int other = furthest >= 0 && _manifests[furthest].Id == later.Id ? furthestOfOtherKit : furthest;
            if (other >= 0 && later.EffectiveFrom < _ends[other])
            {
                faultOf(key, _manifests[other], later, faults);
            }

            if (furthest < 0 || _ends[manifest] > _ends[furthest])
            {
                if (furthest >= 0 && _manifests[furthest].Id != later.Id)
                {
                    furthestOfOtherKit = furthest;
                }

                furthest = manifest;
            }
            else if (_manifests[furthest].Id != later.Id
                && (furthestOfOtherKit < 0 || _ends[manifest] > _ends[furthestOfOtherKit]))
            {
                furthestOfOtherKit = manifest;
            }
        }
    }

    /// <summary>What a line lists; false if it lists nothing of the kind.</summary>
    internal delegate bool KeyOfLine(ManifestLine line, [NotNullWhen(true)] out TKey? key);

    /// <summary>Reports that two manifests of different kits list one thing from the start of the later one on.</summary>
    internal delegate void FaultOf(TKey key, KitManifest earlier, KitManifest later, IssueList faults);
}
