using System;

namespace ToolLedger.Tests.Architecture;

/// <summary>One use of a type, read from compiled code.</summary>
/// <param name="User">The type whose code or signature uses another; for what a compiler made, the written type around it.</param>
/// <param name="Member">Where: the member's name, or what part of the type's own declaration.</param>
/// <param name="Used">The type used; a nested type counts as the outermost one around it.</param>
internal sealed record TypeUse(Type User, string Member, Type Used);
