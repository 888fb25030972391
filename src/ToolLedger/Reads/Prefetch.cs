using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics.X86;

namespace ToolLedger.Reads;

/// <summary>Asks for memory ahead of its use, where the processor has an instruction for it that .NET knows; otherwise nothing happens.</summary>
internal static unsafe class Prefetch
{
    /// <summary>Asks for the line in which a value begins.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static void Line<T>(ref readonly T value)
    {
        if (Sse.IsSupported)
        {
            // The address is only a hint: it may be stale after a collection, and is never followed.
            Sse.Prefetch0(Unsafe.AsPointer(ref Unsafe.AsRef(in value)));
        }
    }
}
