namespace ToolLedger.Interchange;

/// <summary>How a file of reads writes a tag.</summary>
public enum ReadTagForm
{
    /// <summary>The EPC as hexadecimal digits of either case and nothing else.</summary>
    EpcHex,

    /// <summary>The text form of a tag id: <c>epc:</c>, <c>iso11784:</c>, <c>iso15693:</c> or <c>text:</c>, or bare digits of an EPC.
    /// <c>epc:</c> alone is a tag that answers without bits.</summary>
    TagIdText,

    /// <summary>Any text of 1 to 64 printable characters, taken as it stands.</summary>
    PlainText,
}
