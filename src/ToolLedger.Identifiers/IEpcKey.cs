namespace ToolLedger.Identifiers;

/// <summary>
/// A typed value of one kind of identity. It is what makes the way from an <see cref="Epc"/> to a typed value the same for
/// every kind: <see cref="Epc.TryGetKey{TKey}(out TKey)"/>.
/// </summary>
/// <remarks>Implementations are immutable values and thread-safe.</remarks>
/// <typeparam name="TKey">The typed value itself.</typeparam>
public interface IEpcKey<TKey>
    where TKey : struct, IEpcKey<TKey>
{
    /// <summary>The identity that the value is.</summary>
    EpcIdentity Identity { get; }

    /// <summary>Takes an identity of the right kind. The value that is asked does not matter.</summary>
    /// <param name="identity">The identity.</param>
    /// <param name="key">The typed value, or the default value when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the identity is of this kind.</returns>
    bool TryFrom(in EpcIdentity identity, out TKey key);
}
