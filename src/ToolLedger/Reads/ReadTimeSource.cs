namespace ToolLedger.Reads;

/// <summary>Whose clock stamped the reads of a presentation.</summary>
public enum ReadTimeSource
{
    /// <summary>The reader's, whose offset from true time is measured at both ends.</summary>
    ReaderClock,

    /// <summary>The host's, at the arrival of each report: what is left when the reader's clock was reset. A report may have been buffered on its way, so that an
    /// arrival proves less than a stamp; a site has to accept it (<see cref="SessionPolicy.HostArrivalAccepted"/>).</summary>
    HostArrival,
}
