using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.IO;

namespace ShiftCloseout;

/// <summary>The usual help, followed by what a newcomer needs to know: an example, the files, the words of the report and the exit codes.</summary>
internal sealed class TeachingHelp : SynchronousCommandLineAction
{
    private const string Lesson = """
        Try it:
          ShiftCloseout                                    the bundled demo: an invented wind-turbine crew, two tool bags, two sessions
          ShiftCloseout --format markdown --out demo.md    the same, written to a file
          ShiftCloseout --html demo.html                   the same, and as a page to open in a browser or to print
        Your own files (those of the demo lie in samples/ShiftCloseout/demo and show the form of each):
          ShiftCloseout --manifest bag7.json --manifest bag8.json --other-manifest bag11.json --bindings tags.json \
            --session presentation.json --reads reads.jsonl --session presentation-2.json --reads reads-2.jsonl \
            --counts counts.json --calibration calibration.json --history tag-history.json --policy policy.json \
            --gate --as-of 2026-10-14T16:00:00+02:00
          One session: --session and --reads once. Several: in pairs, the first --reads to the first --session; the
          order of the pairs decides nothing, and no two sheets may name the same session.
          Without a reader: leave --session and --reads away; what people counted and sighted can complete a kit.
          Where what is recorded goes: known shortages, job records of consumables, breakages, seals, openings of kits,
          items on no list and signatures into --counts; quarantined tags into --bindings; kits that stood nearby into
          the sheet of the session; a kit inside a kit by its manifest as --other-manifest.

          --ledger shift-ledger.jsonl: a file that is only ever added to. What people signed on the sheet goes in; where
          nobody signed, nothing does. What is in it already (issues, loans, holds) counts in the conclusion.

          Inputs must be files, not pipes or devices: the report names each by its digest. --out and --html replace a
          file, but never an input, a link, a pipe or a device. Ctrl-C stops a long read; a second one ends the program at once.

        What the report says of a line:
          SIGHTED, COUNTED, READ, RECORD   settled, and on what basis: a person read the mark, or counted it; the tag was
                         read as the policy asks; or a signed record stands for it
          WEAK           its tag was read, too little to say it is in the bag: look
          NOT READ       its tag was not read. That is not "missing": open the bag and look
          PARTIAL        pieces or count below the expected, or only the holder of a set accounted
          CONFLICT       its identity is in doubt, or there is more than expected
          NOT ASSESSED   nobody counted it and no reader can see it, or there was no usable session
          Calibration is a second answer beside these and never changes them.

        Exit codes. Each kit has one of its own, 0 to 2; the process returns the highest, whatever the order of the kits:
          0   the kit is complete (the demo always returns 0 and prints what a real run would have returned)
          1   the kit is open or discrepant; with --gate also where it is complete and the gate is not satisfied
          2   the kit has no valid read: no session was fit to conclude anything about its tags
          64  the command line is wrong, or a file it names or standard output cannot be
              opened or written
          65  a file was refused: standard error names the file, the line or place, and the rule
          Refused rows of a reads file are not fatal: they are counted, shown, and make the session degraded.

        This is a record-keeping aid. Not read does not mean missing; read does not mean in the bag: look, and read the mark.
        """;

    private readonly HelpAction _usual;

    public TeachingHelp(HelpAction usual) => _usual = usual;

    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult)
    {
        int code = _usual.Invoke(parseResult);
        TextWriter output = parseResult.InvocationConfiguration.Output;
        output.WriteLine(Lesson.ReplaceLineEndings());
        return code;
    }
}
