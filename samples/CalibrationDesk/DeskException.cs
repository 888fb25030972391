using System;

namespace CalibrationDesk;

/// <summary>Ends the run with a sentence for a person and an exit code.</summary>
internal sealed class DeskException(int exitCode, string message) : Exception(message)
{
    public int ExitCode { get; } = exitCode;
}
