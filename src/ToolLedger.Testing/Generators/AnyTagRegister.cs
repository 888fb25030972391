using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Identifiers;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>Registers that are accepted: up to 8 tags, each with a history of up to 4 bindings to a few tools.</summary>
public static class AnyTagRegister
{
    /// <summary>Generates registers.</summary>
    public static Gen<TagRegister> Generator { get; } =
        from count in Gen.Choose(0, 8)
        from tags in AnyTag.Generator.ArrayOf(count)
        from histories in Gen.CollectToArray(tags.Distinct(), History)
        let bindings = histories.SelectMany(history => history).ToArray()
        from quarantines in Gen.CollectToArray(bindings, Quarantine)
        select new TagRegister(bindings, quarantines.OfType<BindingQuarantine>());

    /// <summary>Generates a quarantine of a binding, standing or cleared; for most bindings none.</summary>
    /// <param name="binding">The binding.</param>
    /// <returns>A generator of quarantines that a register with the binding accepts, and of null.</returns>
    public static Gen<BindingQuarantine?> Quarantine(TagBinding binding) => Gen.Frequency(
        (3, Gen.Constant((BindingQuarantine?)null)),
        (1, from hours in Gen.Choose(0, 1000)
            from stands in Gen.Elements(true, false)
            from reason in AnyText.OfLength(20)
            let start = binding.From.AddHours(hours)
            select (BindingQuarantine?)new BindingQuarantine
            {
                Tag = binding.Tag,
                Tool = binding.Tool,
                From = start,
                By = new PersonId("Q"),
                Reason = reason,
                ClearedAt = stands ? null : start.AddHours(1),
                ClearedBy = stands ? default : new PersonId("P"),
                ClearedReason = stands ? null : reason,
            }));

    /// <summary>The registers as FsCheck wants them.</summary>
    /// <returns>Values without shrinking.</returns>
    public static Arbitrary<TagRegister> Arbitrary() => Generator.ToArbitrary();

    /// <summary>Generates the history of one tag: bindings that follow each other, with gaps, the last one perhaps open.</summary>
    /// <param name="tag">The tag; not empty.</param>
    /// <returns>A generator of bindings ordered by start.</returns>
    public static Gen<TagBinding[]> History(TagId tag) =>
        from times in AnyTime.Generator.ArrayOf(8)
        from tools in Gen.Choose(1, 6).ArrayOf(4)
        from tid in Gen.Choose(0, 255).ArrayOf(8).OrNull()
        from boundBy in AnyText.OfLength(10).OrNull()
        from isOpen in Gen.Elements(true, false)
        select Chain(tag, times, tools, tid, boundBy, isOpen);

    private static TagBinding[] Chain(TagId tag, DateTimeOffset[] times, int[] tools, int[]? tid, string? boundBy, bool isOpen)
    {
        DateTimeOffset[] ordered = [.. times.DistinctBy(time => time.UtcTicks).Order()];
        var bindings = new List<TagBinding>();
        for (int i = 0; i + 1 < ordered.Length; i += 2)
        {
            bool isLast = i + 3 >= ordered.Length;
            bindings.Add(new TagBinding
            {
                Tag = tag,
                Tid = tid is null ? default : Tid.FromBytes(Array.ConvertAll(tid, value => (byte)value), 64),
                Tool = new ToolId($"T{tools[i / 2]}"),
                From = ordered[i],
                Until = isLast && isOpen ? null : ordered[i + 1],
                BoundBy = boundBy is null ? default : new PersonId(boundBy),
                CheckedBy = boundBy is null || !isOpen ? default : new PersonId("checker " + boundBy.Length.ToString(System.Globalization.CultureInfo.InvariantCulture)),
                TagModel = boundBy,
            });
        }

        return [.. bindings];
    }
}
