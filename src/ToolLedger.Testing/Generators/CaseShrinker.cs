using System;
using System.Collections.Generic;
using System.Collections.ObjectModel;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Testing.Cases;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>Smaller cases: large pieces are taken away first, single facts last.</summary>
internal static class CaseShrinker
{
    public static IEnumerable<ReconciliationCase> Smaller(ReconciliationCase large)
    {
        foreach (IReadOnlyList<SessionCase> sessions in Without(large.Sessions))
        {
            yield return large with { Sessions = sessions };
        }

        foreach (ReconciliationCase smaller in SmallerLists(large).Concat(SmallerEntries(large)))
        {
            yield return smaller;
        }

        for (int i = 0; i < large.Sessions.Count; i++)
        {
            foreach (SessionCase smaller in Smaller(large.Sessions[i]))
            {
                yield return large with { Sessions = [.. large.Sessions.Take(i), smaller, .. large.Sessions.Skip(i + 1)] };
            }
        }
    }

    private static IEnumerable<ReconciliationCase> SmallerLists(ReconciliationCase large)
    {
        foreach (KitManifest manifest in large.Manifests)
        {
            if (manifest != large.Manifest)
            {
                yield return large with { Manifests = [.. large.Manifests.Where(other => other != manifest)] };
            }
        }

        if (large.Manifest is { Lines.Count: > 1 } subject)
        {
            foreach (ManifestLine line in subject.Lines)
            {
                var less = new KitManifest(subject.Id, subject.Revision, subject.Title, subject.EffectiveFrom, subject.SignedBy, subject.Lines.Where(other => other != line));
                yield return large with { Manifests = [.. large.Manifests.Select(manifest => manifest == subject ? less : manifest)] };
            }
        }

        foreach (var bindings in Without(large.Bindings))
        {
            // What nobody bound nobody can doubt.
            yield return large with
            {
                Bindings = bindings,
                Quarantines = [.. large.Quarantines.Where(doubt => bindings.Any(binding => binding.Tag == doubt.Tag && binding.Tool == doubt.Tool && binding.From <= doubt.From))],
            };
        }
    }

    private static IEnumerable<ReconciliationCase> SmallerEntries(ReconciliationCase large)
        => Without(large.Entries.Sightings).Select(fewer => large.Entries with { Sightings = fewer })
            .Concat(Without(large.Entries.Counts).Select(fewer => large.Entries with { Counts = fewer }))
            .Concat(Without(large.Entries.PieceCounts).Select(fewer => large.Entries with { PieceCounts = fewer }))
            .Concat(Without(large.Entries.Openings).Select(fewer => large.Entries with { Openings = fewer }))
            .Concat(Without(large.Entries.Annotations).Select(fewer => large.Entries with { Annotations = fewer }))
            .Concat(Without(large.Entries.Uses).Select(fewer => large.Entries with { Uses = fewer }))
            .Concat(Without(large.Entries.Breakages).Select(fewer => large.Entries with { Breakages = fewer }))
            .Concat(Without(large.Entries.Reconstructions).Select(fewer => large.Entries with { Reconstructions = fewer }))
            .Concat(Without(large.Entries.Joinings).Select(fewer => large.Entries with { Joinings = fewer }))
            .Concat(Without(large.Entries.UnlistedItems).Select(fewer => large.Entries with { UnlistedItems = fewer }))
            .Concat(Without(large.Entries.Seals).Select(fewer => large.Entries with { Seals = fewer }))
            .Concat(Without(large.Entries.SealChecks).Select(fewer => large.Entries with { SealChecks = fewer }))
            .Concat(Without(large.Entries.Substitutions).Select(fewer => large.Entries with { Substitutions = fewer }))
            .Concat(Without(large.Entries.Signatures).Select(fewer => large.Entries with { Signatures = fewer }))
            .Select(entries => large with { Entries = entries })
            .Concat(Without(large.Calibrations).Select(fewer => large with { Calibrations = fewer }))
            .Concat(Without(large.Quarantines).Select(fewer => large with { Quarantines = fewer }))
            .Concat(Without(large.Custody).Select(fewer => large with { Custody = fewer }))
            .Concat(large.History.Count == 0 ? [] : [large with { History = ReadOnlyDictionary<TagId, TagHistory>.Empty }]);

    private static IEnumerable<SessionCase> Smaller(SessionCase large)
    {
        foreach (IGrouping<TagId, TagRead> tag in large.Reads.GroupBy(static read => read.Tag))
        {
            yield return large with { Reads = [.. large.Reads.Where(read => read.Tag != tag.Key)] };
        }

        if (large.PassStarts.Count > 0)
        {
            yield return large with { PassStarts = [] };
        }

        if (large.NearbyKits.Count > 0)
        {
            yield return large with { NearbyKits = [] };
        }

        if (large.SurroundingsChanges.Count > 0)
        {
            yield return large with { SurroundingsChanges = [] };
        }

        if (large.Losses.Count > 0)
        {
            yield return large with { Losses = [] };
        }

        if (large.ClockOffset != TimeSpan.Zero || large.ClockOffsetAfter != TimeSpan.Zero)
        {
            yield return large with { ClockOffset = TimeSpan.Zero, ClockOffsetAfter = TimeSpan.Zero };
        }

        foreach (IReadOnlyList<TagRead> reads in Without(large.Reads))
        {
            yield return large with { Reads = reads };
        }
    }

    /// <summary>The list without its first or second half, then without each single entry.</summary>
    private static IEnumerable<IReadOnlyList<T>> Without<T>(IReadOnlyList<T> list)
    {
        if (list.Count > 3)
        {
            yield return [.. list.Skip(list.Count / 2)];
            yield return [.. list.Take(list.Count / 2)];
        }

        for (int i = 0; i < list.Count; i++)
        {
            yield return [.. list.Take(i), .. list.Skip(i + 1)];
        }
    }
}
