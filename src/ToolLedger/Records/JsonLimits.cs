using System.Runtime.InteropServices;

namespace ToolLedger.Records;

/// <summary>How much one JSON text may hold; checked before anything is built from it.</summary>
/// <param name="ByteCount">Bytes of the whole text.</param>
/// <param name="ItemCount">Entries of any one list.</param>
/// <param name="MemberCount">Members of any one object.</param>
/// <param name="TextByteCount">Bytes of any one text or number.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct JsonLimits(int ByteCount, int ItemCount = int.MaxValue, int MemberCount = int.MaxValue, int TextByteCount = int.MaxValue)
{
    /// <summary>Bytes of a stored record, unless its type says otherwise: 64 MiB.</summary>
    internal const int RecordByteCount = 64 * 1024 * 1024;

    /// <summary>Members of an object of a stored record.</summary>
    internal const int RecordMemberCount = 64;

    /// <summary>Bytes of a text of a stored record.</summary>
    internal const int RecordTextByteCount = 64 * 1024;

    /// <summary>The limits of a stored record whose lists hold at most so many entries.</summary>
    internal static JsonLimits ForRecord(int itemCount, int byteCount = RecordByteCount) =>
        new(byteCount, itemCount, RecordMemberCount, RecordTextByteCount);
}
