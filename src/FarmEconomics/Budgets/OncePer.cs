using System.Runtime.CompilerServices;

namespace FarmEconomics.Budgets;

/// <summary>
/// Answers worked out once per thing they are of, by whoever asks first, and shared by all who ask later, several threads among them; gone
/// when the thing is. Only for what nothing but the thing decides, and which nobody changes.
/// </summary>
/// <typeparam name="TOf">What the answer is of.</typeparam>
/// <typeparam name="TAnswer">The answer.</typeparam>
/// <param name="make">Works it out.</param>
internal sealed class OncePer<TOf, TAnswer>(Func<TOf, TAnswer> make)
    where TOf : class
    where TAnswer : class
{
    private readonly ConditionalWeakTable<TOf, Lazy<TAnswer>> answers = [];

    /// <summary>The answer.</summary>
    /// <param name="of">What it is of.</param>
    internal TAnswer Of(TOf of) => answers.GetValue(of, one => new Lazy<TAnswer>(() => make(one))).Value;
}
