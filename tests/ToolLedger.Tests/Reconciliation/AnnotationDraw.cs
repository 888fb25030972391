using ToolLedger.Inventory;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>An annotation drawn at random.</summary>
public sealed record AnnotationDraw(int Line, AnnotationKind Kind, int Minutes, int Amount);
