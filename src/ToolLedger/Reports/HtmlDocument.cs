using System;
using System.Security.Cryptography;
using System.Text;

namespace ToolLedger.Reports;

/// <summary>The frame of an HTML page: one style sheet inside, and a policy by which nothing else is loaded, run or sent.</summary>
internal static class HtmlDocument
{
    private const int LanguageMin = 2;
    private const int LanguageMax = 35;

    /// <summary>Whether a text has the shape of a language tag (BCP 47): subtags of letters and digits between hyphens.</summary>
    internal static bool IsLanguage(string text)
    {
        if (text is not { Length: >= LanguageMin and <= LanguageMax } || text[0] == '-' || text[^1] == '-')
        {
            return false;
        }

        foreach (char character in text)
        {
            if (!char.IsAsciiLetterOrDigit(character) && character != '-')
            {
                return false;
            }
        }

        return true;
    }

    internal static void PutStart(StringBuilder page, string language, string title, string rules)
    {
        string style = "\n" + HtmlStyle.Screen + HtmlStrip.Rules() + HtmlStyle.Narrow + HtmlStyle.Print + rules;

        // Content Security Policy Level 3: nothing but this very style sheet.
        string hash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(style)));
        page.Append("<!DOCTYPE html>\n<html lang=\"").PutAttribute(language).Append("\">\n<head>\n<meta charset=\"utf-8\">\n<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'sha256-")
            .Append(hash)
            .Append("'; base-uri 'none'; form-action 'none'\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<meta name=\"color-scheme\" content=\"light dark\">\n<meta name=\"referrer\" content=\"no-referrer\">\n<title>")
            .PutAttribute(title).Append("</title>\n<style>").Append(style).Append("</style>\n</head>\n<body>\n").Append(StatusMark.Shapes).Append('\n');
    }

    internal static void PutEnd(StringBuilder page) => page.Append("</body>\n</html>\n");
}
