using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Custody;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;
using Xunit;
using static ToolLedger.Tests.Custody.CustodyScene;

namespace ToolLedger.Tests.Custody;

/// <summary>Sequences of commands against a plain model, and what must hold of any entries in any order. TOOLLEDGER_SEQUENCES sets how many sequences; the default is 1,000.</summary>
public sealed class CustodyMachineTests
{
    private static readonly KitRegister TwoKits = CustodyScene.Kits();

    internal static int SequenceCount { get; } =
        Environment.GetEnvironmentVariable("TOOLLEDGER_SEQUENCES") is { Length: > 0 } text ? int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture) : 1000;

    internal static Config Run(int share = 1) => Config.QuickThrowOnFailure.WithMaxTest(Math.Max(1, SequenceCount / share)).WithQuietOnSuccess(true);

    internal static Gen<CustodyCommand[]> Commands() =>
        (from kind in Gen.Choose(0, 5)
         from kit in Gen.Choose(1, 2)
         from tool in Gen.Choose(1, 2)
         from person in Gen.Choose(1, 4)
         from other in Gen.Choose(1, 4)
         from minutes in Gen.Choose(0, 40)
         select new CustodyCommand(kind, kit, tool, person, other, minutes)).ArrayOf().Resize(40);

    // The book accepts and refuses exactly what the model does, and both say alike who answers, after every command.
    [Fact]
    public void The_book_answers_like_a_plain_model_after_every_command() => Check.One(Run(), Prop.ForAll(Arb.From(Commands()), commands =>
    {
        var book = new CustodyBook(CustodyPolicy.Default, TwoKits);
        var model = new CustodyModel();
        DateTimeOffset at = At(6);
        for (int i = 0; i < commands.Length; i++)
        {
            // One minute at least: within one instant the book orders by kind, not by the order of handing in.
            at = at.AddMinutes(commands[i].Minutes + 1);
            CustodyEntry entry = EntryOf(commands[i], at, i, model.ReceiptOf(ToolOf(commands[i])));
            bool isTaken = book.Record(entry, out IReadOnlyList<RecordIssue> issues) == RecordAnswer.Recorded;
            CustodyCommand command = commands[i] with { Tool = ToolOf(commands[i]) };
            Assert.Equal(model.Try(command, entry.Id.Value), isTaken);
            Assert.Equal(isTaken, issues.Count == 0);
            foreach (int kit in (int[])[1, 2])
            {
                Assert.Equal(model.HolderOfKit(kit), NumberOf(book.Live.HolderOf(KitOf(kit), at)));
                foreach (int tool in (int[])[1, 2])
                {
                    int number = (10 * kit) + tool;
                    Assert.Equal(model.HolderOfTool(kit, number), NumberOf(book.Live.HolderOf(ToolIdOf(number), at)));
                }
            }
        }
    }));

    // Whatever was recorded, also what may not take effect: the order of delivery changes nothing, and delivering twice neither.
    [Fact]
    public void Order_and_repetition_of_entries_change_no_answer() => Check.One(Run(4), Prop.ForAll(Arb.From(Commands()), Arb.From(Gen.Choose(0, int.MaxValue)), (commands, seed) =>
    {
        CustodyEntry[] entries = EntriesOf(commands);
        CustodyEntry[] shuffled = [.. entries.Concat(entries).OrderBy(entry => HashOf(entry, seed))];
        CustodyRegister one = Register(entries), other = Register(shuffled);

        Assert.Equal(Text(one), Text(other));
        Assert.Equal(one.Digest, other.Digest);
    }));

    // Entry by entry, also late ones, comes to the same as all at once.
    [Fact]
    public void Recording_one_by_one_comes_to_the_same_as_replaying() => Check.One(Run(4), Prop.ForAll(Arb.From(Commands()), commands =>
    {
        var book = new CustodyBook(CustodyPolicy.Default, TwoKits);
        List<CustodyEntry> taken = [];
        foreach (CustodyEntry entry in EntriesOf(commands).OrderBy(entry => HashOf(entry, 7)))
        {
            if (book.Record(entry, out _) == RecordAnswer.Recorded)
            {
                taken.Add(entry);
            }
        }

        Assert.Equal(Text(Register(taken)), Text(book.Live));
        Assert.Equal(Text(book.Live), Text(book.ToRegister()));
    }));

    // As of: what happens later never changes the answer about an earlier instant.
    [Fact]
    public void Later_entries_never_change_an_earlier_answer() => Check.One(Run(4), Prop.ForAll(Arb.From(Commands()), commands =>
    {
        CustodyEntry[] entries = [.. EntriesOf(commands).OrderBy(static entry => entry.At)];
        CustodyRegister all = Register(entries);
        for (int count = 0; count < entries.Length; count += 3)
        {
            DateTimeOffset at = entries[count].At;
            Assert.Equal(TextAt(Register(entries.Where(entry => entry.At <= at)), at), TextAt(all, at));
        }
    }));

    // Conservation: the spans of each kit and tool begin at the beginning, touch each other, and the last goes on; each says what the look-up says.
    [Fact]
    public void Custody_has_no_gap_and_no_overlap() => Check.One(Run(4), Prop.ForAll(Arb.From(Commands()), commands =>
    {
        CustodyRegister register = Register(EntriesOf(commands));
        DateTimeOffset end = At(23).AddDays(30);
        foreach (int tool in (int[])[11, 12, 21, 22])
        {
            AssertWhole(register.HistoryOf(ToolIdOf(tool), end), at => register.HolderOf(ToolIdOf(tool), at));
        }

        foreach (int kit in (int[])[1, 2])
        {
            AssertWhole(register.HistoryOf(KitOf(kit), end), at => register.HolderOf(KitOf(kit), at));
        }
    }));

    private static void AssertWhole(IReadOnlyList<CustodySpan> spans, Func<DateTimeOffset, CustodyHolder> holderAt)
    {
        Assert.Equal(DateTimeOffset.MinValue, spans[0].From);
        Assert.Null(spans[^1].Until);
        for (int i = 0; i < spans.Count; i++)
        {
            if (i > 0)
            {
                Assert.Equal(spans[i - 1].Until, spans[i].From);
                Assert.Equal(spans[i].Holder, holderAt(spans[i].From));
            }

            if (spans[i].Until is { } until)
            {
                Assert.True(spans[i].From < until);
                Assert.Equal(spans[i].Holder, holderAt(until.AddTicks(-1)));
            }
        }
    }

    internal static CustodyEntry[] EntriesOf(CustodyCommand[] commands)
    {
        var model = new CustodyModel();
        var entries = new CustodyEntry[commands.Length];
        DateTimeOffset at = At(6);
        for (int i = 0; i < commands.Length; i++)
        {
            at = at.AddMinutes(commands[i].Minutes);
            entries[i] = EntryOf(commands[i], at, i, model.ReceiptOf(ToolOf(commands[i])));
            model.Try(commands[i] with { Tool = ToolOf(commands[i]) }, entries[i].Id.Value);
        }

        return entries;
    }

    /// <summary>The tools of kit 1 are 11 and 12, those of kit 2 are 21 and 22.</summary>
    private static int ToolOf(in CustodyCommand command) => (10 * command.Kit) + command.Tool;

    private static CustodyEntry EntryOf(in CustodyCommand command, DateTimeOffset at, int index, string? receipt)
    {
        string id = "E" + index.ToString(CultureInfo.InvariantCulture);
        string kit = KitOf(command.Kit).Value, person = NameOf(command.Person), other = NameOf(command.Other);
        return command.Kind switch
        {
            0 => Issue(id, at, other, kit, person),
            1 => TurnIn(id, at, other, person, kit),
            2 => Transfer(id, at, person, other, kit),
            3 => Loan(id, at, ToolIdOf(ToolOf(command)).Value, person, other, kit),
            4 => Close(id, at, receipt ?? "none", person, other),
            _ => Visit(id, at, at.AddMinutes(30), "A", kit),
        };
    }

    private static CustodyRegister Register(IEnumerable<CustodyEntry> entries) => new(CustodyPolicy.Default, TwoKits, new CustodyLog(entries));

    private static string Text(CustodyRegister register) => string.Join('\n', register.Entries.Select(static entry => entry.ToString())
        .Concat(register.Refused.Select(static one => $"{one.Entry.Id} {string.Join(',', one.Issues.Select(static issue => issue.Rule))}"))
        .Append(TextAt(register, At(23).AddDays(30))));

    private static string TextAt(CustodyRegister register, DateTimeOffset at) => string.Join('\n',
        ((int[])[1, 2]).SelectMany(kit => register.HistoryOf(KitOf(kit), at).Select(static span => span.ToString())
            .Concat(register.VisitsOf(KitOf(kit), DateTimeOffset.MinValue, at).Select(static one => $"{one.Visit} {one.Until:O}")))
        .Concat(((int[])[11, 12, 21, 22]).SelectMany(tool => register.HistoryOf(ToolIdOf(tool), at).Select(static span => span.ToString()))));

    private static KitId KitOf(int number) => number == 1 ? K1 : K2;

    private static ToolId ToolIdOf(int number) => new((number < 20 ? "T" : "U") + (number % 10).ToString(CultureInfo.InvariantCulture));

    private static string NameOf(int number) => "P" + number.ToString(CultureInfo.InvariantCulture);

    private static int? NumberOf(CustodyHolder holder) => holder.IsPerson ? int.Parse(holder.Person.Value.AsSpan(1), NumberStyles.None, CultureInfo.InvariantCulture) : null;

    private static int HashOf(CustodyEntry entry, int seed) => unchecked((int.Parse(entry.Id.Value.AsSpan(1), NumberStyles.None, CultureInfo.InvariantCulture) + 1) * 40503 * ((seed | 1) % 65521));
}
