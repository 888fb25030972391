using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Records;

namespace ToolLedger.Kits;

/// <summary>Refuses manifests that contain themselves over sub-kits, or hold them too many levels deep. Every manifest is looked at once.</summary>
internal sealed class SubKitCheck
{
    private const int NotSeen = 0;
    private const int OnPath = -1;
    private const int Refused = -2;

    private readonly IReadOnlyList<KitManifest> _manifests;
    private readonly IReadOnlyList<int> _places;
    private readonly Dictionary<(KitId Kit, int Revision), int> _indexOf;
    private readonly IssueList _issues;
    private readonly List<int> _path = [];

    // Levels from the manifest downward, itself included, or one of the marks above.
    private readonly int[] _levels;

    internal SubKitCheck(IReadOnlyList<KitManifest> manifests, IReadOnlyList<int> places, Dictionary<(KitId Kit, int Revision), int> indexOf, IssueList issues)
    {
        _manifests = manifests;
        _places = places;
        _indexOf = indexOf;
        _issues = issues;
        _levels = new int[manifests.Count];
    }

    internal void Run()
    {
        for (int index = 0; index < _levels.Length; index++)
        {
            if (_levels[index] == NotSeen)
            {
                LevelsOf(index);
            }
        }
    }

    /// <summary>Goes down at most one level further than allowed, so neither the stack nor the time can be made to grow.</summary>
    private int LevelsOf(int index)
    {
        if (_levels[index] == OnPath)
        {
            string path = string.Join(" in ", _path.SkipWhile(step => step != index).Append(index).Reverse().Select(step => _manifests[step].Id.Value));
            Report(index, KitRules.SubKitCycle, ("path", path));
            return Refused;
        }

        if (_levels[index] != NotSeen || !_manifests[index].HasSubKits)
        {
            return _levels[index] = _levels[index] == NotSeen ? 1 : _levels[index];
        }

        if (_path.Count > KitRegister.MaxSubKitDepth)
        {
            ReportTooDeep(_path[0]);
            return _levels[index] = Refused;
        }

        _levels[index] = OnPath;
        _path.Add(index);
        int deepest = 0;
        bool refused = false;
        foreach (SubKitLine line in _manifests[index].Lines.OfType<SubKitLine>())
        {
            int below = _indexOf.TryGetValue((line.Kit, line.Revision), out int inner) ? LevelsOf(inner) : 1;
            refused |= below == Refused;
            deepest = Math.Max(deepest, below);
        }

        _path.RemoveAt(_path.Count - 1);
        if (!refused && deepest > KitRegister.MaxSubKitDepth)
        {
            ReportTooDeep(index);
            refused = true;
        }

        return _levels[index] = refused ? Refused : deepest + 1;
    }

    private void ReportTooDeep(int index) =>
        Report(index, KitRules.SubKitsTooDeep, ("limit", KitRegister.MaxSubKitDepth.ToString(CultureInfo.InvariantCulture)));

    private void Report(int index, ReasonKind kind, (string Name, string Value) detail) =>
        _issues.Report(string.Create(CultureInfo.InvariantCulture, $"$[{_places[index]}]"), new Reason(kind,
            ("revision", _manifests[index].Revision.ToString(CultureInfo.InvariantCulture)), ("kit", _manifests[index].Id.Value), detail));
}
