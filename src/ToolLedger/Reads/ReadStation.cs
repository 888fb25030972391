using System;
using System.Collections.Generic;
using System.Collections.ObjectModel;
using System.Linq;
using ToolLedger.Tools;

namespace ToolLedger.Reads;

/// <summary>A place where bags are presented: one reader, its antennas and the control tags fixed in their fields.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class ReadStation
{
    /// <summary>The most antennas a station can have.</summary>
    public const int MaxAntennaCount = 64;

    /// <summary>The most control tags a station can have.</summary>
    public const int MaxControlTagCount = 256;

    private readonly StationId _id;
    private readonly IReadOnlyList<AntennaPort> _antennas = [];
    private readonly ReadOnlyCollection<ControlTag> _controlTags = ReadOnlyCollection<ControlTag>.Empty;

    /// <summary>The station's name.</summary>
    /// <exception cref="ArgumentException">It is set to the empty default value.</exception>
    public required StationId Id
    {
        get => _id;
        init => _id = !value.IsEmpty ? value : throw new ArgumentException("A station needs an id.", nameof(value));
    }

    /// <summary>The antennas that look at what is presented: 1 to 64 different ones, in order of number.</summary>
    /// <exception cref="ArgumentNullException">It is set to null.</exception>
    /// <exception cref="ArgumentException">There are none, over 64, the same one twice, or one that is not known.</exception>
    public required IReadOnlyList<AntennaPort> Antennas
    {
        get => _antennas;
        init
        {
            ArgumentNullException.ThrowIfNull(value);
            AntennaPort[] sorted = [.. value.Take(MaxAntennaCount + 1).Order()];
            bool distinct = sorted.Distinct().Count() == sorted.Length;
            _antennas = sorted.Length is >= 1 and <= MaxAntennaCount && distinct && sorted[0].IsKnown
                ? Array.AsReadOnly(sorted)
                : throw new ArgumentException("A station has 1 to 64 different antennas with known numbers.", nameof(value));
        }
    }

    /// <summary>The control tags, at most 256; none makes every session degraded at best.</summary>
    /// <exception cref="ArgumentNullException">It is set to null.</exception>
    /// <exception cref="ArgumentException">There are over 256, one twice, or one with an empty tag.</exception>
    public IReadOnlyList<ControlTag> ControlTags
    {
        get => _controlTags;
        init
        {
            ArgumentNullException.ThrowIfNull(value);
            ControlTag[] copy = [.. value.Take(MaxControlTagCount + 1)];
            bool distinct = copy.Distinct().Count() == copy.Length;
            _controlTags = copy.Length <= MaxControlTagCount && distinct && !copy.Any(control => control.Tag.IsEmpty)
                ? Array.AsReadOnly(copy)
                : throw new ArgumentException("A station has at most 256 different control tags, none empty.", nameof(value));
        }
    }

    /// <summary>Whether the station has this antenna.</summary>
    /// <param name="antenna">The antenna.</param>
    /// <returns>The answer; no for an antenna that is not known.</returns>
    public bool HasAntenna(AntennaPort antenna) => _antennas.Contains(antenna);

    /// <summary>Whether a tag is fixed at the station.</summary>
    internal bool HasControlTag(in TagId tag)
    {
        for (int i = 0; i < _controlTags.Count; i++)
        {
            if (_controlTags[i].Tag == tag)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The control tags that an antenna must hear.</summary>
    internal IEnumerable<ControlTag> ControlTagsOn(AntennaPort antenna) =>
        _controlTags.Where(control => !control.Antenna.IsKnown || control.Antenna == antenna);
}
