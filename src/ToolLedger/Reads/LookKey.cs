namespace ToolLedger.Reads;

/// <summary>A look in 63 bits, in the order in which evidence is listed: tag number, pass, antenna, slot.</summary>
internal static class LookKey
{
    /// <summary>Slots are below this: seven days of the shortest slots, 60,480,000, fit.</summary>
    internal const int SlotLimit = 1 << SlotBits;

    internal const int SlotBits = 26;
    private const int AntennaShift = SlotBits;
    private const int PassShift = AntennaShift + 8;
    private const int TagShift = PassShift + 7;

    internal static ulong Of(int tag, int pass, byte antenna, int slot) =>
        ((ulong)(uint)tag << TagShift) | ((ulong)(uint)pass << PassShift) | ((ulong)antenna << AntennaShift) | (uint)slot;

    internal static int Tag(ulong look) => (int)(look >> TagShift);

    internal static int Pass(ulong look) => (int)(look >> PassShift) & 0x7F;

    internal static byte Antenna(ulong look) => (byte)(look >> AntennaShift);

    internal static int Slot(ulong look) => (int)look & (SlotLimit - 1);

    /// <summary>Everything but the slot.</summary>
    internal static ulong Cell(ulong look) => look >> SlotBits;

    internal static ulong WithPass(ulong look, int pass) =>
        (look & ~(0x7FUL << PassShift)) | ((ulong)(uint)pass << PassShift);
}
