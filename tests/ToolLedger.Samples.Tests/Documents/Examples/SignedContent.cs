using System;
using System.Collections.Generic;
using System.IO;
// <example>
using ToolLedger.Records;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The example of docs/records.md: what a digest covers, a refusal, and its sentence in another language.</summary>
internal static class SignedContent
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        _ = File;
        // <example>
        // Two programs wrote the same content. Their bytes differ, the canonical form does not.
        ReadOnlySpan<byte> one = """{"kit":"K-12","quantity":6}"""u8;
        ReadOnlySpan<byte> other = """{ "quantity": 6.0, "kit": "K-12" }"""u8;
        Digest signed = Digest.Of(CanonicalJson.Canonicalize(one));
        Console.WriteLine($"same bytes: {Digest.Of(one) == Digest.Of(other)}");
        Console.WriteLine($"same content: {signed == Digest.Of(CanonicalJson.Canonicalize(other))}, {signed.ToShortString()}");

        // A text that says two things at once has no digest. The refusal has a place, a sentence and a code.
        if (!CanonicalJson.TryCanonicalize("""{"kit":"K-12","kit":"K-13"}"""u8, out _, out RecordIssue? issue))
        {
            Console.WriteLine(issue);
            var german = new Wording(new Dictionary<string, string> { ["record.duplicate-member"] = "Ein Name steht zweimal da." });
            Console.WriteLine(german.Say(issue.Reason));
        }

        var signature = new Signature
        {
            By = new PersonId("P-017"), // the host's key of a person, never a name
            At = new DateTimeOffset(2026, 10, 14, 15, 55, 0, TimeSpan.FromHours(2)),
            Role = new Role("user"),
        };
        Console.WriteLine(signature);
        Console.WriteLine(new Quantity(6, Unit.Each) == new Quantity(6, Unit.Piece)); // units are compared, never converted
        // </example>
    }
}
