using System;
using System.Collections.Generic;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Kits;

/// <summary>Which manifests list a tool, and where two of different kits are in force at one instant.</summary>
internal sealed class ToolEntries
{
    private readonly KitManifest[] _manifests;
    private readonly DateTimeOffset[] _ends;
    private readonly Dictionary<ToolId, int> _first;
    private readonly int[] _manifestOf;
    private readonly int[] _next;

    /// <param name="manifests">Ordered by kit and revision.</param>
    /// <param name="ends">When each of them stops being in force.</param>
    internal ToolEntries(KitManifest[] manifests, DateTimeOffset[] ends)
    {
        _manifests = manifests;
        _ends = ends;
        int count = 0;
        foreach (KitManifest manifest in manifests)
        {
            count += manifest.Lines.Count;
        }

        _first = new Dictionary<ToolId, int>(count);
        _manifestOf = new int[count];
        _next = new int[count];
        Fill();
    }

    /// <summary>The manifests in force then that list the tool, in the order of the manifests.</summary>
    internal IReadOnlyList<KitManifest> Live(ToolId tool, DateTimeOffset at)
    {
        List<KitManifest>? live = null;
        for (int entry = _first.GetValueOrDefault(tool, -1); entry >= 0; entry = _next[entry])
        {
            if (IsLive(_manifestOf[entry], at))
            {
                (live ??= []).Add(_manifests[_manifestOf[entry]]);
            }
        }

        return live is null ? [] : live.AsReadOnly();
    }

    /// <summary>The first manifest in force then that lists the tool, in the order of the manifests.</summary>
    internal KitManifest? FirstLive(ToolId tool, DateTimeOffset at)
    {
        for (int entry = _first.GetValueOrDefault(tool, -1); entry >= 0; entry = _next[entry])
        {
            if (IsLive(_manifestOf[entry], at))
            {
                return _manifests[_manifestOf[entry]];
            }
        }

        return null;
    }

    /// <summary>Every stretch of time in which two kits list one tool, named by where it starts.</summary>
    internal IReadOnlyList<RecordIssue> FindFaults()
    {
        var faults = new List<RecordIssue>();
        var stretches = new List<int>();

        // In the order of the manifests, not of the dictionary, so that the list is the same on every machine.
        for (int manifest = 0; manifest < _manifests.Length; manifest++)
        {
            foreach (ManifestLine line in _manifests[manifest].Lines)
            {
                if (line.Tool is { } tool && _first[tool.Id] is int entry && _manifestOf[entry] == manifest && _next[entry] >= 0)
                {
                    Collect(entry, stretches);
                    FindFaults(tool.Id, stretches, faults);
                }
            }
        }

        return faults.AsReadOnly();
    }

    private void Fill()
    {
        int entry = _next.Length;

        // From the last manifest to the first, so that each chain runs forward.
        for (int manifest = _manifests.Length - 1; manifest >= 0; manifest--)
        {
            foreach (ManifestLine line in _manifests[manifest].Lines)
            {
                if (line.Tool is not { } tool)
                {
                    continue;
                }

                entry--;
                _manifestOf[entry] = manifest;
                ref int first = ref System.Runtime.InteropServices.CollectionsMarshal.GetValueRefOrAddDefault(_first, tool.Id, out bool exists);
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
            // A revision overtaken before it came into force is never live.
            if (_manifests[_manifestOf[entry]].EffectiveFrom < _ends[_manifestOf[entry]])
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
    private void FindFaults(ToolId tool, List<int> stretches, List<RecordIssue> faults)
    {
        int furthest = -1;
        int furthestOfOtherKit = -1;
        foreach (int manifest in stretches)
        {
            KitManifest later = _manifests[manifest];
            int other = furthest >= 0 && _manifests[furthest].Id == later.Id ? furthestOfOtherKit : furthest;
            if (other >= 0 && later.EffectiveFrom < _ends[other])
            {
                faults.Report("$", new Reason(KitRules.ToolInTwoKits, ("tool", tool.Value), ("kit", _manifests[other].Id.Value),
                    ("otherKit", later.Id.Value), ("from", RecordTime.ToText(later.EffectiveFrom))), later.FindLine(tool)?.Number);
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
}
