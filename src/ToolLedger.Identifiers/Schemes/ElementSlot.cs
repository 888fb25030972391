using System.Runtime.InteropServices;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>Where one element lies.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct ElementSlot
{
    /// <summary>The application identifier, coded as <see cref="Schemes.Ai"/> says.</summary>
    internal int Ai;

    /// <summary>Where its value begins in the plain bytes.</summary>
    internal int Start;

    /// <summary>The bytes of the value.</summary>
    internal int Length;

    /// <summary>Where the element begins in the text as it was given.</summary>
    internal int Position;

    /// <summary>Where its value begins in the text as it was given.</summary>
    internal int ValuePosition;
}
