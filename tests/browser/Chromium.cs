using System;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using Microsoft.Playwright;
using ToolLedger.Browser.Tests;
using Xunit;

[assembly: AssemblyFixture(typeof(Chromium))]

namespace ToolLedger.Browser.Tests;

/// <summary>One headless browser for all tests: the chromium of the system. Where there is none, every test says so and is skipped.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private static readonly string[] Names = ["chromium", "chromium-browser", "chromium.exe"];

    private static readonly string[] Arguments =
        ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

    private IPlaywright? playwright;
    private IBrowser? browser;

    public async ValueTask InitializeAsync()
    {
        if (Find() is not { } path)
        {
            return;
        }

        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions { ExecutablePath = path, Args = Arguments });
    }

    public async ValueTask DisposeAsync()
    {
        if (browser is not null)
        {
            await browser.DisposeAsync();
        }

        playwright?.Dispose();
    }

    /// <summary>Opens a report in a window of its own.</summary>
    internal async Task<View> OpenAsync(string file, int width = 1280, int height = 800, ColorScheme scheme = ColorScheme.Light, ReducedMotion motion = ReducedMotion.NoPreference)
    {
        if (browser is null)
        {
            Assert.Skip("There is no chromium on the path of this machine.");
        }

        IBrowserContext context = await browser.NewContextAsync(new BrowserNewContextOptions
        {
            ViewportSize = new ViewportSize { Width = width, Height = height },
            ColorScheme = scheme,
            ReducedMotion = motion,
        });
        var view = new View(context, await context.NewPageAsync());
        await view.LoadAsync(file);
        return view;
    }

    private static string? Find() => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .SelectMany(static folder => Names.Select(name => Path.Combine(folder, name)))
        .FirstOrDefault(File.Exists);
}
