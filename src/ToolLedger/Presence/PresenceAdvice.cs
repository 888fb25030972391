namespace ToolLedger.Presence;

/// <summary>What settles a line fastest, in numbers.</summary>
/// <param name="Kind">What to do.</param>
/// <param name="Passes">New passes; 0 for others.</param>
/// <param name="Looks">The looks of each new pass, or those to add; 0 for a sighting.</param>
/// <param name="Chance">The chance that it then is accounted for, if it is there; 0 to 1.</param>
/// <param name="IsTagPoor">True where the tag's history says that it has to be qualified again.</param>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed record PresenceAdvice(PresenceAdviceKind Kind, int Passes, int Looks, double Chance, bool IsTagPoor);
