namespace CalibrationDesk;

/// <summary>What the process returns. The words are those of --help; 64 and 65 as in sysexits.h.</summary>
internal static class ExitCodes
{
    /// <summary>What was asked was done, and everything in it is fit or settled.</summary>
    public const int Fit = 0;

    /// <summary>Something is overdue, unfit or open.</summary>
    public const int NotFit = 1;

    /// <summary>The command line is wrong, or a file cannot be opened or written.</summary>
    public const int Usage = 64;

    /// <summary>A file was read and its content is refused.</summary>
    public const int BadInput = 65;
}
