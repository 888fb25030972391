namespace ToolLedger.Records;

/// <summary>A signature as stored: {"person", "at", "role"?}.</summary>
internal sealed class SignatureRecord : JsonRecord
{
    public JsonText Person { get; set; }

    public JsonText At { get; set; }

    public JsonText Role { get; set; }

    internal static SignatureRecord Of(Signature signature) => new()
    {
        Person = new JsonText(signature.By.Value),
        At = new JsonText(RecordTime.ToText(signature.At)),
        Role = new JsonText(signature.Role.IsEmpty ? null : signature.Role.Value),
    };

    /// <summary>Null and issues if a member is missing or wrong.</summary>
    internal Signature? Read(RecordReader reader, string place)
    {
        reader.RefuseUnknown(this, place);
        string? person = reader.Text(Person, place, "person", IdText.MaxLength);
        System.DateTimeOffset? at = reader.Time(At, place, "at");
        string? role = reader.OptionalText(Role, place, "role", IdText.MaxLength);
        return person is null || at is null ? null : new Signature
        {
            By = new PersonId(person),
            At = at.Value,
            Role = role is null ? default : new Role(role),
        };
    }
}
