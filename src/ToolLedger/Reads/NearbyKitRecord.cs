using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <summary>A kit nearby as stored in a presentation: {"kit", "from", "until"?}.</summary>
internal sealed class NearbyKitRecord : JsonRecord
{
    public JsonText Kit { get; set; }

    public JsonText From { get; set; }

    public JsonText Until { get; set; }

    internal static NearbyKitRecord Of(NearbyKit nearby) => new()
    {
        Kit = new JsonText(nearby.Kit.Value),
        From = new JsonText(RecordTime.ToText(nearby.From)),
        Until = new JsonText(nearby.Until is { } until ? RecordTime.ToText(until) : null),
    };
}
