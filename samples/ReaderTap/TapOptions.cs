using System.Globalization;

namespace ReaderTap;

/// <summary>What the command line says.</summary>
internal sealed class TapOptions
{
    internal const string Help =
        """
        ReaderTap: listens to an RFID reader that speaks LLRP while a bag is presented, and closes the kit out.

        ReaderTap                                    the bundled demo: an invented overhead-line crew hands in a bag
        ReaderTap --stream FILE ...                  a recorded stream: the bytes of the connection, nothing else
        ReaderTap --port N ...                       connects to 127.0.0.1:N and answers keep-alives
        ReaderTap --reads FILE ...                   reads that were kept with --archive
          --manifest FILE      the kit (JSON)        without these three: the files of the demo,
          --bindings FILE      its tags (JSON)       which lie in samples/ReaderTap/demo
          --session FILE       the presentation sheet: station, kit, start, end, clock check (JSON)
          --policy FILE        the site's policy (JSON); without it the documented defaults
          --archive FILE       keeps the reads as JSON Lines in FILE, and in FILE.session.json the presentation sheet
                               with all that was lost, so that a replay concludes the same. --reads takes that sheet
                               where --session names no other
        ReaderTap --play FILE --port N               plays a recorded stream to whoever connects to 127.0.0.1:N, and
                                                     waits for the answer to each keep-alive
        ReaderTap --save-demo FILE                   writes the stream of the demo
        ReaderTap --help                             this text

        Try a reader without one, in two windows:
          ReaderTap --save-demo demo.llrp && ReaderTap --play demo.llrp --port 5084
          ReaderTap --port 5084 --archive kept.jsonl
          ReaderTap --reads kept.jsonl

        It does not set the reader up: start the reader operation as you do today, and let this listen. It ends when
        the reader reports the end of its operation. A connection that ends before that makes the session invalid,
        because what was not read then was perhaps never sent.

        Exit code: 0 the kit is complete, 1 it is open or discrepant, 2 it has no valid read, 64 the command line is
        wrong or a file cannot be opened, 65 a file was refused, 69 nobody answers at the port. The demo returns what
        its kit returns: 1.

        This is a record-keeping aid. Not read does not mean missing; read does not mean in the bag: look, and read
        the mark.
        """;

    internal bool ShowHelp { get; private set; }

    internal string? Stream { get; private set; }

    internal int? Port { get; private set; }

    internal string? Play { get; private set; }

    internal string? SaveDemo { get; private set; }

    internal string? Archive { get; private set; }

    internal string? Reads { get; private set; }

    internal string? Manifest { get; private set; }

    internal string? Bindings { get; private set; }

    internal string? Session { get; private set; }

    internal string? Policy { get; private set; }

    /// <summary>Where the sheet of an archive lies.</summary>
    internal static string SheetOf(string archive) => archive + ".session.json";

    /// <exception cref="TapException">The command line is wrong.</exception>
    internal static TapOptions Parse(string[] arguments)
    {
        var options = new TapOptions();
        for (int i = 0; i < arguments.Length; i++)
        {
            switch (arguments[i])
            {
                case "--help" or "-h": options.ShowHelp = true; break;
                case "--stream": options.Stream = Text(arguments, ++i); break;
                case "--port": options.Port = Number(arguments, ++i); break;
                case "--play": options.Play = Text(arguments, ++i); break;
                case "--save-demo": options.SaveDemo = Text(arguments, ++i); break;
                case "--archive": options.Archive = Text(arguments, ++i); break;
                case "--reads": options.Reads = Text(arguments, ++i); break;
                case "--manifest": options.Manifest = Text(arguments, ++i); break;
                case "--bindings": options.Bindings = Text(arguments, ++i); break;
                case "--session": options.Session = Text(arguments, ++i); break;
                case "--policy": options.Policy = Text(arguments, ++i); break;
                default: throw Wrong($"There is no option {arguments[i]}.");
            }
        }

        options.Check();
        return options;
    }

    private void Check()
    {
        if (Play is not null && Port is null)
        {
            throw Wrong("--play needs --port: where to play the stream.");
        }

        if ((Stream is null ? 0 : 1) + (Reads is null ? 0 : 1) + (Port is null ? 0 : 1) > 1)
        {
            throw Wrong("--stream, --reads and --port are several sources; name one.");
        }

        if (Reads is not null && Reads == Archive)
        {
            throw Wrong("--archive would write over the file that --reads reads.");
        }

        bool hasSheet = Reads is not null && Session is null;
        int own = (hasSheet && Manifest is not null ? 1 : 0) + (Manifest is null ? 0 : 1) + (Bindings is null ? 0 : 1) + (Session is null ? 0 : 1);
        if (own is 1 or 2)
        {
            throw Wrong("--manifest, --bindings and --session go together.");
        }

        if (own == 3 && Stream is null && Port is null && Reads is null)
        {
            throw Wrong("Where do the reads come from? Name --stream, --reads or --port.");
        }
    }

    private static string Text(string[] arguments, int index) =>
        index < arguments.Length && arguments[index].Length > 0 ? arguments[index] : throw Wrong($"{arguments[index - 1]} needs a file.");

    private static int Number(string[] arguments, int index) =>
        index < arguments.Length && int.TryParse(arguments[index], NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number is >= 1 and <= 65_535
            ? number
            : throw Wrong("--port needs a number from 1 to 65535.");

    private static TapException Wrong(string message) => new(ExitCodes.Usage, message + " Try --help.");
}
