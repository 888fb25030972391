using System;
using System.IO;
using System.Linq;
using System.Text;
using System.Text.Json;
using FsCheck.Xunit;
using TagInspect;
using Xunit;

namespace ToolLedger.Samples.Tests.TagInspect;

public sealed class InspectCommandTests
{
    // The worked example of GS1 TDS 2.3, Appendix E.3: one identity, asked for in every form that is taken.
    [Theory]
    [InlineData("""{"id":"1","input":"hex","value":"3074257BF7194E4000001A85"}""")]
    [InlineData("""{"id":"1","input":"memoryHex","value":"3074257bf7194e4000001a85"}""")]
    [InlineData("""{"id":"1","input":"tagUri","value":"urn:epc:tag:sgtin-96:3.0614141.812345.6789"}""")]
    [InlineData("""{"id":"1","input":"pureIdentity","value":"urn:epc:id:sgtin:0614141.812345.6789","scheme":"SGTIN-96","filter":3}""")]
    [InlineData("""{"id":"1","input":"elementString","value":"(01)80614141123458(21)6789","gcpLength":7,"scheme":"SGTIN-96","filter":3}""")]
    [InlineData("""{"id":"1","input":"digitalLink","value":"https://id.gs1.org/01/80614141123458/21/6789","gcpLength":7,"scheme":"SGTIN-96","filter":3}""")]
    [InlineData("""{"id":"1","input":"ai","value":{"01":"80614141123458","21":"6789"},"gcpLength":7,"scheme":"SGTIN-96","filter":3}""")]
    public void Every_form_of_an_identity_gets_the_same_answer(string line)
    {
        InspectRun run = InspectRun.Of(["--json"], line + "\n");

        Assert.Equal(
            """
            {"id":"1","scheme":"SGTIN-96","bits":96,"hex":"3074257BF7194E4000001A85","memoryHex":"3074257BF7194E4000001A85","tagUri":"urn:epc:tag:sgtin-96:3.0614141.812345.6789","pureIdentity":"urn:epc:id:sgtin:0614141.812345.6789","elementString":"(01)80614141123458(21)6789","ai":{"01":"80614141123458","21":"6789"},"digitalLink":"https://id.gs1.org/01/80614141123458/21/6789","filter":3}

            """.ReplaceLineEndings("\n"),
            run.Output);
        Assert.Equal(InspectCommand.AllRead, run.ExitCode);
    }

    [Fact]
    public void An_identity_without_a_scheme_is_shown_and_not_coded()
    {
        JsonElement answer = Assert.Single(InspectRun.Of(
            ["--json"], """{"id":7,"input":"elementString","value":"(01)80614141123458(21)6789","gcpLength":7}""").Answers);

        Assert.Equal(7, answer.GetProperty("id").GetInt32());
        Assert.Equal("urn:epc:id:sgtin:0614141.812345.6789", answer.GetProperty("pureIdentity").GetString());
        Assert.False(answer.TryGetProperty("hex", out _));
    }

    [Theory]
    [InlineData("""{"id":"1","input":"hex","value":"E2801160"}""", "HeaderAssigned", "urn:epc:raw:32.xE2801160")]
    [InlineData("""{"id":"1","input":"hex","value":"30ZZ"}""", "HexDigits", null)]
    [InlineData("""{"id":"1","input":"tagUri","value":"urn:epc:tag:sgtin-96:3.0614141.812345.06789"}""", "NoLeadingZero", null)]
    [InlineData("""{"id":"1","input":"smell","value":"x"}""", "Input", null)]
    [InlineData("""{"id":"1","input":"ai","value":{"01":7}}""", "Json", null)]
    [InlineData("""{"id":"1","input":"pureIdentity","value":"urn:epc:id:sgtin:0614141.812345.6789","scheme":"SGTIN-97"}""", "SchemeName", null)]
    public void What_must_be_refused_says_its_rule_and_stays_raw_where_bits_were_given(string line, string rule, string? raw)
    {
        InspectRun run = InspectRun.Of(["--json"], line);

        JsonElement answer = Assert.Single(run.Answers);
        Assert.Equal("1", answer.GetProperty("id").GetString());
        Assert.Equal(rule, answer.GetProperty("error").GetProperty("rule").GetString());
        Assert.NotEmpty(answer.GetProperty("error").GetProperty("message").GetString()!);
        Assert.Equal(raw, answer.TryGetProperty("rawUri", out JsonElement uri) ? uri.GetString() : null);
        Assert.Equal(InspectCommand.SomeRefused, run.ExitCode);
    }

    [Fact]
    public void A_line_that_is_no_JSON_is_answered_and_the_next_one_still_read()
    {
        string deep = new string('[', 10_000) + new string(']', 10_000);
        string lines = "{\n[]\n\"\\ud800\"\n" + deep + "\n\n" + """{"id":"last","input":"hex","value":"3074257BF7194E4000001A85"}""";

        JsonElement[] answers = InspectRun.Of(["--json"], lines).Answers;

        Assert.Equal(5, answers.Length);
        Assert.All(answers.Take(4), answer => Assert.Equal("Json", answer.GetProperty("error").GetProperty("rule").GetString()));
        Assert.Equal("SGTIN-96", answers[4].GetProperty("scheme").GetString());
    }

    [Fact]
    public void A_line_without_end_is_refused_without_keeping_it_and_the_next_one_still_read()
    {
        byte[] line = Encoding.ASCII.GetBytes(new string('3', 5_000_000) + "\n3074257BF7194E4000001A85\n");

        InspectRun run = InspectRun.Of([], line);

        Assert.Contains("refused:        The line is too long.", run.Output, StringComparison.Ordinal);
        Assert.Contains("urn:epc:tag:sgtin-96:3.0614141.812345.6789", run.Output, StringComparison.Ordinal);
        Assert.True(run.Output.Length < 10_000);
    }

    // Whatever stands on the lines, each that is not blank gets one answer that is JSON, and nothing throws.
    [Property(MaxTest = 300)]
    public void Any_bytes_get_one_JSON_answer_a_line(byte[] bytes)
    {
        InspectRun run = InspectRun.Of(["--json"], bytes);

        Assert.Equal(run.Output.Count(c => c == '\n'), run.Answers.Length);
    }

    [Fact]
    public void Plain_text_breaks_a_tag_down_to_its_fields()
    {
        InspectRun run = InspectRun.Of(["3074257BF7194E4000001A85"]);

        Assert.Equal(InspectCommand.AllRead, run.ExitCode);
        string[] lines = run.Output.Split(Environment.NewLine);
        Assert.Contains("  scheme:         SGTIN-96, 96 bits", lines);
        Assert.Contains("  0-7             Header         30  SGTIN-96", lines);
        Assert.Contains("  11-13           Partition      5  company prefix of 7 digits", lines);
        Assert.Contains("  14-37           CompanyPrefix  0614141", lines);
        Assert.Contains("  58-95           Serial         6789", lines);
    }

    [Fact]
    public void An_EPC_as_the_library_prints_it_is_read_as_its_bits()
    {
        InspectRun run = InspectRun.Of(["epc:3074257BF7194E4000001A85"]);

        Assert.Equal(InspectCommand.AllRead, run.ExitCode);
        Assert.Contains("urn:epc:tag:sgtin-96:3.0614141.812345.6789", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("spanner")]
    [InlineData("epc:hello")]
    [InlineData("epc:")]
    [InlineData("[01]80614141123458")]
    public void What_is_of_no_known_form_is_told_which_forms_are_understood(string item)
    {
        InspectRun run = InspectRun.Of([item]);

        Assert.Equal(InspectCommand.SomeRefused, run.ExitCode);
        Assert.Contains("refused:        This is no form that is understood: hexadecimal EPC memory, also behind epc:;", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void An_element_string_without_the_length_of_the_prefix_names_the_option_that_gives_it()
    {
        Assert.Contains("State it with --gcp N.", InspectRun.Of(["(01)80614141123458(21)6789"]).Output, StringComparison.Ordinal);
        Assert.DoesNotContain("--gcp", InspectRun.Of(["(01)80614141123458(21)6789", "--gcp", "7"]).Output, StringComparison.Ordinal);
        Assert.DoesNotContain("--gcp", InspectRun.Of(["--json"], """{"id":7,"input":"elementString","value":"(01)80614141123458(21)6789"}""").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Control_characters_of_an_item_do_not_reach_the_terminal()
    {
        string output = InspectRun.Of(["urn:epc:tag:\u001b[31mred\u0007"]).Output;

        Assert.DoesNotContain('\u001b', output);
        Assert.DoesNotContain('\u0007', output);
    }

    [Theory]
    [InlineData("--smell")]
    [InlineData("--gcp")]
    [InlineData("--gcp", "13")]
    [InlineData("--filter", "-1")]
    [InlineData("--scheme")]
    public void A_wrong_command_line_says_what_is_wrong_and_teaches_help(params string[] arguments)
    {
        InspectRun run = InspectRun.Of(arguments);

        Assert.Equal(InspectCommand.WrongUsage, run.ExitCode);
        Assert.Empty(run.Output);
        Assert.Contains(arguments[0], run.Error, StringComparison.Ordinal);
        Assert.EndsWith("Try --help.\n", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Help_names_every_option_and_exit_code()
    {
        InspectRun run = InspectRun.Of(["--help"]);

        Assert.Equal(InspectCommand.AllRead, run.ExitCode);
        Assert.All(["--gcp", "--scheme", "--filter", "--json", "--help", "74"], part => Assert.Contains(part, run.Output, StringComparison.Ordinal));
    }

    [Fact]
    public void An_output_that_breaks_ends_the_run_with_its_own_code()
    {
        using var input = new MemoryStream(Encoding.ASCII.GetBytes("3074257BF7194E4000001A85\n"));
        using var output = new BrokenStream();

        Assert.Equal(InspectCommand.OutputFailed, InspectCommand.Run([], input, output, TextWriter.Null));
    }

    private sealed class BrokenStream : Stream
    {
        public override bool CanRead => false;

        public override bool CanSeek => false;

        public override bool CanWrite => true;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override void Flush()
        {
        }

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new IOException("Broken pipe");
    }
}
