using System.Collections.Generic;

namespace ToolLedger.Tests.Custody;

/// <summary>The rules of custody in their plainest form: two dictionaries of who holds what, written without looking at the library.</summary>
internal sealed class CustodyModel
{
    private readonly Dictionary<int, (int Holder, int First)> kits = [];
    private readonly Dictionary<int, (string Receipt, int Borrower)> tools = [];

    /// <summary>Who answers for a kit; null for the tool room.</summary>
    public int? HolderOfKit(int kit) => kits.TryGetValue(kit, out (int Holder, int First) with) ? with.Holder : null;

    public int? HolderOfTool(int kit, int tool) => tools.TryGetValue(tool, out (string, int Borrower) on) ? on.Borrower : HolderOfKit(kit);

    public string? ReceiptOf(int tool) => tools.TryGetValue(tool, out (string Receipt, int) on) ? on.Receipt : null;

    /// <summary>Applies a command; false if it must be refused.</summary>
    public bool Try(in CustodyCommand command, string id)
    {
        switch (command.Kind)
        {
            case 0:
                return command.Person != command.Other && kits.TryAdd(command.Kit, (command.Other, command.Other));
            case 1:
                return kits.TryGetValue(command.Kit, out (int Holder, int First) with) && command.Other != with.Holder && command.Other != with.First && kits.Remove(command.Kit);
            case 2:
                if (!kits.TryGetValue(command.Kit, out (int Holder, int First) from) || from.Holder != command.Person || command.Other == command.Person)
                {
                    return false;
                }

                kits[command.Kit] = (command.Other, from.First);
                return true;
            case 3:
                bool mayLend = command.Person != command.Other && (HolderOfKit(command.Kit) is not { } holder || holder == command.Person);
                return mayLend && tools.TryAdd(command.Tool, (id, command.Other));
            case 4:
                return tools.TryGetValue(command.Tool, out (string, int Borrower) on) && on.Borrower != command.Other && tools.Remove(command.Tool);
            default:
                return true;
        }
    }
}
