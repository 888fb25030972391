using System;
using System.Collections.Generic;
using System.IO;

namespace ToolLedger.Samples.Tests.ShiftCloseout;

/// <summary>A folder of its own with the demo's files, which a test may damage; gone with the test.</summary>
internal sealed class DemoFolder : IDisposable
{
    public DemoFolder()
    {
        foreach ((string name, byte[] content) in DemoScenario.Files())
        {
            Write(name, content);
        }
    }

    public string Root { get; } = Directory.CreateTempSubdirectory("toolledger-closeout-").FullName;

    public string this[string name] => Path.Combine(Root, name);

    public string Write(string name, byte[] content)
    {
        File.WriteAllBytes(this[name], content);
        return this[name];
    }

    /// <summary>The arguments of a real run over the named manifests, both sessions and all other files, followed by more. A "--reads" among them takes the place of the first session's.</summary>
    public string[] Args(string[] manifests, params string[] more) =>
        [.. ArgsOfOneSession(manifests, more), "--session", this["presentation-2.json"], "--reads", this["reads-2.jsonl"]];

    /// <summary>The same with the first session alone.</summary>
    public string[] ArgsOfOneSession(string[] manifests, params string[] more)
    {
        var args = new List<string>();
        foreach (string manifest in manifests)
        {
            args.AddRange(["--manifest", this[manifest]]);
        }

        args.AddRange(["--other-manifest", this["manifest-yaw-bag.json"], "--other-manifest", this["manifest-crimping-set.json"]]);
        args.AddRange(["--bindings", this["bindings.json"], "--session", this["presentation.json"], "--counts", this["counts.json"]]);
        args.AddRange(["--calibration", this["calibration.json"], "--history", this["tag-history.json"], "--policy", this["policy.json"]]);
        args.AddRange(["--as-of", "2026-10-14T16:00:00+02:00", .. more]);
        if (Array.IndexOf(more, "--reads") < 0)
        {
            args.AddRange(["--reads", this["reads.jsonl"]]);
        }

        return [.. args];
    }

    public void Dispose() => Directory.Delete(Root, recursive: true);
}
