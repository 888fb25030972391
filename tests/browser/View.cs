using System;
using System.Collections.Concurrent;
using System.Collections.Generic;
using System.Threading.Tasks;
using Microsoft.Playwright;
using Xunit;

namespace ToolLedger.Browser.Tests;

/// <summary>A report in a window. Every request but that for the report itself is stopped and noted, and so is whatever the console says.</summary>
internal sealed class View(IBrowserContext context, IPage page) : IAsyncDisposable
{
    private readonly ConcurrentQueue<string> requests = [];
    private readonly ConcurrentQueue<string> complaints = [];

    public IPage Page => page;

    /// <summary>Requests that left the page.</summary>
    public IReadOnlyCollection<string> Requests => requests;

    /// <summary>Errors and warnings of the console, and errors of the page.</summary>
    public IReadOnlyCollection<string> Complaints => complaints;

    public async Task LoadAsync(string file)
    {
        string address = new Uri(file).AbsoluteUri;
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning")
            {
                complaints.Enqueue(message.Text);
            }
        };
        page.PageError += (_, error) => complaints.Enqueue(error);
        await page.RouteAsync("**/*", async route =>
        {
            if (route.Request.Url == address)
            {
                await route.ContinueAsync();
                return;
            }

            requests.Enqueue(route.Request.Url);
            await route.AbortAsync();
        });
        await page.GotoAsync(address);
    }

    /// <summary>Waits until an expression is true. The page allows no code of its own, so the question is put from outside, over and over.</summary>
    public async Task WaitUntilAsync(string expression)
    {
        for (int left = 100; !await page.EvaluateAsync<bool>(expression); left--)
        {
            Assert.True(left > 0, $"It never came true: {expression}");
            await Task.Delay(50);
        }
    }

    public async ValueTask DisposeAsync() => await context.CloseAsync();
}
