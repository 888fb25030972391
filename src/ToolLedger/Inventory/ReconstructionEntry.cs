using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Inventory;

/// <summary>A reconstruction as stored: {"tool", "pieces", "decision", "signedBy", "witness"?}.</summary>
internal sealed class ReconstructionEntry : JsonRecord
{
    public JsonText Tool { get; set; }

    public JsonNumber Pieces { get; set; }

    public JsonText Decision { get; set; }

    public SignatureRecord? SignedBy { get; set => field = Note(value); }

    public JsonText Witness { get; set; }

    internal static ReconstructionEntry Of(Reconstruction reconstruction) => new()
    {
        Tool = new JsonText(reconstruction.Tool.Value),
        Pieces = new JsonNumber(reconstruction.Pieces),
        Decision = new JsonText(reconstruction.Decision),
        SignedBy = SignatureRecord.Of(reconstruction.SignedBy),
        Witness = new JsonText(reconstruction.Witness.IsEmpty ? null : reconstruction.Witness.Value),
    };

    internal Reconstruction? Read(RecordReader reader, string place)
    {
        reader.RefuseUnknown(this, place);
        string? tool = EntryMembers.Id(reader, Tool, place, "tool", InventoryRules.EntryWithoutTool);
        int? pieces = reader.Int32(Pieces, place, "pieces", 1, EntryChecks.MaxPieceCount);
        string? decision = reader.Text(Decision, place, "decision", Reconstruction.MaxDecisionLength);
        Signature? signedBy = EntryMembers.SignedBy(reader, SignedBy, place);
        string? witness = reader.OptionalText(Witness, place, "witness", IdText.MaxLength);
        return tool is null || pieces is null || decision is null || signedBy is null ? null : new Reconstruction
        {
            Tool = new ToolId(tool),
            Pieces = pieces.Value,
            Decision = decision,
            SignedBy = signedBy,
            Witness = witness is null ? default : new PersonId(witness),
        };
    }
}
