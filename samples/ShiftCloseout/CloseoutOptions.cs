using System;
using System.Collections.Generic;
using System.Linq;

namespace ShiftCloseout;

/// <summary>What the command line asks for.</summary>
internal sealed class CloseoutOptions
{
    /// <summary>Manifests of the kits to conclude.</summary>
    public IReadOnlyList<InputFile> Manifests { get; init; } = [];

    /// <summary>Manifests of other kits, whose tools may turn up.</summary>
    public IReadOnlyList<InputFile> OtherManifests { get; init; } = [];

    public InputFile? Bindings { get; init; }

    /// <summary>The presentation sheet.</summary>
    public InputFile? Session { get; init; }

    public InputFile? Reads { get; init; }

    public ReadsFormat ReadsFormat { get; init; }

    public InputFile? Counts { get; init; }

    public InputFile? Calibration { get; init; }

    public InputFile? Policy { get; init; }

    public ReportFormat Format { get; init; }

    /// <summary>Where the report goes; <see langword="null"/> for standard output.</summary>
    public string? Out { get; init; }

    /// <summary>The instant to conclude for; <see langword="null"/> for now.</summary>
    public DateTimeOffset? AsOf { get; init; }

    /// <summary>Every file to read.</summary>
    public IEnumerable<InputFile> Inputs =>
        [.. Manifests, .. OtherManifests, .. new[] { Bindings, Session, Reads, Counts, Calibration, Policy }.OfType<InputFile>()];

    /// <summary>The instant the report is made; <see langword="null"/> for now.</summary>
    public DateTimeOffset? MadeAt { get; init; }
}
