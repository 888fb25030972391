using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using System.Threading.Tasks;
using FsCheck.Xunit;
using ToolLedger.Interchange;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Testing.Generators;
using Xunit;

namespace ToolLedger.Tests.Interchange;

/// <summary>Moment 4 of the trade from the other end: a list that somebody kept in a table becomes a manifest, and what was not understood is told row by row.</summary>
public sealed class MasterListFileTests
{
    private static readonly DateTimeOffset Start = new(2026, 3, 1, 0, 0, 0, TimeSpan.Zero);

    private static readonly MasterListOptions Shop = new()
    {
        Columns = new MasterListColumns
        {
            Line = "No.",
            Kind = "What",
            Location = "Drawer",
            Tool = "Tool no.",
            Description = "Description",
            Mark = "Etched",
            Pieces = "Pieces",
            Quantity = "Qty",
            Unit = "Unit",
            Contents = "Holds",
            Total = "In all",
        },
        KindWords = new Dictionary<string, string>(StringComparer.Ordinal) { ["T"] = "tool", ["S"] = "set", ["C"] = "counted", ["U"] = "consumable" },
        Delimiter = ';',
        PiecesNotStatedMeansOne = true,
    };

    private const string Header = "No.;What;Drawer;Tool no.;Description;Etched;Pieces;Qty;Unit;Holds;In all;Shelf price\r\n";

    [Fact]
    public void A_shop_list_with_its_own_columns_and_words_becomes_a_manifest()
    {
        MasterList list = Read("\uFEFF" + Header
            + "1;T;left;T1;\"spanner 10 mm; long\";K1-1;;1;each;;;9.50\r\n"
            + "2;T;left;T2;\"ratchet \"\"fine\"\"\";K1-2;3;;;;;\r\n"
            + "\r\n"
            + "3;S;lid;H1;holder;;;;;nine keys;10;\r\n"
            + "4;U;;;safety wire;;;2.5;metre;;;\r\n");

        Assert.True(list.IsComplete, string.Join('\n', list.Issues));
        Assert.Equal(["Shelf price"], list.UnusedColumns);
        Assert.Equal(
            ["line 1: spanner 10 mm; long, 1 each", "line 2: ratchet \"fine\", 1 each", "line 3: nine keys, 10 each", "line 4: safety wire, 2.5 metre"],
            list.Lines.Select(static line => line.ToString()));
        KitManifest manifest = list.MakeManifest(new KitId("K1"), 1, "kit", Start, new Signature { By = new PersonId("p-1"), At = Start });
        Assert.Equal((4, 3), (manifest.Lines.Count, manifest.Lines[1].Tool!.PieceCount));
    }

    [Theory]
    [InlineData("1;X;;T1;spanner;;;;;;;", "What", "X", "master-list.unknown-kind")]
    [InlineData("1;;;T1;spanner;;;;;;;", "What", "", "master-list.unknown-kind")]
    [InlineData("1;T;;;spanner;;;;;;;", "Tool no.", "", "record.missing-member")]
    [InlineData("1;T;;T1;;;;;;;;", "Description", "", "record.missing-member")]
    [InlineData(";T;;T1;spanner;;;;;;;", "No.", "", "manifest.no-line-number")]
    [InlineData("10000;T;;T1;spanner;;;;;;;", "No.", "10000", "record.out-of-range")]
    [InlineData("one;T;;T1;spanner;;;;;;;", "No.", "one", "master-list.bad-number")]
    [InlineData("1;T;;T1;spanner;;0;;;;;", "Pieces", "0", "manifest.no-piece-count")]
    [InlineData("1;T;;T1;spanner;;1,5;;;;;", "Pieces", "1,5", "master-list.bad-number")]
    [InlineData("1;T;;T1;spanner;;;4;;;;", "Qty", "4", "master-list.not-one")]
    [InlineData("1;T;;T1;spanner;;;1;box;;;", "Unit", "box", "master-list.not-one")]
    [InlineData("1;T;;T1;spanner;;;;;keys;;", "Holds", "keys", "master-list.not-for-kind")]
    [InlineData("1;S;;H1;holder;;;;;keys;1;", "In all", "1", "manifest.set-total")]
    [InlineData("1;S;;H1;holder;;;;;;10;", "Holds", "", "record.missing-member")]
    [InlineData("1;C;;;rags;;;;each;;;", "Qty", "", "manifest.line-without-quantity")]
    [InlineData("1;C;;;rags;;;6;;;;", "Unit", "", "manifest.line-without-unit")]
    [InlineData("1;C;;;rags;;;1e3;each;;;", "Qty", "1e3", "master-list.bad-number")]
    [InlineData("1;C;;;rags;;;0.0000000000000000000000000001;each;;;", "Qty", "0.0000000000000000000000000001", "master-list.bad-number")]
    [InlineData("1;C;;;rags;K1-1;;6;each;;;", "Etched", "K1-1", "master-list.not-for-kind")]
    [InlineData("1;T;;T1;spanner;a\u200Bb;;;;;;", "Etched", "a\\u{200B}b", "record.text-not-printable")]
    public void What_is_wrong_in_a_field_is_told_with_row_column_and_what_was_found(string row, string column, string found, string rule)
    {
        MasterList list = Read(Header + "9;T;;T9;wrench;;;;;;;\n" + row + "\n8;T;;T8;wrench;;;;;;;\n");
        MasterListIssue issue = Assert.Single(list.Issues);

        Assert.Equal((3L, column, found, rule), (issue.RowNumber, issue.Column, issue.Found, issue.Rule));
        Assert.Equal([9, 8], list.Lines.Select(static line => line.Number));
        Assert.Equal(1, list.BadRowCount);
        Assert.False(list.IsComplete);
    }

    [Theory]
    [InlineData("1;T;;T1;spanner", "read-file.too-few-columns")]
    [InlineData("1;T;;T1;spanner;;;;;;;;;", "read-file.too-many-columns")]
    [InlineData("1;T;;T1;\"spanner;;;;;;;", "read-file.bad-quotes")]
    public void A_row_that_cannot_be_cut_into_fields_is_told_as_a_whole(string row, string rule)
    {
        MasterListIssue issue = Assert.Single(Read(Header + row + "\n").Issues);
        Assert.Equal((2L, null, rule), (issue.RowNumber, issue.Column, issue.Rule));
        Assert.StartsWith("1;T;;T1;", issue.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_second_row_for_one_tool_or_one_number_is_told_even_if_the_first_was_refused()
    {
        MasterList list = Read(Header + "1;T;;T1;;;;;;;;\n2;T;;T1;spanner;;;;;;;\n2;T;;T2;spanner;;;;;;;\n");
        Assert.Equal(
            ["2 record.missing-member Description", "3 manifest.same-tool-twice Tool no.", "4 manifest.duplicate-line-number No."],
            list.Issues.Select(static issue => $"{issue.RowNumber} {issue.Rule} {issue.Column}"));
        Assert.Empty(list.Lines);
    }

    [Theory]
    [InlineData("", "read-file.no-header")]
    [InlineData("\n \n", "read-file.no-header")]
    [InlineData("No.;What\n1;T\n", "master-list.missing-columns")]
    [InlineData("No.;No.;What;Drawer;Tool no.;Description;Etched;Pieces;Qty;Unit;Holds;In all\n", "read-file.duplicate-column")]
    [InlineData("\"No.;What\n", "read-file.bad-quotes")]
    public void A_header_that_does_not_fit_is_an_issue_and_no_row_is_read(string text, string rule)
    {
        MasterList list = Read(text);
        Assert.Empty(list.Lines);
        Assert.Equal(rule, Assert.Single(list.Issues).Rule);
        Assert.Equal(1, list.BadRowCount);
    }

    /// <summary>Whoever mends a header wants to know everything that it lacks at once.</summary>
    [Fact]
    public void All_columns_that_a_header_lacks_are_told_at_once()
    {
        string issue = Assert.Single(Read("\nNo.;What;Drawer;Tool no.;Description;Etched;Qty;Unit;In all\n1;T\n").Issues).ToString();
        Assert.Equal(
            "line 2 of the file: The header has no columns \"Pieces\", \"Holds\". (master-list.missing-columns) No.;What;Drawer;Tool no.;Description;Etched;Qty;Unit;In all",
            issue);
    }

    [Fact]
    public void What_a_sentence_quotes_is_not_said_twice()
    {
        MasterList list = Read(Header + "1;X;;T1;spanner;;;;;;;\n2;T;;T2;spanner;a\u200Bb;;;;;;\n");
        Assert.Equal("line 2 of the file, column What: \"X\" is none of the declared words for a kind of line. (master-list.unknown-kind)", list.Issues[0].ToString());
        Assert.EndsWith("(record.text-not-printable) a\\u{200B}b", list.Issues[1].ToString(), StringComparison.Ordinal);
    }

    /// <summary>A row that was not understood is a tool that nobody will look for: no manifest is made around it unless the person who signs says so.</summary>
    [Fact]
    public void A_list_with_refused_rows_becomes_a_manifest_only_when_the_caller_leaves_them_out()
    {
        MasterList list = Read(Header + "1;T;;T1;spanner;;;;;;;\n2;X;;T2;wrench;;;;;;;\n3;T;;;wrench;;0;;;;;\n4;T;;T4;ratchet;;;;;;;\n");
        var signed = new Signature { By = new PersonId("p-1"), At = Start };

        Assert.False(list.TryMakeManifest(new KitId("K1"), 1, "kit", Start, signed, out KitManifest? manifest, out IReadOnlyList<RecordIssue> issues));
        Assert.Null(manifest);
        Assert.Equal(
            "$.lines: 2 rows were refused, lines 3, 4 of the file: the manifest would lack what they list. Mend the file, or say that they are left out. (master-list.rows-refused)",
            Assert.Single(issues).ToString());
        Assert.Equal(issues, Assert.Throws<RecordException>(() => list.MakeManifest(new KitId("K1"), 1, "kit", Start, signed)).Issues);

        Assert.True(list.TryMakeManifest(new KitId("K1"), 1, "kit", Start, signed, out manifest, out issues, leaveOutRefusedRows: true));
        Assert.Empty(issues);
        Assert.Equal([1, 4], manifest.Lines.Select(static line => line.Number));
        Assert.Equal(manifest.Digest, list.MakeManifest(new KitId("K1"), 1, "kit", Start, signed, leaveOutRefusedRows: true).Digest);
    }

    /// <summary>Of many refused rows the first are named, and how many more there are, beyond the limit of issues too.</summary>
    [Fact]
    public void Many_refused_rows_are_counted()
    {
        var rows = new StringBuilder(Header + "1;T;;T1;spanner;;;;;;;\n");
        rows.Insert(rows.Length, "2;X;;T2;spanner;;;;;;;\n", 10_005);
        Assert.False(Read(rows.ToString()).TryMakeManifest(new KitId("K1"), 1, "kit", Start, new Signature { By = new PersonId("p-1"), At = Start }, out _, out IReadOnlyList<RecordIssue> issues));
        Assert.StartsWith("$.lines: 10005 rows were refused, lines 3, 4, 5,", Assert.Single(issues).ToString(), StringComparison.Ordinal);
        Assert.Contains("22 and 9985 more of the file", issues[0].ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Bytes_that_are_no_utf8_and_files_in_utf16_are_refused()
    {
        Assert.Equal("read-file.not-utf8", Assert.Single(MasterListFile.ReadCsv(Encoding.Unicode.GetPreamble().Concat(Encoding.Unicode.GetBytes(Header)).ToArray(), Shop).Issues).Rule);
        byte[] bytes = [.. Encoding.UTF8.GetBytes(Header + "1;T;;T1;"), 0xFF, .. Encoding.UTF8.GetBytes(";;;;;;;\n")];
        Assert.Equal("read-file.not-utf8", Assert.Single(MasterListFile.ReadCsv(bytes, Shop).Issues).Rule);
    }

    [Fact]
    public void Lists_of_any_length_end_at_the_stated_limits()
    {
        var rows = new StringBuilder(Header);
        for (int i = 1; i <= 10_001; i++)
        {
            rows.Append(CultureInfo.InvariantCulture, $"{Math.Min(i, 9_999)};X;;T{i};spanner;;;;;;;\n");
        }

        MasterList bad = Read(rows.ToString());
        Assert.Equal((10_001, 10_001L), (bad.Issues.Count, bad.BadRowCount));
        Assert.Equal("record.more-issues", bad.Issues[^1].Rule);
        MasterListIssue tooLong = Assert.Single(MasterListFile.ReadCsv(Encoding.UTF8.GetBytes(Header + new string('x', 500) + "\n"), Shop with { LineLengthMax = 200 }).Issues);
        Assert.Equal("read-file.line-too-long", tooLong.Rule);
    }

    [Fact]
    public void Options_refuse_what_would_be_a_guess()
    {
        Assert.Throws<ArgumentException>(static () => new MasterListOptions { Columns = new MasterListColumns { Tool = "a", Mark = "a" } });
        Assert.Throws<ArgumentException>(static () => new MasterListOptions { KindWords = new Dictionary<string, string>(StringComparer.Ordinal) { ["T"] = "spoon" } });
        Assert.Throws<ArgumentOutOfRangeException>(static () => new MasterListOptions { Delimiter = '"' });
    }

    /// <summary>Moment 1 of the trade: a tool with no piece count is refused. What says nothing of its pieces is not of one piece by itself.</summary>
    [Fact]
    public void A_row_without_a_number_of_pieces_is_refused_unless_the_caller_declares_what_that_means()
    {
        string text = Header + "1;T;;T1;spanner;;;;;;;\n2;T;;T2;ratchet;;3;;;;;\n3;S;;H1;holder;;;;;keys;10;\n4;C;;;rags;;;6;each;;;\n";
        MasterList strict = MasterListFile.ReadCsv(Encoding.UTF8.GetBytes(text), Shop with { PiecesNotStatedMeansOne = false });
        Assert.Equal(["2 manifest.no-piece-count Pieces", "4 manifest.no-piece-count Pieces"], strict.Issues.Select(static issue => $"{issue.RowNumber} {issue.Rule} {issue.Column}"));
        Assert.Equal([2, 4], strict.Lines.Select(static line => line.Number));
        Assert.Equal([1, 3, 1], Read(text).Lines.Select(static line => line.Tool?.PieceCount).OfType<int>());
        Assert.False(new MasterListOptions().PiecesNotStatedMeansOne);
    }

    [Fact]
    public void Without_a_column_for_numbers_rows_are_numbered_by_their_place()
    {
        MasterListOptions plain = new() { PiecesNotStatedMeansOne = true, Columns = new MasterListColumns { Tool = "tool", Description = "description" } };
        MasterList list = MasterListFile.ReadCsv("tool,description\nT1,spanner\n,nothing\nT3,wrench\n"u8, plain);
        Assert.Equal([1, 3], list.Lines.Select(static line => line.Number));
        Assert.Single(list.Issues);
    }

    [Property(Arbitrary = [typeof(AnyManifest)])]
    public async Task What_is_written_in_the_own_form_is_read_back(KitManifest manifest, bool windows)
    {
        ManifestLine[] written = [.. manifest.Lines.Select(MasterListText.Plain)];
        byte[] csv = Encoding.UTF8.GetBytes(MasterListText.Of(written, windows ? "\r\n" : "\n"));
        MasterList list = MasterListFile.ReadCsv(csv);

        Assert.True(list.IsComplete, string.Join('\n', list.Issues) + Encoding.UTF8.GetString(csv));
        KitManifest expected = new(manifest.Id, manifest.Revision, manifest.Title, manifest.EffectiveFrom, manifest.SignedBy, written);
        Assert.Equal(expected.Digest, list.MakeManifest(manifest.Id, manifest.Revision, manifest.Title, manifest.EffectiveFrom, manifest.SignedBy).Digest);

        MasterList streamed = await MasterListFile.ReadCsvAsync(new PieceStream(csv, 7, 5), null, TestContext.Current.CancellationToken);
        Assert.Equal(list.Lines.Select(static line => line.ToString()), streamed.Lines.Select(static line => line.ToString()));
    }

    /// <summary>Whatever the bytes, every row that is not blank gives one line or at least one issue.</summary>
    [Property]
    public bool Any_text_is_accounted_for_row_by_row(string?[] rows)
    {
        string text = Header + string.Join('\n', rows.Select(static row => (row ?? "").Replace('\n', ';').Replace('\r', ';')));
        MasterList list = Read(text);
        int blank = rows.Count(static row => (row ?? "").All(static c => c == ' '));
        return list.Lines.Count + list.BadRowCount == rows.Length - blank
            && list.Issues.Select(static issue => issue.RowNumber).Distinct().Count() == list.BadRowCount;
    }

    private static MasterList Read(string text) => MasterListFile.ReadCsv(Encoding.UTF8.GetBytes(text), Shop);
}
