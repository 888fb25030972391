using System;
using System.IO;
using System.Linq;
// <example>
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;
using ToolLedger.Trials;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The example of docs/trials.md: three tags of a roll, tried well, tried too little and tried wet.</summary>
internal static class TwentyOfTwenty
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        _ = File;
        // <example>
        DateTimeOffset bound = new(2026, 4, 1, 7, 0, 0, TimeSpan.FromHours(2));
        DateTimeOffset at = bound.AddDays(3);
        string[] names = ["W-1", "W-2", "W-3"];
        var manifest = new KitManifest(new KitId("ROLL-3"), 1, "Line roll 3", bound, new Signature { By = new PersonId("P-002"), At = bound },
            names.Select((name, index) => new ToolLine { Number = index + 1, Tool = new Tool { Id = new ToolId(name), Description = "Spanner" } }));
        var tags = new TagRegister(names.Select(name => new TagBinding { Tag = TagId.FromText(name), Tool = new ToolId(name), From = bound }));
        TagTrial Tried(string name, int presented, int read, string? setting = null) =>
            new(TagId.FromText(name), new ToolId(name), presented, read, at) { IsInFullKit = true, Setting = setting };

        // Every tag was read each time, dry. Wet, the third one was not.
        TagTrial[] trials = [Tried("W-1", 200, 200), Tried("W-2", 20, 20), Tried("W-3", 200, 200), Tried("W-3", 60, 49, "wet")];
        KitQualification kit = KitQualification.Of(manifest, tags, trials, at);
        foreach (LineQualification line in kit.Lines)
        {
            Console.WriteLine($"{(line.Qualification.IsQualified ? "qualified" : "look after")}: {line.Line}: {line.Qualification.Reason}");
        }

        Console.WriteLine(kit.Reason);
        Console.WriteLine($"95 % takes {TagQualification.PresentationsNeeded(0.95m)} presentations without a miss");
        // </example>
    }
}
