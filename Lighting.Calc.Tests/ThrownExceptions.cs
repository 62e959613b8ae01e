using System.Reflection;
using System.Reflection.Emit;
using System.Runtime.CompilerServices;

namespace Lighting.Calc.Tests;

/// <summary>Which exceptions compiled methods of the core make or pass on, read from their code.</summary>
/// <remarks>
/// What code hands on to a delegate or interface is followed where it makes the lambda itself. A public delegate throws
/// what its documentation says. What libraries throw is not seen, but for a cancellation that was handed to them.
/// </remarks>
/// <param name="assembly">The core.</param>
/// <param name="ofDelegate">What a public delegate may throw.</param>
internal sealed class ThrownExceptions(Assembly assembly, Func<Type, IEnumerable<Type>> ofDelegate)
{
    private static readonly Dictionary<short, OpCode> s_opCodes = typeof(OpCodes)
        .GetFields(BindingFlags.Public | BindingFlags.Static)
        .Select(f => (OpCode)f.GetValue(null)!)
        .ToDictionary(o => o.Value);

    private readonly Dictionary<MethodBase, (HashSet<Type> Thrown, HashSet<MethodBase> Called)> _known = [];

    /// <summary>What a method throws itself, or through private and compiler-made methods of its own type.</summary>
    public IReadOnlySet<Type> ByItself(MethodBase method) =>
        Closure(
            method,
            called => !called.IsPublic && Outermost(called) == Outermost(method) || IsMadeByCompiler(called)
        );

    /// <summary>What a method throws itself or through any method of the assembly that it calls.</summary>
    public IReadOnlySet<Type> Anywhere(MethodBase method) => Closure(method, _ => true);

    private HashSet<Type> Closure(MethodBase method, Func<MethodBase, bool> follow)
    {
        HashSet<Type> thrown = [];
        HashSet<MethodBase> seen = [method];
        Stack<MethodBase> open = new([method]);
        while (open.TryPop(out MethodBase? next))
        {
            (HashSet<Type> own, HashSet<MethodBase> called) = Read(next);
            thrown.UnionWith(own);
            foreach (MethodBase callee in called.Where(c => follow(c) && seen.Add(c)))
                open.Push(callee);
        }

        return thrown;
    }

    private (HashSet<Type> Thrown, HashSet<MethodBase> Called) Read(MethodBase method)
    {
        if (_known.TryGetValue(method, out var known))
            return known;
        HashSet<Type> thrown = [];
        HashSet<MethodBase> called = [];
        foreach ((OpCode op, MethodBase callee) in Calls(method))
        {
            Type owner = callee.DeclaringType!;
            if (
                typeof(Exception).IsAssignableFrom(owner)
                && (op == OpCodes.Newobj || callee.Name.StartsWith("Throw", StringComparison.Ordinal))
            )
                thrown.Add(owner);
            else if (callee.Name is nameof(CancellationToken.ThrowIfCancellationRequested) or "set_CancellationToken")
                thrown.Add(typeof(OperationCanceledException));
            if (owner.Assembly != assembly)
                continue;
            if (typeof(Delegate).IsAssignableFrom(owner) && callee.Name == "Invoke")
                thrown.UnionWith(ofDelegate(owner));
            called.Add(Definition(callee));
            // An iterator's code stands in the type that it makes.
            if (callee.IsConstructor && owner.GetCustomAttribute<CompilerGeneratedAttribute>() is not null)
                called.UnionWith(
                    Definition(owner)
                        .GetMethods(BindingFlags.Instance | BindingFlags.NonPublic)
                        .Where(m => m.Name == "MoveNext")
                );
        }

        return _known[method] = (thrown, called);
    }

    private static IEnumerable<(OpCode Op, MethodBase Callee)> Calls(MethodBase method)
    {
        byte[] code = method.GetMethodBody()?.GetILAsByteArray() ?? [];
        Type[]? ofType = method.DeclaringType!.IsGenericType ? method.DeclaringType.GetGenericArguments() : null;
        Type[]? ofMethod = method.IsGenericMethod ? method.GetGenericArguments() : null;
        for (int i = 0; i < code.Length;)
        {
            OpCode op = s_opCodes[code[i] == 0xfe ? unchecked((short)(0xfe00 | code[++i])) : code[i]];
            i++;
            if (op.OperandType == OperandType.InlineMethod)
                yield return (op, method.Module.ResolveMethod(BitConverter.ToInt32(code, i), ofType, ofMethod)!);
            i += op.OperandType switch
            {
                OperandType.InlineNone => 0,
                OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
                OperandType.InlineVar => 2,
                OperandType.InlineI8 or OperandType.InlineR => 8,
                OperandType.InlineSwitch => 4 + 4 * BitConverter.ToInt32(code, i),
                _ => 4,
            };
        }
    }

    // Of a generic method or type the code is that of its definition.
    private static MethodBase Definition(MethodBase method) => method.Module.ResolveMethod(method.MetadataToken)!;

    private static Type Definition(Type type) => type.IsGenericType ? type.GetGenericTypeDefinition() : type;

    private static Type Outermost(MethodBase method)
    {
        Type type = method.DeclaringType!;
        while (type.DeclaringType is { } outer)
            type = outer;
        return type;
    }

    private static bool IsMadeByCompiler(MethodBase method) =>
        method.Name.Contains('<', StringComparison.Ordinal)
        || method.DeclaringType!.Name.Contains('<', StringComparison.Ordinal);
}
