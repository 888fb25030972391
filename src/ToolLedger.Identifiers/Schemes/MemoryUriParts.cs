using System.Runtime.InteropServices;
using ToolLedger.Identifiers.Gen2;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>What the control fields of a URI say about the words in front of the EPC.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct MemoryUriParts
{
    internal byte Low;
    internal bool UserMemory;
    internal bool Toggle;
    internal bool HasFirst;
    internal ushort First;
    internal bool HasSecond;
    internal ushort Second;

    internal readonly ProtocolControl ControlFor(Epc epc)
    {
        int word = ((epc.BitCount + 15) / 16) << 11;
        word |= UserMemory ? 0x0400 : 0;
        word |= HasFirst ? 0x0200 : 0;
        word |= Toggle ? 0x0100 : 0;
        return new ProtocolControl((ushort)(word | Low));
    }
}
