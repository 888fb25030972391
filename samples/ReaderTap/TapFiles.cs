using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Reflection;
using ToolLedger.Kits;
using ToolLedger.Policies;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ReaderTap;

/// <summary>The records that a closeout rests on, beside the reads.</summary>
internal sealed class TapFiles
{
    private const int IssuesShown = 5;

    private delegate bool TryParse<T>(ReadOnlySpan<byte> utf8, out T? record, out IReadOnlyList<RecordIssue> issues);

    public required KitManifest Manifest { get; init; }

    public required TagRegister Tags { get; init; }

    public required Presentation Presentation { get; init; }

    public required SitePolicy Policy { get; init; }

    /// <exception cref="TapException">A file cannot be read, or is refused.</exception>
    public static TapFiles Load(TapOptions options) => new()
    {
        Manifest = Read<KitManifest>(options.Manifest, "manifest.json", KitManifest.TryParse),
        Tags = Read<TagRegister>(options.Bindings, "bindings.json", TagRegister.TryParse),
        Presentation = RequireEnd(Read<Presentation>(options.Session ?? (options.Reads is { } archive ? TapOptions.SheetOf(archive) : null), "presentation.json", Presentation.TryParse)),
        Policy = options.Policy is { } policy ? Read<SitePolicy>(policy, policy, SitePolicy.TryParse) : SitePolicy.Default,
    };

    private static Presentation RequireEnd(Presentation presentation) => presentation.Until is not null
        ? presentation
        : throw new TapException(ExitCodes.BadInput, "The presentation sheet does not say when the session ends ($.until).");

    private static T Read<T>(string? path, string bundled, TryParse<T> parse)
        where T : class
    {
        byte[] bytes = path is null ? Bundled(bundled) : OnDisk(path);
        return parse(bytes, out T? record, out IReadOnlyList<RecordIssue> issues) && record is not null
            ? record
            : throw new TapException(ExitCodes.BadInput, $"{path ?? bundled} is refused:\n  " + string.Join("\n  ", issues.Take(IssuesShown)));
    }

    private static byte[] Bundled(string name)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("demo/" + name)
            ?? throw new InvalidOperationException($"The bundled file demo/{name} is not in the program.");
        using var buffer = new MemoryStream();
        stream.CopyTo(buffer);
        return buffer.ToArray();
    }

    private static byte[] OnDisk(string path)
    {
        try
        {
            return File.ReadAllBytes(path);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new TapException(ExitCodes.Usage, $"{path} cannot be read: {error.Message}");
        }
    }
}
