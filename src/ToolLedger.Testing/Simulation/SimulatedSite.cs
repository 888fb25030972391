using System;
using System.Collections.Generic;
using System.Globalization;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Simulation;

/// <summary>An invented site: kits of tagged tools, the tag register and one station. Immutable and thread-safe.</summary>
/// <remarks>The same sizes give the same site, whatever the seed of the simulator. Kits are K1, K2 ..., tools K1-T1, K1-T2 ...</remarks>
public sealed class SimulatedSite
{
    private SimulatedSite(IReadOnlyList<KitManifest> kits, TagRegister tags, ReadStation station)
    {
        Kits = kits;
        Tags = tags;
        Station = station;
    }

    /// <summary>The kits, revision 1 each; every line is one tagged tool.</summary>
    public IReadOnlyList<KitManifest> Kits { get; }

    /// <summary>Which tag sits on which tool, from the start on.</summary>
    public TagRegister Tags { get; }

    /// <summary>The station, with one control tag in the field of every antenna.</summary>
    public ReadStation Station { get; }

    /// <summary>Invents a site.</summary>
    /// <param name="kitCount">Number of kits, 1 to 10,000.</param>
    /// <param name="toolCount">Tools in each kit, 1 to 1000.</param>
    /// <param name="from">When the manifests and bindings take effect.</param>
    /// <param name="antennaCount">Antennas of the station, 1 to 64.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static SimulatedSite Create(int kitCount, int toolCount, DateTimeOffset from, int antennaCount = 2)
    {
        Check(kitCount, 10_000, nameof(kitCount));
        Check(toolCount, 1000, nameof(toolCount));
        Check(antennaCount, 64, nameof(antennaCount));
        var kits = new List<KitManifest>(kitCount);
        var bindings = new List<TagBinding>(kitCount * toolCount);
        for (int kit = 1; kit <= kitCount; kit++)
        {
            var lines = new List<ManifestLine>(toolCount);
            for (int number = 1; number <= toolCount; number++)
            {
                var id = new ToolId(string.Create(CultureInfo.InvariantCulture, $"K{kit}-T{number}"));
                var tool = new Tool { Id = id, Description = $"Tool {number} of kit {kit}", Mark = id.Value };
                lines.Add(new ToolLine { Number = number, Tool = tool });
                bindings.Add(new TagBinding { Tag = AssetTag(((ulong)kit * 1000) + (ulong)number - 1), Tool = id, From = from });
            }

            var signature = new Signature { By = new PersonId("P-CUSTODIAN"), At = from };
            kits.Add(new KitManifest(new KitId($"K{kit}"), 1, $"Invented kit {kit}", from, signature, lines));
        }

        return new SimulatedSite(kits, new TagRegister(bindings), MakeStation(antennaCount));
    }

    private static ReadStation MakeStation(int antennaCount)
    {
        var antennas = new AntennaPort[antennaCount];
        for (int i = 0; i < antennaCount; i++)
        {
            antennas[i] = new AntennaPort((byte)(i + 1));
        }

        return new ReadStation
        {
            Id = new StationId("R1"),
            Antennas = antennas,
            ControlTags = [new ControlTag(AssetTag(1), default)],
        };
    }

    // GS1 EPC Tag Data Standard 2.3, GIAI-96: header 34, filter 0, partition 5 (seven-digit company prefix), prefix 0614141
    // (the one GS1 uses in its own examples), then 58 bits of individual asset reference.
    private static TagId AssetTag(ulong asset)
    {
        UInt128 bits = ((UInt128)0x34 << 88) | ((UInt128)5 << 82) | ((UInt128)614141 << 58) | asset;
        return TagId.Parse(string.Create(CultureInfo.InvariantCulture, $"{(ulong)(bits >> 32):X16}{(uint)bits:X8}"));
    }

    private static void Check(int count, int most, string name)
    {
        if (count < 1 || count > most)
        {
            throw new ArgumentOutOfRangeException(name, count, $"{name} must be 1 to {most}.");
        }
    }
}
