namespace ShiftCloseout;

/// <summary>What the process returns. The words are those of --help.</summary>
internal static class ExitCodes
{
    /// <summary>Every kit is complete.</summary>
    public const int Complete = 0;

    /// <summary>A kit is open or discrepant, or the gate before operation was asked for and a kit does not satisfy it.</summary>
    public const int OpenOrDiscrepant = 1;

    /// <summary>A kit has no valid read.</summary>
    public const int NoValidRead = 2;

    /// <summary>The command line is wrong, or a file it names or standard output cannot be opened or written (64 as in sysexits.h, EX_USAGE).</summary>
    public const int Usage = 64;

    /// <summary>A file was read and its content is refused (65 as in sysexits.h, EX_DATAERR).</summary>
    public const int BadInput = 65;
}
