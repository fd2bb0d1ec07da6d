using System.Collections.Immutable;
using System.Reflection;
using System.Reflection.Emit;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;

namespace FarmEconomics.Tests.House;

/// <summary>
/// Which namespaces of a built assembly use which, read from its symbols: base types, interfaces, fields, signatures, local variables
/// and every instruction that
/// names a type or a member. Text in comments, or a namespace imported and not used, is no use; constants leave no trace.
/// </summary>
internal sealed class NamespaceUses : ISignatureTypeProvider<int, object?>, IDisposable
{
    private static readonly Dictionary<short, OpCode> Codes = typeof(OpCodes).GetFields(BindingFlags.Public | BindingFlags.Static)
        .Select(field => (OpCode)field.GetValue(null)!).ToDictionary(code => code.Value);

    private readonly PEReader file;
    private readonly MetadataReader reader;
    private readonly SortedSet<(string From, string To)> uses = [];
    private readonly Dictionary<(string From, string To), string> examples = [];
    private string from = "";
    private string type = "";

    private NamespaceUses(string assembly)
    {
        file = new PEReader(File.OpenRead(assembly));
        reader = file.GetMetadataReader();
    }

    /// <summary>All uses of another namespace of ours, each with a type that has it.</summary>
    internal static IReadOnlyDictionary<(string From, string To), string> Of(string assembly)
    {
        using NamespaceUses uses = new(assembly);
        foreach (TypeDefinitionHandle handle in uses.reader.TypeDefinitions)
        {
            uses.Read(uses.reader.GetTypeDefinition(handle));
        }

        return uses.examples;
    }

    public void Dispose() => file.Dispose();

    private void Read(TypeDefinition definition)
    {
        (from, type) = (Outermost(definition), reader.GetString(definition.Name));
        Token(definition.BaseType);
        foreach (InterfaceImplementationHandle each in definition.GetInterfaceImplementations())
        {
            Token(reader.GetInterfaceImplementation(each).Interface);
        }

        foreach (FieldDefinitionHandle each in definition.GetFields())
        {
            reader.GetFieldDefinition(each).DecodeSignature(this, null);
        }

        foreach (MethodDefinitionHandle each in definition.GetMethods())
        {
            MethodDefinition method = reader.GetMethodDefinition(each);
            method.DecodeSignature(this, null);
            if (method.RelativeVirtualAddress != 0)
            {
                Body(file.GetMethodBody(method.RelativeVirtualAddress));
            }
        }
    }

    private string Outermost(TypeDefinition definition) =>
        definition.GetDeclaringType() is { IsNil: false } outer ? Outermost(reader.GetTypeDefinition(outer)) : reader.GetString(definition.Namespace);

    private void Body(MethodBodyBlock body)
    {
        if (!body.LocalSignature.IsNil)
        {
            reader.GetStandaloneSignature(body.LocalSignature).DecodeLocalSignature(this, null);
        }

        foreach (ExceptionRegion region in body.ExceptionRegions)
        {
            Token(region.CatchType);
        }

        BlobReader code = body.GetILReader();
        while (code.RemainingBytes > 0)
        {
            short value = code.ReadByte();
            value = value == 0xFE ? (short)(0xFE00 | code.ReadByte()) : value;
            Operand(Codes[value].OperandType, ref code);
        }
    }

    private void Operand(OperandType operand, ref BlobReader code)
    {
        switch (operand)
        {
            case OperandType.InlineNone:
                break;
            case OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar:
                code.Offset += 1;
                break;
            case OperandType.InlineVar:
                code.Offset += 2;
                break;
            case OperandType.InlineI8 or OperandType.InlineR:
                code.Offset += 8;
                break;
            case OperandType.InlineSwitch:
                int targets = code.ReadInt32();
                code.Offset += 4 * targets;
                break;
            case OperandType.InlineField or OperandType.InlineMethod or OperandType.InlineTok or OperandType.InlineType:
                Token(MetadataTokens.EntityHandle(code.ReadInt32()));
                break;
            default:
                code.Offset += 4;
                break;
        }
    }

    private void Token(EntityHandle handle)
    {
        switch (handle.Kind)
        {
            case HandleKind.TypeDefinition when !handle.IsNil:
                Use(Outermost(reader.GetTypeDefinition((TypeDefinitionHandle)handle)));
                break;
            case HandleKind.TypeReference when !handle.IsNil:
                Use(Outermost((TypeReferenceHandle)handle));
                break;
            case HandleKind.TypeSpecification:
                reader.GetTypeSpecification((TypeSpecificationHandle)handle).DecodeSignature(this, null);
                break;
            case HandleKind.MethodDefinition:
                Token(reader.GetMethodDefinition((MethodDefinitionHandle)handle).GetDeclaringType());
                break;
            case HandleKind.FieldDefinition:
                Token(reader.GetFieldDefinition((FieldDefinitionHandle)handle).GetDeclaringType());
                break;
            case HandleKind.MemberReference:
                Token(reader.GetMemberReference((MemberReferenceHandle)handle).Parent);
                break;
            case HandleKind.MethodSpecification:
                MethodSpecification method = reader.GetMethodSpecification((MethodSpecificationHandle)handle);
                method.DecodeSignature(this, null);
                Token(method.Method);
                break;
            default:
                break;
        }
    }

    private string Outermost(TypeReferenceHandle handle)
    {
        TypeReference reference = reader.GetTypeReference(handle);
        return reference.ResolutionScope.Kind == HandleKind.TypeReference ? Outermost((TypeReferenceHandle)reference.ResolutionScope) : reader.GetString(reference.Namespace);
    }

    private void Use(string to)
    {
        if (to != from && to.StartsWith("FarmEconomics", StringComparison.Ordinal) && from.StartsWith("FarmEconomics", StringComparison.Ordinal) && uses.Add((from, to)))
        {
            examples[(from, to)] = type;
        }
    }

    int ISimpleTypeProvider<int>.GetTypeFromDefinition(MetadataReader reader, TypeDefinitionHandle handle, byte rawTypeKind) => Seen(handle);

    int ISimpleTypeProvider<int>.GetTypeFromReference(MetadataReader reader, TypeReferenceHandle handle, byte rawTypeKind) => Seen(handle);

    int ISignatureTypeProvider<int, object?>.GetTypeFromSpecification(MetadataReader reader, object? genericContext, TypeSpecificationHandle handle, byte rawTypeKind) => Seen(handle);

    int ISimpleTypeProvider<int>.GetPrimitiveType(PrimitiveTypeCode typeCode) => 0;

    int ISZArrayTypeProvider<int>.GetSZArrayType(int elementType) => 0;

    int IConstructedTypeProvider<int>.GetArrayType(int elementType, ArrayShape shape) => 0;

    int IConstructedTypeProvider<int>.GetByReferenceType(int elementType) => 0;

    int IConstructedTypeProvider<int>.GetGenericInstantiation(int genericType, ImmutableArray<int> typeArguments) => 0;

    int IConstructedTypeProvider<int>.GetPointerType(int elementType) => 0;

    int ISignatureTypeProvider<int, object?>.GetFunctionPointerType(MethodSignature<int> signature) => 0;

    int ISignatureTypeProvider<int, object?>.GetGenericMethodParameter(object? genericContext, int index) => 0;

    int ISignatureTypeProvider<int, object?>.GetGenericTypeParameter(object? genericContext, int index) => 0;

    int ISignatureTypeProvider<int, object?>.GetModifiedType(int modifier, int unmodifiedType, bool isRequired) => 0;

    int ISignatureTypeProvider<int, object?>.GetPinnedType(int elementType) => 0;

    private int Seen(EntityHandle handle)
    {
        Token(handle);
        return 0;
    }
}
