using System.Reflection;
using System.Text;

namespace FarmEconomics.Tests.House;

/// <summary>Lists what an assembly shows to others, a line per type and member, so that a change is seen in review.</summary>
internal static class PublicApi
{
    private const BindingFlags Declared = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    // What the compiler adds to every record; it follows from the record itself.
    private static readonly HashSet<string> OfEveryRecord = ["Equals", "GetHashCode", "ToString", "PrintMembers", "Deconstruct", "<Clone>$", "op_Equality", "op_Inequality", "get_EqualityContract"];

    internal static string Of(Assembly assembly)
    {
        var text = new StringBuilder();
        foreach (Type type in assembly.GetExportedTypes().OrderBy(type => type.FullName, StringComparer.Ordinal))
        {
            text.Append(Kind(type)).Append(' ').Append(Name(type, whole: true)).Append(Bases(type)).Append('\n');
            foreach (string member in Members(type).Order(StringComparer.Ordinal))
            {
                text.Append("    ").Append(member).Append('\n');
            }
        }

        return text.ToString();
    }

    private static IEnumerable<string> Members(Type type)
    {
        if (type.IsEnum)
        {
            return Enum.GetNames(type).Select(name => $"{name} = {Convert.ToInt64(Enum.Parse(type, name))}");
        }

        bool record = type.GetMethod("PrintMembers", Declared) is not null;
        return type.GetConstructors(Declared).Where(IsShown).Where(one => !(record && IsCopying(one))).Select(one => $"new({Parameters(one)})")
            .Concat(type.GetFields(Declared).Where(field => field.IsPublic || field.IsFamily).Select(field => $"{(field.IsLiteral ? "const " : field.IsStatic ? "static " : "")}{field.Name}: {Name(field.FieldType)}"))
            .Concat(type.GetProperties(Declared).Where(property => property.GetAccessors(true).Any(IsShown) && property.Name != "EqualityContract").Select(Property))
            .Concat(type.GetMethods(Declared).Where(IsShown).Where(one => !(record && OfEveryRecord.Contains(one.Name)) && !(one.IsSpecialName && !one.Name.StartsWith("op_", StringComparison.Ordinal))).Select(Method))
            .Concat(type.GetEvents(Declared).Select(one => $"event {one.Name}: {Name(one.EventHandlerType!)}"));
    }

    private static string Property(PropertyInfo property)
    {
        MethodInfo[] shown = [.. property.GetAccessors(true).Where(IsShown)];
        string index = property.GetIndexParameters().Length > 0 ? $"[{string.Join(", ", property.GetIndexParameters().Select(one => Name(one.ParameterType)))}]" : "";
        MethodInfo? set = Array.Find(shown, one => one == property.SetMethod);
        bool init = set?.ReturnParameter.GetRequiredCustomModifiers().Any(one => one.Name == "IsExternalInit") == true;
        return $"{(shown[0].IsStatic ? "static " : "")}{property.Name}{index}: {Name(property.PropertyType)}{Mark(property.PropertyType, new NullabilityInfoContext().Create(property))} {{ {(shown.Contains(property.GetMethod) ? "get; " : "")}{(set is null ? "" : init ? "init; " : "set; ")}}}";
    }

    private static string Method(MethodInfo method)
    {
        string generic = method.IsGenericMethodDefinition ? $"<{string.Join(", ", method.GetGenericArguments().Select(one => one.Name))}>" : "";
        return $"{(method.IsStatic ? "static " : "")}{method.Name}{generic}({Parameters(method)}): {Name(method.ReturnType)}{Mark(method.ReturnType, new NullabilityInfoContext().Create(method.ReturnParameter))}";
    }

    private static string Parameters(MethodBase method) =>
        string.Join(", ", method.GetParameters().Select(one => $"{Name(one.ParameterType)}{Mark(one.ParameterType, new NullabilityInfoContext().Create(one))} {one.Name}{(one.IsOptional ? $" = {one.RawDefaultValue ?? "null"}" : "")}"));

    // Whether a reference may be null; of a value its own name says so.
    private static string Mark(Type type, NullabilityInfo info) => !type.IsValueType && (info.ReadState == NullabilityState.Nullable || info.WriteState == NullabilityState.Nullable) ? "?" : "";

    private static bool IsShown(MethodBase method) => method.IsPublic || (method.IsFamily && method.DeclaringType is { IsSealed: false });

    private static bool IsCopying(ConstructorInfo one) => one.GetParameters() is [{ } only] && only.ParameterType == one.DeclaringType;

    private static string Kind(Type type) => type.IsEnum ? "enum" : type.IsInterface ? "interface" : type.IsValueType ? "struct"
        : typeof(Delegate).IsAssignableFrom(type) ? "delegate" : type is { IsAbstract: true, IsSealed: true } ? "static class" : type.IsAbstract ? "abstract class" : type.IsSealed ? "sealed class" : "class";

    private static string Bases(Type type)
    {
        IEnumerable<Type> bases = type.IsEnum || type.IsValueType || type.BaseType == typeof(object) || type.BaseType is null ? [] : [type.BaseType];
        string[] names = [.. bases.Concat(type.IsEnum ? [] : type.GetInterfaces().Where(one => !one.Name.StartsWith("IEquatable", StringComparison.Ordinal))).Select(one => Name(one)).Order(StringComparer.Ordinal)];
        return names.Length == 0 ? "" : " : " + string.Join(", ", names);
    }

    private static string Name(Type type, bool whole = false)
    {
        if (type.IsByRef)
        {
            return "ref " + Name(type.GetElementType()!);
        }

        if (type.IsArray)
        {
            return Name(type.GetElementType()!) + "[]";
        }

        if (Nullable.GetUnderlyingType(type) is { } value)
        {
            return Name(value) + "?";
        }

        string name = (type.IsNested && !type.IsGenericParameter ? Name(type.DeclaringType!, whole) + "." : whole ? type.Namespace + "." : "") + type.Name.Split('`')[0];
        return type.IsGenericType && type.Name.Contains('`', StringComparison.Ordinal) ? $"{name}<{string.Join(", ", type.GetGenericArguments().TakeLast(int.Parse(type.Name.Split('`')[1])).Select(one => Name(one)))}>" : name;
    }
}
