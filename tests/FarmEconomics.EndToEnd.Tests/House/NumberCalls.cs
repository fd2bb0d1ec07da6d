using System.Reflection;
using System.Reflection.Emit;
using FarmEconomics.Units;

namespace FarmEconomics.EndToEnd.Tests.House;

/// <summary>Finds in compiled code where a number becomes text in nobody's way of writing: without a format provider, and not by a farm's notation.</summary>
internal static class NumberCalls
{
    private const BindingFlags Declared = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly Type[] Fractions = [typeof(decimal), typeof(double), typeof(float), typeof(Money), typeof(Result), typeof(Hours), typeof(BedFeet)];

    private static readonly Type[] Whole = [typeof(int), typeof(long), typeof(short), typeof(uint), typeof(ulong)];

    private static readonly Type[] Writers = [typeof(string), typeof(System.Text.StringBuilder), typeof(TextWriter), typeof(Console)];

    private static readonly Dictionary<short, OpCode> Codes = typeof(OpCodes).GetFields().Select(field => (OpCode)field.GetValue(null)!).ToDictionary(code => code.Value);

    /// <summary>The methods of an assembly that do so, by their type and name; not what the compiler gives a record to be looked at in a debugger.</summary>
    internal static IEnumerable<string> Of(Assembly assembly) => assembly.GetTypes().SelectMany(Of);

    internal static IEnumerable<string> Of(Type type) => type.GetMethods(Declared).Cast<MethodBase>().Concat(type.GetConstructors(Declared))
        .Where(method => method.Name != "PrintMembers" && Calls(method).Any(WritesANumber)).Select(method => $"{Outer(type)}: {method.Name}");

    private static string Outer(Type type) => type.DeclaringType is { } outer ? Outer(outer) : type.FullName!;

    private static bool WritesANumber((MethodBase Target, Type? On) call)
    {
        (MethodBase target, Type? on) = call;
        Type? declaring = target.DeclaringType;
        ParameterInfo[] parameters = target.GetParameters();
        if (declaring?.Namespace?.StartsWith("System", StringComparison.Ordinal) != true && !Fractions.Contains(declaring))
        {
            return false;
        }

        bool format = parameters.Any(parameter => parameter.ParameterType == typeof(string));
        return target.Name switch
        {
            "ToString" => !parameters.Any(parameter => parameter.ParameterType == typeof(IFormatProvider)) && Written(on ?? declaring!, format),
            "AppendFormatted" => target is MethodInfo { IsGenericMethod: true } && Written(target.GetGenericArguments()[0], format),
            "Append" or "Write" or "WriteLine" or "Insert" when Writers.Any(writer => writer.IsAssignableFrom(declaring)) => parameters.Any(parameter => Written(parameter.ParameterType, format: false)),
            "Concat" or "Join" or "AppendJoin" when Writers.Any(writer => writer.IsAssignableFrom(declaring)) => target is MethodInfo { IsGenericMethod: true } && Written(target.GetGenericArguments()[0], format: false),
            _ => false,
        };
    }

    private static bool Written(Type type, bool format)
    {
        Type value = Nullable.GetUnderlyingType(type) ?? type;
        return Fractions.Contains(value) || (format && Whole.Contains(value));
    }

    private static IEnumerable<(MethodBase Target, Type? On)> Calls(MethodBase method)
    {
        if (method.GetMethodBody()?.GetILAsByteArray() is not { } code)
        {
            yield break;
        }

        Type[] ofType = method.DeclaringType!.IsGenericType ? method.DeclaringType.GetGenericArguments() : [];
        Type[] ofMethod = method.IsGenericMethod ? method.GetGenericArguments() : [];
        Type? constrained = null;
        for (int at = 0; at < code.Length;)
        {
            OpCode operation = code[at] == 0xFE ? Codes[(short)(0xFE00 | code[at + 1])] : Codes[code[at]];
            at += operation.Size;
            if (operation.OperandType == OperandType.InlineMethod)
            {
                yield return (method.Module.ResolveMethod(BitConverter.ToInt32(code, at), ofType, ofMethod)!, constrained);
            }

            constrained = operation == OpCodes.Constrained ? method.Module.ResolveType(BitConverter.ToInt32(code, at), ofType, ofMethod) : null;
            at += operation.OperandType switch
            {
                OperandType.InlineNone => 0,
                OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
                OperandType.InlineVar => 2,
                OperandType.InlineI8 or OperandType.InlineR => 8,
                OperandType.InlineSwitch => 4 + (4 * BitConverter.ToInt32(code, at)),
                _ => 4,
            };
        }
    }
}
