using System;
using System.Collections.Generic;
using System.Globalization;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Simulation;

/// <summary>Lists every tag that plays a part in a scenario, with its true place.</summary>
internal static class TagCast
{
    public static List<SimulatedTag> List(SessionScenario scenario, SimulationSettings settings, ulong seed)
    {
        var cast = new List<SimulatedTag>();
        var known = new HashSet<TagId>();
        var absent = new HashSet<ToolId>(scenario.AbsentTools);
        var obscured = new HashSet<ToolId>(scenario.ObscuredTools);
        foreach (ControlTag control in scenario.Station.ControlTags)
        {
            if (known.Add(control.Tag))
            {
                cast.Add(new SimulatedTag { Tag = control.Tag, Placement = TagPlacement.Control });
            }
        }

        AddKits(scenario.Kits, TagPlacement.Present);
        AddKits(scenario.Neighbours, TagPlacement.Neighbour);
        AddStrays();
        return cast;

        void AddKits(IReadOnlyList<KitManifest> kits, TagPlacement placement)
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

        void AddTool(KitId kit, ToolId tool, TagPlacement placement)
        {
            foreach (TagBinding binding in scenario.Tags.LiveTagsOf(tool, scenario.From))
            {
                if (!known.Add(binding.Tag))
                {
                    continue;
                }

                bool isObscured = obscured.Contains(tool)
                    || SplitMix64.ForSubject(seed, "obscured " + binding.Tag, 0).Chance(settings.ObscuredShare);
                cast.Add(new SimulatedTag
                {
                    Tag = binding.Tag,
                    Tid = binding.Tid,
                    Placement = absent.Contains(tool) ? TagPlacement.Absent : placement,
                    Tool = tool,
                    Kit = kit,
                    IsObscured = isObscured,
                });
            }
        }

        void AddStrays()
        {
            SplitMix64 chance = SplitMix64.ForSubject(seed, "strays of " + scenario.Id, 0);
            int drawn = chance.Chance(settings.StraySessionShare) ? 1 + chance.Below(settings.StrayCountMax) : 0;
            for (int left = scenario.StrayCount ?? drawn; left > 0;)
            {
                TagId tag = StrayTag(chance);
                if (known.Add(tag))
                {
                    cast.Add(new SimulatedTag { Tag = tag, Placement = TagPlacement.Stray });
                    left--;
                }
            }
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
