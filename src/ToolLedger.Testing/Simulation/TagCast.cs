using System.Collections.Generic;
using System.Globalization;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Simulation;

/// <summary>Lists every tag that plays a part in a scenario, with its true place. A tag that would play two parts plays the first.</summary>
internal sealed class TagCast
{
    private readonly SessionScenario _scenario;
    private readonly SimulationSettings _settings;
    private readonly ulong _seed;
    private readonly HashSet<ToolId> _absent;
    private readonly HashSet<ToolId> _obscured;
    private readonly HashSet<TagId> _known = [];
    private readonly List<SimulatedTag> _tags = [];

    private TagCast(SessionScenario scenario, SimulationSettings settings, ulong seed)
    {
        _scenario = scenario;
        _settings = settings;
        _seed = seed;
        _absent = [.. scenario.AbsentTools];
        _obscured = [.. scenario.ObscuredTools];
    }

    public static IReadOnlyList<SimulatedTag> Of(SessionScenario scenario, SimulationSettings settings, ulong seed)
    {
        var cast = new TagCast(scenario, settings, seed);
        foreach (ControlTag control in scenario.Station.ControlTags)
        {
            cast.Add(new SimulatedTag { Tag = control.Tag, Placement = TagPlacement.Control });
        }

        cast.AddKits(scenario.Kits, TagPlacement.Present);
        cast.AddKits(scenario.Neighbours, TagPlacement.Neighbour);
        cast.AddStrays();
        return cast._tags;
    }

    private bool Add(SimulatedTag tag)
    {
        bool isNew = _known.Add(tag.Tag);
        if (isNew)
        {
            _tags.Add(tag);
        }

        return isNew;
    }

    private void AddKits(IReadOnlyList<KitManifest> kits, TagPlacement placement)
    {
        foreach (KitManifest kit in kits)
        {
            foreach (ManifestLine line in kit.Lines)
            {
                if (line.Tool is { } tool)
                {
                    AddTool(kit.Id, tool.Id, placement);
                }
            }
        }
    }

    private void AddTool(KitId kit, ToolId tool, TagPlacement placement)
    {
        foreach (TagBinding binding in _scenario.Tags.LiveTagsOf(tool, _scenario.From))
        {
            bool isHiddenByChance = SplitMix64.ForSubject(_seed, "obscured " + binding.Tag, 0).Chance(_settings.ObscuredShare);
            Add(new SimulatedTag
            {
                Tag = binding.Tag,
                Tid = binding.Tid,
                Placement = _absent.Contains(tool) ? TagPlacement.Absent : placement,
                Tool = tool,
                Kit = kit,
                IsObscured = isHiddenByChance || _obscured.Contains(tool),
            });
        }
    }

    private void AddStrays()
    {
        SplitMix64 chance = SplitMix64.ForSubject(_seed, "strays of " + _scenario.Id, 0);
        bool hasStrays = chance.Chance(_settings.StraySessionShare);
        int drawn = 1 + chance.Below(_settings.StrayCountMax);
        for (int left = _scenario.StrayCount ?? (hasStrays ? drawn : 0); left > 0;)
        {
            left -= Add(new SimulatedTag { Tag = StrayTag(chance), Placement = TagPlacement.Stray }) ? 1 : 0;
        }
    }

    /// <summary>96 bits: mostly a foreign company's serialised item (header 30), sometimes an unprogrammed tag or a reserved header, as the published logs hold them.</summary>
    private static TagId StrayTag(SplitMix64 chance)
    {
        ulong high = chance.Next();
        uint low = (uint)chance.Next();
        byte header = chance.Below(10) switch
        {
            0 => 0x00,
            1 => 0x40,
            _ => 0x30,
        };
        high = (high & 0x00FF_FFFF_FFFF_FFFFUL) | ((ulong)header << 56);
        return TagId.Parse(string.Create(CultureInfo.InvariantCulture, $"{high:X16}{low:X8}"));
    }
}
