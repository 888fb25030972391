using System;
using ToolLedger.Kits;

namespace ToolLedger.Reconciliation;

/// <summary>Something on record that was done with a kit or a tool, from and to, both included.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="From">When it began.</param>
/// <param name="Until">When it ended; the end of time for a visit that goes on.</param>
/// <param name="SightedIn">The kit in which a tool was seen; empty for anything else, and where it was seen in none.</param>
internal readonly record struct Touch(object Entry, DateTimeOffset From, DateTimeOffset Until, KitId SightedIn = default);
