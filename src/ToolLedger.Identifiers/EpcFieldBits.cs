using System.Runtime.InteropServices;

namespace ToolLedger.Identifiers;

/// <summary>Where one field lies in the bits of an EPC, and what it says.</summary>
/// <remarks>The default value is no field. Immutable, and therefore safe for use by any number of threads.</remarks>
/// <param name="Field">The field.</param>
/// <param name="Offset">The position of its first bit, from 0.</param>
/// <param name="Width">The number of its bits.</param>
/// <param name="Value">The value in text, as it stands in a URI but without escapes.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct EpcFieldBits(EpcField Field, int Offset, int Width, string Value);
