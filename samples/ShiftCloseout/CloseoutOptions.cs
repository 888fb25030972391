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

    /// <summary>The sessions, each with its reads, in the order of the command line.</summary>
    public IReadOnlyList<SessionFiles> Sessions { get; init; } = [];

    public ReadsFormat ReadsFormat { get; init; }

    public InputFile? Counts { get; init; }

    public InputFile? Calibration { get; init; }

    /// <summary>What past sessions say of each tag.</summary>
    public InputFile? History { get; init; }

    public InputFile? Policy { get; init; }

    /// <summary>Whether the gate "before operation" is asked for each kit.</summary>
    public bool AsksGate { get; init; }

    /// <summary>The ledger to read and to add to; <see langword="null"/> for none.</summary>
    public string? Ledger { get; init; }

    public ReportFormat Format { get; init; }

    /// <summary>Columns of the text report; <see langword="null"/> for those of the terminal, or 100 where there is none.</summary>
    public int? Width { get; init; }

    /// <summary>Where the report goes; <see langword="null"/> for standard output.</summary>
    public string? Out { get; init; }

    /// <summary>Where the report goes as an HTML page beside that; <see langword="null"/> for nowhere.</summary>
    public string? Html { get; init; }

    /// <summary>Every file to write a report to.</summary>
    public IEnumerable<string> Targets => new[] { Out, Html }.OfType<string>();

    /// <summary>The instant to conclude for; <see langword="null"/> for now.</summary>
    public DateTimeOffset? AsOf { get; init; }

    /// <summary>Every file to read.</summary>
    public IEnumerable<InputFile> Inputs =>
        [.. Manifests, .. OtherManifests, .. new[] { Bindings, Counts, Calibration, History, Policy }.OfType<InputFile>(), .. Sessions.SelectMany(session => new[] { session.Sheet, session.Reads })];

    /// <summary>The instant the report is made; <see langword="null"/> for now.</summary>
    public DateTimeOffset? MadeAt { get; init; }
}
