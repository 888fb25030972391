using System.IO;
using Xunit;

namespace ToolLedger.Identifiers.Tests;

public sealed class NetFrameworkRunTests
{
    // The suite also runs as net48 against the netstandard2.0 build, where a .NET Framework or mono exists.
    // This test makes its absence visible.
    [Fact]
    public void The_netstandard_build_is_tested_too()
    {
        bool exists = Path.DirectorySeparatorChar == '\\'
            || File.Exists("/usr/bin/mono") || File.Exists("/usr/local/bin/mono") || File.Exists("/opt/homebrew/bin/mono");
        Assert.SkipUnless(exists, "No .NET Framework and no mono here: the netstandard2.0 build was not run.");
#if NET
        Assert.Equal(".NETCoreApp,Version=v10.0", Target(typeof(Epc).Assembly));
#else
        Assert.Equal(".NETStandard,Version=v2.0", Target(typeof(Epc).Assembly));
#endif
    }

    private static string Target(System.Reflection.Assembly assembly)
    {
        object[] attributes = assembly.GetCustomAttributes(typeof(System.Runtime.Versioning.TargetFrameworkAttribute), false);
        return ((System.Runtime.Versioning.TargetFrameworkAttribute)attributes[0]).FrameworkName;
    }
}
