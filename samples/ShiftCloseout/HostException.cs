using System;
using System.Collections.Generic;

namespace ShiftCloseout;

/// <summary>Ends the run with a message for a person: lines for standard error and an exit code.</summary>
internal sealed class HostException : Exception
{
    public HostException(int exitCode, params IReadOnlyList<string> lines)
        : base(string.Join(Environment.NewLine, lines))
    {
        ExitCode = exitCode;
        Lines = lines;
    }

    public int ExitCode { get; }

    public IReadOnlyList<string> Lines { get; }
}
