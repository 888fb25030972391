using System;
using System.Buffers.Binary;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using System.Reflection.Emit;

namespace ToolLedger.Tests.Architecture;

/// <summary>Reads the instructions of a method and resolves every metadata token in them.</summary>
internal static class MethodBodies
{
    private static readonly Dictionary<short, OpCode> OpCodesByValue = typeof(OpCodes).GetFields(BindingFlags.Public | BindingFlags.Static)
        .Select(field => (OpCode)field.GetValue(null)!)
        .ToDictionary(code => code.Value);

    /// <summary>The types that a body names: locals, caught exceptions, and the types and members its instructions refer to.</summary>
    public static IEnumerable<Type> TypesUsedBy(MethodBase method)
    {
        if (method.GetMethodBody() is not { } body)
        {
            return [];
        }

        return body.LocalVariables.Select(local => local.LocalType)
            .Concat(body.ExceptionHandlingClauses
                .Where(clause => clause.Flags == ExceptionHandlingClauseOptions.Clause && clause.CatchType is not null)
                .Select(clause => clause.CatchType!))
            .Concat(Tokens(body.GetILAsByteArray() ?? []).Select(token => Resolve(method, token)).SelectMany(TypesOf));
    }

    private static IEnumerable<Type> TypesOf(MemberInfo member) => member switch
    {
        Type type => [type],
        FieldInfo field => [field.DeclaringType ?? typeof(void), field.FieldType],
        MethodBase called => CompiledCode.Signature(called).Append(called.DeclaringType ?? typeof(void)),
        _ => throw new NotSupportedException("An instruction refers to a " + member.MemberType + "."),
    };

    private static MemberInfo Resolve(MethodBase method, int token)
    {
        Type[]? typeArguments = method.DeclaringType is { IsGenericType: true } owner ? owner.GetGenericArguments() : null;
        Type[]? methodArguments = method.IsGenericMethod ? method.GetGenericArguments() : null;
        return method.Module.ResolveMember(token, typeArguments, methodArguments)
            ?? throw new NotSupportedException($"Token 0x{token:x8} in {method.Name} refers to nothing.");
    }

    /// <summary>The member tokens of a body, in order. ECMA-335 (6th edition), Partition III, section 1.2 gives the operand sizes (from memory).</summary>
    internal static IReadOnlyList<int> Tokens(ReadOnlySpan<byte> code)
    {
        List<int> tokens = [];
        int at = 0;
        while (at < code.Length)
        {
            short value = code[at++];
            if (value == 0xFE)
            {
                value = unchecked((short)(0xFE00 | code[at++]));
            }

            OpCode opCode = OpCodesByValue[value];
            switch (opCode.OperandType)
            {
                case OperandType.InlineNone:
                    break;
                case OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar:
                    at += 1;
                    break;
                case OperandType.InlineVar:
                    at += 2;
                    break;
                case OperandType.InlineI8 or OperandType.InlineR:
                    at += 8;
                    break;
                case OperandType.InlineSwitch:
                    at += 4 + (4 * BinaryPrimitives.ReadInt32LittleEndian(code[at..]));
                    break;
                case OperandType.InlineField or OperandType.InlineMethod or OperandType.InlineTok or OperandType.InlineType:
                    tokens.Add(BinaryPrimitives.ReadInt32LittleEndian(code[at..]));
                    at += 4;
                    break;
                case OperandType.InlineSig:
                    throw new NotSupportedException("A call through a bare signature hides the types it uses.");
                default:
                    at += 4;
                    break;
            }
        }

        return tokens;
    }
}
