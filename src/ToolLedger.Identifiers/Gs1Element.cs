using System.Runtime.InteropServices;

namespace ToolLedger.Identifiers;

/// <summary>One GS1 element: the number of an application identifier and its value, without brackets and escapes.</summary>
/// <remarks>The default value holds no text. Immutable, and therefore safe for use by any number of threads.</remarks>
/// <param name="ApplicationIdentifier">The number as it is written: 2 to 4 digits, such as <c>8004</c>.</param>
/// <param name="Value">The value.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Gs1Element(string ApplicationIdentifier, string Value);
