using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using FsCheck.Xunit;
using ToolLedger.Interchange;
using ToolLedger.Reads;
using ToolLedger.Testing.Generators;
using Xunit;

namespace ToolLedger.Tests.Interchange;

/// <summary>The quick and the careful way through a file of reads give the same reads and the same refusals, in every form, on plain, odd and damaged lines.</summary>
[Properties(Arbitrary = [typeof(AnyTagRead)], MaxTest = 600)]
public sealed class AnyFileTests
{
    [Property]
    public void Plain_files_pass_the_checks_of_the_fuzz_target(TagRead[] reads, byte choice, int seed) => AnyFile.Check(File(reads, choice, seed, oddness: 0));

    [Property]
    public void Files_in_odd_spellings_pass_the_checks_of_the_fuzz_target(TagRead[] reads, byte choice, int seed) => AnyFile.Check(File(reads, choice, seed, oddness: 4));

    [Property]
    public void Damaged_files_pass_the_checks_of_the_fuzz_target(TagRead[] reads, byte choice, int seed, byte place, byte value)
    {
        byte[] file = File(reads, choice, seed, oddness: 1);
        const string bad = "\n\r\"',:;.{}[]+-09eEZzT \\\0aF|\u00ff";
        var random = new Random(seed ^ place);
        for (int i = 0; i < 4 && file.Length > 1; i++)
        {
            file[random.Next(1, file.Length)] = i == 0 ? value : (byte)bad[random.Next(bad.Length)];
        }

        AnyFile.Check(file);
    }

    [Property]
    public void Random_bytes_pass_the_checks_of_the_fuzz_target(byte[] bytes) => AnyFile.Check(bytes);

    // Each is one that the quick way could take for something else than the careful way does.
    [Theory]
    [InlineData("\"time\":\"2026-03-01T15:55:01\0\0\0\0\0\0\"")]
    [InlineData("\"time\":\"2026-03-01T15:55:60Z\"")]
    [InlineData("\"time\":\"2026-03-01T24:00:00Z\"")]
    [InlineData("\"time\":\"2026-02-29T00:00:00Z\"")]
    [InlineData("\"time\":\"1970-01-01T00:00:00+00:01\"")]
    [InlineData("\"time\":\"2999-12-31T23:59:59.9999999Z\"")]
    [InlineData("\"time\":\"2999-12-31T23:59:59.9999999-00:01\"")]
    [InlineData("\"time\":\"2026-03-01T15:55:01.12345678Z\"")]
    [InlineData("\"time\":\"2026-03-01T15:55:01,5Z\"")]
    [InlineData("\"time\":\"2026-03-01T15:55:01+1400\"")]
    [InlineData("\"time\":\"2026-03-01T15:55:01+14:01\"")]
    [InlineData("\"antenna\":256")]
    [InlineData("\"antenna\":0")]
    [InlineData("\"antenna\":01")]
    [InlineData("\"antenna\":\"01\"")]
    [InlineData("\"antenna\":1.0")]
    [InlineData("\"antenna\":1e1")]
    [InlineData("\"rssi\":-00.50")]
    [InlineData("\"rssi\":-0")]
    [InlineData("\"rssi\":-61.555")]
    [InlineData("\"rssi\":-6155e-2")]
    [InlineData("\"rssi\":327.68")]
    [InlineData("\"rssi\":-327.68")]
    [InlineData("\"rssi\":null")]
    [InlineData("\"rssi\":\"-61.5")]
    [InlineData("\"count\":2147483648")]
    [InlineData("\"count\":0")]
    [InlineData("\"reportId\":999999999999999")]
    [InlineData("\"reportId\":9223372036854775807")]
    [InlineData("\"reportId\":-1")]
    [InlineData("\"tid\":E280")]
    [InlineData("\"tid\":1234")]
    [InlineData("\"tid\":\"E28\"")]
    [InlineData("\"epc\":3034")]
    [InlineData("\"epc\":\"303\"")]
    [InlineData("\"epc\":\"3034257BF7194E4000001A853034257BF7194E4000001A85\"")]
    [InlineData("\"other\":[1,2],\"more\":{\"time\":1}")]
    [InlineData("\"other\":tru")]
    [InlineData("\"other\":\"a\\\"b\"")]
    [InlineData("\"other\":\"\u00e4\"")]
    [InlineData("\"other\":1.")]
    [InlineData("\"epc\":\"3034\",\"epc\":\"3034\"")]
    public void A_tempting_member_between_plain_lines_passes_the_checks(string member)
    {
        const string plain = """{"epc":"3034257BF7194E4000001A85","time":"2026-03-01T15:55:01.25Z","antenna":1,"rssi":-61.50,"count":2,"tid":"E2801105","reportId":7,"other":"x"}""";
        string name = member[..(member.IndexOf(':', StringComparison.Ordinal) + 1)];
        string[] members = plain.Trim('{', '}').Split(',');
        string odd = "{" + string.Join(',', members.Select(one => one.StartsWith(name, StringComparison.Ordinal) ? member : one)) + "}";
        foreach (byte tagForm in (byte[])[0, 1 << 4])
        {
            AnyFile.Check([tagForm, .. Encoding.UTF8.GetBytes(string.Join('\n', plain, plain, odd, plain, odd, odd, plain))]);
        }
    }

    // A number may stand for hexadecimal digits, but hexadecimal digits are no number: what was learned from the one must not take the other.
    [Theory]
    [InlineData("\"tid\":1234", "\"tid\":12AB", 0)]
    [InlineData("\"tid\":1234", "\"tid\":0012", 0)]
    [InlineData("\"epc\":3034", "\"epc\":30AB", 1 << 4)]
    [InlineData("\"epc\":3034", "\"epc\":30E1", 1 << 4)]
    [InlineData("\"antenna\":1", "\"antenna\":\"1", 0)]
    [InlineData("\"antenna\":\"1\"", "\"antenna\":1\"", 0)]
    [InlineData("\"x\":1", "\"x\":-", 0)]
    [InlineData("\"x\":\"1\"", "\"x\":\"1\\\"", 0)]
    public void A_member_learned_in_one_spelling_is_not_taken_in_another(string learned, string tempting, byte choice)
    {
        string tag = learned.StartsWith("\"epc", StringComparison.Ordinal) ? "" : "\"epc\":\"3034257BF7194E4000001A85\",";
        string[] lines = [.. new[] { learned, learned, tempting, learned, tempting }.Select(member => $"{{{tag}{member},\"time\":\"2026-03-01T15:55:01.25Z\"}}")];
        AnyFile.Check([choice, .. Encoding.UTF8.GetBytes(string.Join('\n', lines))]);
    }

    private static byte[] File(TagRead[] reads, byte choice, int seed, int oddness)
    {
        var random = new Random(seed);
        ReadFileOptions options = AnyFile.OptionsOf(choice);
        List<string> lines = AnyFile.IsJson(choice) ? [] : [string.Join(options.Delimiter, RowText.CsvHeader.Split(',').Append("other"))];
        foreach (TagRead read in reads)
        {
            (string Name, string? Text, bool IsNumber)[] fields = Fields(read, options, random, oddness);
            lines.Add(AnyFile.IsJson(choice) ? Json(fields, random, oddness) : Csv(fields, options.Delimiter, random, oddness));
        }

        string end = random.Next(3) == 0 ? "\r\n" : "\n";
        return [choice, .. Encoding.UTF8.GetBytes((oddness > 0 && random.Next(8) == 0 ? "\uFEFF" : "") + string.Join(end, lines) + (random.Next(2) == 0 ? end : ""))];
    }

    private static (string Name, string? Text, bool IsNumber)[] Fields(TagRead read, ReadFileOptions options, Random random, int oddness) =>
    [
        ("epc", options.TagForm == ReadTagForm.TagIdText && random.Next(2) == 0 ? read.Tag.ToString() : read.Tag.Epc.ToString(), false),
        ("antenna", read.Antenna.IsKnown ? read.Antenna.ToString() : null, true),
        ("time", Time(read.FirstSeen, options, random, oddness), options.TimeForm is not (ReadTimeForm.Iso8601WithOffset or ReadTimeForm.Iso8601Local)),
        ("lastTime", read.LastSeen == read.FirstSeen ? null : Time(read.LastSeen, options, random, oddness), options.TimeForm is not (ReadTimeForm.Iso8601WithOffset or ReadTimeForm.Iso8601Local)),
        ("rssi", read.Strength is { } strength ? Number(strength.CentiDbm / 100m, random, oddness) : null, true),
        ("count", read.Count is { } count ? Number(count, random, oddness) : null, true),
        ("tid", read.Tid.IsEmpty ? null : read.Tid.ToString(), false),
        ("reportId", read.ReportId is { } id ? Number(id, random, oddness) : null, true),
        ("other", random.Next(2) == 0 ? null : random.Next(2) == 0 ? "12.5" : "some text", false),
    ];

    private static string Time(DateTimeOffset time, ReadFileOptions options, Random random, int oddness)
    {
        // At the two hours of the year when the clocks of the site jump, now and then.
        time = random.Next(6) == 0 ? time.AddDays(28).AddHours(-15) : time;
        decimal since = (time - DateTimeOffset.UnixEpoch).Ticks;
        string decimals = "FFFFFFF"[..random.Next(4, 8)];
        string local = time.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss." + decimals, CultureInfo.InvariantCulture);
        local = random.Next(8) < oddness ? local.Replace('T', "t _T"[random.Next(4)]) : local;
        return options.TimeForm switch
        {
            ReadTimeForm.Iso8601WithOffset when random.Next(8) < oddness => local + ((string[])["z", "+00:00", "-0500", "", "+14:00", "Zx"])[random.Next(6)],
            ReadTimeForm.Iso8601WithOffset => local + (random.Next(4) == 0 ? "+01:00" : "Z"),
            ReadTimeForm.Iso8601Local => local + (random.Next(16) < oddness ? "Z" : ""),
            ReadTimeForm.EpochSeconds => Number(since / TimeSpan.TicksPerSecond, random, oddness),
            ReadTimeForm.EpochMilliseconds => Number(since / TimeSpan.TicksPerMillisecond, random, oddness),
            _ => Number(since / TimeSpan.TicksPerMicrosecond, random, oddness),
        };
    }

    private static string Number(decimal value, Random random, int oddness)
    {
        string plain = value.ToString("0.##########", CultureInfo.InvariantCulture);
        return random.Next(8) >= oddness ? plain
            : random.Next(5) switch
            {
                0 => value.ToString("0.000", CultureInfo.InvariantCulture),
                1 => (value / 100).ToString("0.############", CultureInfo.InvariantCulture) + "e2",
                2 => "0" + plain,
                3 => "+" + plain,
                _ => " " + plain + " ",
            };
    }

    private static string Json((string Name, string? Text, bool IsNumber)[] fields, Random random, int oddness)
    {
        if (random.Next(6) < oddness)
        {
            random.Shuffle(fields);
        }

        string space = random.Next(12) < oddness ? " " : "";
        IEnumerable<string> members = fields.Where(field => field.Text is not null || random.Next(16) < oddness).Select(field =>
            $"\"{(random.Next(24) < oddness ? Escaped(field.Name) : field.Name)}\":{space}{(field.Text is null ? "null" : field.IsNumber && random.Next(8) >= oddness ? field.Text : $"\"{field.Text}\"")}");
        return "{" + space + string.Join(space + "," + space, members) + (random.Next(24) < oddness ? "," : "") + "}" + space;
    }

    private static string Escaped(string name) => string.Create(CultureInfo.InvariantCulture, $"\\u{(int)name[0]:x4}{name[1..]}");

    private static string Csv((string Name, string? Text, bool IsNumber)[] fields, char delimiter, Random random, int oddness) =>
        string.Join(delimiter, fields.Select(field => random.Next(12) < oddness ? $"\"{field.Text}\"" : field.Text)) + (random.Next(24) < oddness ? "," : "");
}
