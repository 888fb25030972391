using System.Runtime.InteropServices;
using ToolLedger.Presence;

namespace ToolLedger.Reconciliation;

/// <summary>What a plain line was judged by: see <see cref="PlainKit"/>.</summary>
/// <param name="State">Where it stands.</param>
/// <param name="Presence">What its reads suffice for; null for a line that nobody can read, and where a risk decided.</param>
/// <param name="Risk">The risk that decided, 0 to 1; null where none did. Its terms are worked out when somebody asks.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct PlainLine(LineState State, PresenceJudgement? Presence, double? Risk = null);
