namespace ShiftCloseout;

/// <summary>The two files of one presentation, as a pair on the command line.</summary>
/// <param name="Sheet">The presentation sheet.</param>
/// <param name="Reads">The reads of that session.</param>
internal sealed record SessionFiles(InputFile Sheet, InputFile Reads);
