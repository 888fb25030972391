namespace ToolLedger.Identifiers.Schemes;

/// <summary>Hears where a field lies.</summary>
internal delegate void FieldListener(EpcField field, int offset, int width);
