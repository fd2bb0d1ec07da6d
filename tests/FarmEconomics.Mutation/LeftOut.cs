#pragma warning disable IDE0130, IDE0060 // in the names of what they stand in for
using FarmEconomics.Budgets;
using FarmEconomics.Tests.Building;
using Xunit;

// What stands in for the things that don't judge mutants: a test that asks for one of them skips. So the files of the tests stay whole.

namespace CsCheck
{
    /// <summary>Random values of some kind: a property over them is skipped.</summary>
    internal sealed class Gen<T>
    {
        internal ArrayGen<T> Array { get; } = new();

        internal Gen<TOther> Select<TOther>(Func<T, TOther> select) => new();

        internal Gen<TResult> SelectMany<TOther, TResult>(Func<T, Gen<TOther>> next, Func<T, TOther, TResult> result) => new();

        internal void Sample(Action<T> property, long iter = 0, int threads = 0, Func<T, string?>? print = null) => LeftOut.Skip();
    }

    internal sealed class ArrayGen<T>
    {
        internal Gen<T[]> this[int length] => new();

        internal Gen<T[]> this[int least, int most] => new();
    }

    internal sealed class RangeGen<T>
    {
        internal Gen<T> this[T least, T most] => new();

        internal Gen<T[]> Array { get; } = new();
    }

    internal static class Gen
    {
        internal static RangeGen<double> Double { get; } = new();

        internal static RangeGen<int> Int { get; } = new();

        internal static Gen<uint> UInt { get; } = new();

        internal static Gen<bool> Bool { get; } = new();

        internal static Gen<(T1, T2)> Select<T1, T2>(Gen<T1> first, Gen<T2> second) => new();

        internal static Gen<(T1, T2, T3)> Select<T1, T2, T3>(Gen<T1> first, Gen<T2> second, Gen<T3> third) => new();

        internal static Gen<(T1, T2, T3, T4)> Select<T1, T2, T3, T4>(Gen<T1> first, Gen<T2> second, Gen<T3> third, Gen<T4> fourth) => new();

        internal static Gen<TOther> Select<T1, T2, TOther>(Gen<T1> first, Gen<T2> second, Func<T1, T2, TOther> select) => new();

        internal static void Sample<T1, T2>(this Gen<(T1, T2)> gen, Action<T1, T2> property, long iter = 0, int threads = 0) =>
            LeftOut.Skip();

        internal static void Sample<T1, T2, T3>(this Gen<(T1, T2, T3)> gen, Action<T1, T2, T3> property, long iter = 0, int threads = 0) =>
            LeftOut.Skip();

        internal static void Sample<T1, T2, T3, T4>(
            this Gen<(T1, T2, T3, T4)> gen,
            Action<T1, T2, T3, T4> property,
            long iter = 0,
            int threads = 0
        ) => LeftOut.Skip();
    }

    internal static class LeftOut
    {
        internal static void Skip() => Assert.Skip("only examples judge mutants");

        internal static T Skip<T>()
        {
            Skip();
            return default!;
        }
    }
}

namespace FarmEconomics.Tests.Generators
{
    internal sealed class RandomFarm
    {
        internal static CsCheck.Gen<RandomFarm> Gen { get; } = new();

        internal FarmBuilder Farm { get; } = new();

        public override string ToString() => "";
    }
}

namespace FarmEconomics.Tests.Reports
{
    /// <summary>The demo farm.</summary>
    internal static class DemoSeason
    {
        internal static FarmReview Review => CsCheck.LeftOut.Skip<FarmReview>();
    }
}

namespace FarmEconomics.Tests.House
{
    internal static class Repository
    {
        /// <summary>Where the demo farm is.</summary>
        internal static string Root => CsCheck.LeftOut.Skip<string>();
    }
}

namespace FarmEconomics.Tests.Decisions
{
    internal static class IndependentPython
    {
        internal static string Numpy(string script, string input) => CsCheck.LeftOut.Skip<string>();
    }
}
