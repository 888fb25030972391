using System;
using System.Collections.Generic;
using System.Linq;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;

namespace ToolLedger.Tests.Reports;

/// <summary>Looks into an HTML page with a general-purpose parser of the HTML Living Standard (AngleSharp).</summary>
internal static class Html
{
    public static IDocument Parse(string page) => new HtmlParser(new HtmlParserOptions { IsScripting = false }).ParseDocument(page);

    /// <summary>The text of an element with white space as a reader sees it.</summary>
    public static string TextOf(INode node) => string.Join(' ', node.TextContent.Split([' ', '\n', '\t'], StringSplitOptions.RemoveEmptyEntries));

    /// <summary>The text of every element of a kind.</summary>
    public static IReadOnlyList<string> Texts(this IParentNode page, string selector) => [.. page.QuerySelectorAll(selector).Select(TextOf)];

    /// <summary>The marks a strip draws: one downward stroke each.</summary>
    public static int MarksOf(IElement timeline) => timeline.QuerySelectorAll("path.mk").Sum(path => path.GetAttribute("d")!.Count(static letter => letter == 'v'));
}
