using System.Collections.Generic;

namespace ToolLedger.Tests.Holds;

/// <summary>The rules of a hold in their plainest form, written without looking at the library: persons 1 and 2 are entitled, who declared it may not release it.</summary>
internal sealed class HoldModel
{
    private int declarer;
    private bool isReleased;
    private bool isReleasedAsFound;
    private bool isDiscontinued;
    private bool isLeft;

    /// <summary>The find that stands; null if none does.</summary>
    public string? Found { get; private set; }

    private readonly List<string> finds = [];

    private string? releasedOn;

    public bool IsHeld => declarer > 0 && !isReleased;

    public bool Try(in HoldCommand command, string id)
    {
        bool isEntitled = command.SaysRole && command.Person <= 2;
        switch (command.Kind)
        {
            case 0:
                if (declarer > 0)
                {
                    return false;
                }

                declarer = command.Person;
                return true;
            case 1 when IsHeld:
                finds.Add(id);
                Found = id;
                return true;
            case 2 when finds.Count > 0:
                string last = finds[^1];
                finds.RemoveAt(finds.Count - 1);
                Found = finds.Count > 0 ? finds[^1] : null;
                isReleased &= !(isReleasedAsFound && releasedOn == last);
                return true;
            case 3 when IsHeld && isEntitled:
                isDiscontinued = true;
                return true;
            case 4 when IsHeld && isEntitled:
                isLeft = true;
                return true;
            case 5:
                return IsHeld && isEntitled;
            case 6:
                return IsHeld;
            case >= 7 when IsHeld && isEntitled && command.Person != declarer:
                bool hasGround = command.Ground switch { 0 => Found is null && isDiscontinued, 1 => Found is not null, 2 => isLeft, _ => true };
                if (hasGround)
                {
                    isReleased = true;
                    isReleasedAsFound = command.Ground == 1;
                    releasedOn = Found;
                }

                return hasGround;
            default:
                return false;
        }
    }

    /// <summary>The find that a withdrawal names: the last that stands.</summary>
    public string LastFind => finds.Count > 0 ? finds[^1] : "none";
}
