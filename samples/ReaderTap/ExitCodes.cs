namespace ReaderTap;

/// <summary>What the process returns. The words are those of --help; 64, 65 and 69 as in sysexits.h.</summary>
internal static class ExitCodes
{
    /// <summary>The kit is complete; or what was asked was no closeout, and it was done.</summary>
    public const int Complete = 0;

    /// <summary>The kit is open or discrepant.</summary>
    public const int OpenOrDiscrepant = 1;

    /// <summary>The kit has no valid read.</summary>
    public const int NoValidRead = 2;

    /// <summary>The command line is wrong, or a file cannot be opened or written.</summary>
    public const int Usage = 64;

    /// <summary>A file was read and its content is refused.</summary>
    public const int BadInput = 65;

    /// <summary>Nobody answers at the port, or the other side did not keep to the protocol.</summary>
    public const int Unavailable = 69;
}
