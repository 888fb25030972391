namespace ToolLedger.Benchmarks.Interchange;

/// <summary>A line as a plain program would declare it for the serializer.</summary>
public sealed record ReadRecord(string Epc, int Antenna, System.DateTimeOffset Time, double Rssi);
