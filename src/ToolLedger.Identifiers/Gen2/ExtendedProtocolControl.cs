namespace ToolLedger.Identifiers.Gen2;

/// <summary>
/// The first extended protocol control word XPC_W1, bits 210h to 21Fh of a tag's EPC memory, while the toggle of the PC is
/// clear (GS1 TDS 2.3, s.9.4).
/// </summary>
/// <remarks>The default value has no bit set. Immutable, and therefore safe for use by any number of threads.</remarks>
/// <param name="Word">The 16 bits.</param>
public readonly record struct ExtendedProtocolControl(ushort Word)
{
    /// <summary>Bit 210h (XEB): a second word XPC_W2 exists.</summary>
    public bool HasSecondWord => (Word & 0x8000) != 0;

    /// <summary>Bit 214h (SA): sensor alarm.</summary>
    public bool SensorAlarm => (Word & 0x0800) != 0;

    /// <summary>Bit 215h (SS): simple sensor.</summary>
    public bool SimpleSensor => (Word & 0x0400) != 0;

    /// <summary>Bit 216h (FS): full-function sensor.</summary>
    public bool FullFunctionSensor => (Word & 0x0200) != 0;

    /// <summary>Bit 217h (SN): snapshot sensor.</summary>
    public bool SnapshotSensor => (Word & 0x0100) != 0;

    /// <summary>Bit 218h (B): battery assisted.</summary>
    public bool BatteryAssisted => (Word & 0x0080) != 0;

    /// <summary>Bit 219h (C): a computed response is ready.</summary>
    public bool ResponseReady => (Word & 0x0040) != 0;

    /// <summary>Bit 21Ah (SL): the selected flag.</summary>
    public bool Selected => (Word & 0x0020) != 0;

    /// <summary>Bit 21Bh (TN): tag notification.</summary>
    public bool Notification => (Word & 0x0010) != 0;

    /// <summary>Bit 21Ch (U): untraceable.</summary>
    public bool Untraceable => (Word & 0x0008) != 0;

    /// <summary>Bit 21Dh (K): killable.</summary>
    public bool Killable => (Word & 0x0004) != 0;

    /// <summary>Bit 21Eh (NR): not to be removed from the item.</summary>
    public bool NonRemovable => (Word & 0x0002) != 0;

    /// <summary>Bit 21Fh (H): attached to hazardous material.</summary>
    public bool Hazardous => (Word & 0x0001) != 0;
}
