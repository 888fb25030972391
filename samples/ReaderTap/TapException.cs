using System;

namespace ReaderTap;

/// <summary>Ends the run with a sentence for a person and an exit code.</summary>
internal sealed class TapException : Exception
{
    public TapException(int exitCode, string message)
        : base(message)
    {
        ExitCode = exitCode;
    }

    public int ExitCode { get; }
}
