using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Custody;
using ToolLedger.Holds;
using ToolLedger.Records;
using ToolLedger.Tests.Custody;
using ToolLedger.Tools;
using Xunit;
using static ToolLedger.Tests.Custody.CustodyScene;
using static ToolLedger.Tests.Holds.HoldScene;

namespace ToolLedger.Tests.Holds;

/// <summary>Sequences of commands about holds against a plain model. TOOLLEDGER_SEQUENCES sets how many sequences; the default is 1,000.</summary>
public sealed class HoldMachineTests
{
    private static readonly RoleRoster TwoEntitled = new(((string[])["P1", "P2"]).Select(static person => new RoleGrant { Person = new PersonId(person), Role = Authority, From = Day.AddDays(-10) }));
    private static readonly ExposureMap Around = Map(Afternoon());

    private static Gen<HoldCommand[]> Commands() =>
        (from kind in Gen.Choose(0, 9)
         from hold in Gen.Choose(1, 2)
         from person in Gen.Choose(1, 3)
         from role in Gen.Elements(true, true, false)
         from ground in Gen.Choose(0, 3)
         select new HoldCommand(kind, hold, person, role, ground)).ArrayOf().Resize(30);

    // No sequence of commands ends a hold without an entitled release; the book takes and refuses what the model does.
    [Fact]
    public void A_hold_stands_and_ends_like_a_plain_model_after_every_command() => Check.One(CustodyMachineTests.Run(), Prop.ForAll(Arb.From(Commands()), commands =>
    {
        var book = new HoldBook(HoldPolicy.Default, TwoEntitled, Around);
        HoldModel[] models = [new(), new()];
        List<HoldEntry> taken = [];
        for (int i = 0; i < commands.Length; i++)
        {
            HoldModel model = models[commands[i].Hold - 1];
            bool wasHeld = model.IsHeld;
            HoldEntry entry = EntryOf(commands[i], i, model);
            bool isTaken = book.Record(entry, out IReadOnlyList<RecordIssue> issues) == RecordAnswer.Recorded;
            bool expected = model.Try(commands[i], entry.Id.Value);

            // A second declaration of the same hold has the id of the first and other content.
            Assert.Equal(expected, isTaken);
            Assert.Equal(isTaken, issues.Count == 0);
            if (isTaken)
            {
                taken.Add(entry);
            }

            for (int hold = 1; hold <= 2; hold++)
            {
                Assert.Equal(models[hold - 1].IsHeld, book.Live.Find(IdOf(hold), entry.At)?.IsHeld ?? false);
                Assert.Equal(models[hold - 1].Found, book.Live.Find(IdOf(hold), entry.At)?.Found?.Id.Value);
            }

            Assert.True(!wasHeld || model.IsHeld || entry is HoldRelease { Role: var role, By.Value: "P1" or "P2" } && role == Authority);
        }

        HoldRegister replayed = new(HoldPolicy.Default, TwoEntitled, Around, Enumerable.Reverse(taken));
        Assert.Empty(replayed.Refused);
        Assert.Equal(Text(book.Live), Text(replayed));
    }));

    // As of: what is recorded later with a later time changes no earlier status.
    [Fact]
    public void Later_entries_never_change_an_earlier_status() => Check.One(CustodyMachineTests.Run(4), Prop.ForAll(Arb.From(Commands()), commands =>
    {
        HoldModel[] models = [new(), new()];
        List<HoldEntry> entries = [];
        for (int i = 0; i < commands.Length; i++)
        {
            HoldModel model = models[commands[i].Hold - 1];
            entries.Add(EntryOf(commands[i], i, model));
            model.Try(commands[i], entries[^1].Id.Value);
        }

        HoldRegister all = new(HoldPolicy.Default, TwoEntitled, Around, entries);
        for (int count = 1; count < entries.Count; count += 4)
        {
            DateTimeOffset at = entries[count].At;
            Assert.Equal(TextAt(new HoldRegister(HoldPolicy.Default, TwoEntitled, Around, entries.Take(count + 1)), at), TextAt(all, at));
        }
    }));

    private static EntryId IdOf(int hold) => new("M" + hold.ToString(CultureInfo.InvariantCulture));

    private static HoldEntry EntryOf(in HoldCommand command, int index, HoldModel model)
    {
        var id = new EntryId("E" + index.ToString(CultureInfo.InvariantCulture));
        DateTimeOffset at = At(16).AddMinutes(index);
        var by = new PersonId("P" + command.Person.ToString(CultureInfo.InvariantCulture));
        Role role = command.SaysRole ? Authority : default;
        EntryId hold = IdOf(command.Hold);
        return command.Kind switch
        {
            0 => new MissingDeclaration { Id = hold, At = at, By = by, Description = "tool 7", Tool = new ToolId("T7"), Kit = K1 },
            1 => new FoundDeclaration { Id = id, At = at, By = by, Hold = hold, Tool = new ToolId("T7"), MarkRead = "K1-7" },
            2 => new FoundWithdrawal { Id = id, At = at, By = by, Found = new EntryId(model.LastFind), Reason = "another mark" },
            3 => new SearchDiscontinuation { Id = id, At = at, By = by, Role = role, Hold = hold, Decision = "searched" },
            4 => new LeftInPlace { Id = id, At = at, By = by, Role = role, Hold = hold, Location = "frame 12", Equipment = new EquipmentId("B"), Decision = "no hazard" },
            5 => new HoldNarrowing { Id = id, At = at, By = by, Role = role, Hold = hold, NotAffected = [new AffectedThing(new EquipmentId("B"))], Decision = "closed before" },
            6 => new HoldNotification { Id = id, At = at, By = by, Hold = hold, Told = "quality assurance" },
            _ => new HoldRelease { Id = id, At = at, By = by, Role = role, Hold = hold, Ground = (ReleaseGround)command.Ground, Decision = "inspected" },
        };
    }

    private static string Text(HoldRegister register) => string.Join('\n', register.Entries.Select(static entry => entry.ToString()).Append(TextAt(register, At(23))));

    private static string TextAt(HoldRegister register, DateTimeOffset at) => string.Join('\n', register.StatusAt(at).Select(static status =>
        $"{status.Declaration} held {status.IsHeld} by {status.Release?.Id} found {status.Found?.Id} affects {string.Join('|', status.Affected)}"));
}
