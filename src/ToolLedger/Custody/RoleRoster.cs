using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>Who holds which role, from when to when. An empty roster checks nothing: the role a person signs in is then taken at its word.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class RoleRoster
{
    /// <summary>The most grants of a roster.</summary>
    public const int MaxGrantCount = 10_000;

    private readonly ILookup<(PersonId Person, Role Role), RoleGrant> byHolder;

    /// <summary>Makes a roster.</summary>
    /// <param name="grants">The grants in any order, at most 10,000.</param>
    /// <exception cref="ArgumentNullException">The list or a grant is null.</exception>
    /// <exception cref="ArgumentException">There are more than 10,000.</exception>
    public RoleRoster(IEnumerable<RoleGrant> grants)
    {
        ArgumentNullException.ThrowIfNull(grants);
        RoleGrant[] copy = [.. grants];
        foreach (RoleGrant grant in copy)
        {
            ArgumentNullException.ThrowIfNull(grant, nameof(grants));
        }

        if (copy.Length > MaxGrantCount)
        {
            throw new ArgumentException("A roster holds at most 10,000 grants.", nameof(grants));
        }

        Grants = Array.AsReadOnly<RoleGrant>([.. copy.OrderBy(static grant => grant.Person.Value, StringComparer.Ordinal)
            .ThenBy(static grant => grant.Role.Value, StringComparer.Ordinal).ThenBy(static grant => grant.From).ThenBy(static grant => grant.Until ?? DateTimeOffset.MaxValue)]);
        byHolder = Grants.ToLookup(static grant => (grant.Person, grant.Role));
    }

    /// <summary>A roster without grants.</summary>
    public static RoleRoster Empty { get; } = new([]);

    /// <summary>The grants, by person, role and time.</summary>
    public IReadOnlyList<RoleGrant> Grants { get; }

    /// <summary>Whether a signature is that of one of some roles, held at the time it was given.</summary>
    /// <param name="signature">The signature.</param>
    /// <param name="roles">The roles that may sign; none means any, stated or not.</param>
    /// <returns>True if the role is one of them and, where the roster has grants, the person held it then.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public bool IsEntitled(Signature signature, IReadOnlyList<Role> roles)
    {
        ArgumentNullException.ThrowIfNull(signature);
        ArgumentNullException.ThrowIfNull(roles);
        return roles.Count == 0
            || (roles.Contains(signature.Role) && (Grants.Count == 0 || byHolder[(signature.By, signature.Role)].Any(grant => grant.IsHeldAt(signature.At))));
    }

    internal static RoleRoster FromJson(JsonFields fields, string name)
    {
        var grants = new List<RoleGrant>();
        foreach (JsonFields item in fields.Objects(name, MaxGrantCount))
        {
            string? person = item.RequiredText("person", IdText.MaxLength);
            string? role = item.RequiredText("role", IdText.MaxLength);
            DateTimeOffset? from = item.RequiredTime("from");
            DateTimeOffset? until = item.Time("until");
            item.End();
            if (person is not null && role is not null && from is { } start)
            {
                grants.Add(new RoleGrant { Person = new PersonId(person), Role = new Role(role), From = start, Until = until });
            }
        }

        return new RoleRoster(grants);
    }

    internal void WriteJson(Utf8JsonWriter writer, string name)
    {
        writer.WriteStartArray(name);
        foreach (RoleGrant grant in Grants)
        {
            writer.WriteStartObject();
            writer.WriteString("person"u8, grant.Person.Value);
            writer.WriteString("role"u8, grant.Role.Value);
            writer.WriteString("from"u8, RecordTime.ToText(grant.From));
            writer.WriteTime("until", grant.Until);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }
}
