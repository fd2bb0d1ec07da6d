using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace FarmEconomics.Tests.House;

/// <summary>What of a source file is too long to read at a glance: a method over 40 lines, a line over 140 columns.</summary>
internal static class CodeSize
{
    internal const int MethodLines = 40;
    internal const int LineColumns = 140;

    /// <summary>
    /// Methods, constructors, operators, accessors, local functions and lambdas with a block, longer than 40 lines from the line of their
    /// signature (attributes and comments above it are not counted) to the one that closes them. A data table is exempt.
    /// </summary>
    internal static IEnumerable<string> LongMethods(string file, string text) =>
        from body in CSharpSyntaxTree.ParseText(text, path: file).GetRoot().DescendantNodes()
        where IsBody(body) && !IsDataTable(body)
        let span = Lines(body)
        let length = span.EndLinePosition.Line - span.StartLinePosition.Line + 1
        where length > MethodLines
        select $"{file}:{span.StartLinePosition.Line + 1}: {Name(body)} has {length} lines";

    internal static IEnumerable<string> LongLines(string file, string text) =>
        from line in text.Split('\n').Select((line, at) => (Length: line.TrimEnd('\r').Length, Number: at + 1))
        where line.Length > LineColumns
        select $"{file}:{line.Number}: {line.Length} columns";

    private static bool IsBody(SyntaxNode node) => node switch
    {
        BaseMethodDeclarationSyntax or AccessorDeclarationSyntax or LocalFunctionStatementSyntax => true,
        PropertyDeclarationSyntax property => property.ExpressionBody is not null,
        IndexerDeclarationSyntax indexer => indexer.ExpressionBody is not null,
        AnonymousFunctionExpressionSyntax lambda => lambda.Block is not null,
        _ => false,
    };

    /// <summary>
    /// A body that only lists: one expression after <c>=></c> and no statement anywhere in it, and that expression is a collection, an
    /// object or array with its members, a switch, or a call or chain of calls that is given such (a table's columns). It has no steps
    /// that a reader must follow one after another, however many rows it has.
    /// </summary>
    private static bool IsDataTable(SyntaxNode body) =>
        Expression(body) is { } expression
        && !expression.DescendantNodes().OfType<StatementSyntax>().Any()
        && expression is CollectionExpressionSyntax or BaseObjectCreationExpressionSyntax or ArrayCreationExpressionSyntax
            or ImplicitArrayCreationExpressionSyntax or SwitchExpressionSyntax or InvocationExpressionSyntax;

    private static ExpressionSyntax? Expression(SyntaxNode body) => body switch
    {
        BaseMethodDeclarationSyntax method => method.ExpressionBody?.Expression,
        AccessorDeclarationSyntax accessor => accessor.ExpressionBody?.Expression,
        LocalFunctionStatementSyntax local => local.ExpressionBody?.Expression,
        PropertyDeclarationSyntax property => property.ExpressionBody?.Expression,
        IndexerDeclarationSyntax indexer => indexer.ExpressionBody?.Expression,
        _ => null,
    };

    private static FileLinePositionSpan Lines(SyntaxNode body)
    {
        int start = body is MemberDeclarationSyntax { AttributeLists: [.., var last] }
            ? last.GetLastToken().GetNextToken().SpanStart
            : body.SpanStart;
        return body.SyntaxTree.GetLineSpan(Microsoft.CodeAnalysis.Text.TextSpan.FromBounds(start, body.Span.End));
    }

    private static string Name(SyntaxNode body) => body switch
    {
        MethodDeclarationSyntax method => method.Identifier.Text,
        ConstructorDeclarationSyntax constructor => $"{constructor.Identifier.Text}()",
        LocalFunctionStatementSyntax local => local.Identifier.Text,
        PropertyDeclarationSyntax property => property.Identifier.Text,
        AccessorDeclarationSyntax { Parent.Parent: PropertyDeclarationSyntax property } accessor =>
            $"{property.Identifier.Text}.{accessor.Keyword.Text}",
        AnonymousFunctionExpressionSyntax => "a lambda",
        _ => body.Kind().ToString(),
    };
}
