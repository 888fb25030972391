using System;
using System.Linq;
using Xunit;

namespace ToolLedger.Identifiers.Tests;

public sealed class EpcFieldsLayoutTests
{
    [Fact]
    public void The_fields_of_every_scheme_lie_one_behind_the_other_and_cover_all_bits()
    {
        var draw = new SplitMix(3);
        foreach (EpcScheme scheme in Enumerable.Range(0, 40).SelectMany(_ => AnyFields.Schemes))
        {
            EpcFields fields = EpcFields.ParseTagUri(AnyFields.TagUri(scheme, draw).AsSpan());
            int at = 0;
            foreach (EpcFieldBits field in fields.GetLayout())
            {
                Assert.Equal(at, field.Offset);
                Assert.True(field.Width > 0);
                at += field.Width;
            }

            Assert.Equal(fields.ToEpc().BitCount, at);
        }

        Assert.Empty(default(EpcFields).GetLayout());
    }

    [Theory]
    [InlineData("urn:epc:tag:itip-110:3.4012345.012345.01.02.987", "Header 0-8=40 Filter 8-3=3 Partition 11-3=5 CompanyPrefix 14-24=4012345 Reference 38-20=012345 Piece 58-7=01 Total 65-7=02 Serial 72-38=987")]
    [InlineData("urn:epc:tag:sscc-96:0.0614141.1234567890", "Header 0-8=31 Filter 8-3=0 Partition 11-3=5 CompanyPrefix 14-24=0614141 Reference 38-34=1234567890 Reserved 72-24=0")]
    [InlineData("urn:epc:tag:adi-var:58.35962.PA1.S1", "Header 0-8=3B Filter 8-6=58 Cage 14-36=35962 PartNumber 50-24=PA1 Serial 74-18=S1")]
    [InlineData("urn:epc:tag:giai-96:0.0614141.5678", "Header 0-8=34 Filter 8-3=0 Partition 11-3=5 CompanyPrefix 14-24=0614141 Reference 38-58=5678")]
    public void Each_field_has_its_place_and_value(string uri, string layout) => Assert.Equal(
        layout,
        string.Join(" ", EpcFields.ParseTagUri(uri.AsSpan()).GetLayout().Select(f =>
            FormattableString.Invariant($"{f.Field} {f.Offset}-{f.Width}={f.Value}"))));

    [Theory]
    [InlineData("urn:epc:tag:adi-var:58.35962.PA1.S1", "tools")]
    [InlineData("urn:epc:tag:adi-var:59.35962.PA1.S1", "ground support equipment")]
    [InlineData("urn:epc:tag:adi-var:30.35962.PA1.S1", "reserved")]
    [InlineData("urn:epc:tag:giai-96:1.0614141.5678", "rail vehicle")]
    [InlineData("urn:epc:tag:gid-96:1.2.3", "")]
    public void Filters_have_names(string uri, string name) =>
        Assert.Equal(name, EpcFields.ParseTagUri(uri.AsSpan()).FilterName);
}
