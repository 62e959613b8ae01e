using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>What one test reads under every fault of every severity.</summary>
/// <param name="count">Number of them.</param>
internal sealed class Column(int count)
{
    /// <summary>Voltage, current, logarithm of resistance, or the logarithm of light.</summary>
    public float[] Value { get; } = new float[count];

    /// <summary>Standard deviation of the value by the harness's tolerance.</summary>
    public float[] Sigma { get; } = new float[count];

    /// <summary>Change of the value per unit change of the battery voltage.</summary>
    public float[] Battery { get; } = new float[count];

    /// <summary>Change of the value by each pair of mirrored draws of the tolerances; empty where they are not
    /// solved.</summary>
    public float[][] Draws { get; init; } = [];

    /// <summary>Standard deviation of what each reading has of its own, the engine's speed; empty with
    /// the engine off.</summary>
    public float[] Own { get; init; } = [];

    /// <summary>The prediction of a severity that was solved.</summary>
    public Prediction At(int member) =>
        new(
            Value[member],
            Sigma[member],
            Battery[member],
            Draw(0, member),
            Draw(1, member),
            Draw(2, member),
            OwnAt(member)
        );

    /// <summary><see cref="Own"/> of a severity; zero with the engine off.</summary>
    public float OwnAt(int member) => Own.Length > 0 ? Own[member] : 0;

    /// <summary>A column of a circuit's supply.</summary>
    public static Column Of(int count, TestSupply supply, bool withDraws) =>
        new(count)
        {
            Draws = withDraws ? [.. Enumerable.Range(0, ToleranceDraws.Pairs).Select(_ => new float[count])] : [],
            Own = supply.Speed is null ? [] : new float[count],
        };

    /// <summary>Begins a row, which a stopped calculation may have begun before.</summary>
    public void Begin(int member, double value)
    {
        Value[member] = (float)value;
        Sigma[member] = 0;
        foreach (float[] draw in Draws)
            draw[member] = 0;
    }

    /// <summary>Adds what one draw of the tolerances reads; <see cref="Sigma"/> then holds the sum of
    /// squares.</summary>
    public void AddDraw(int member, int draw, double value)
    {
        Sigma[member] += (float)Math.Pow(value - Value[member], 2);
        if (Draws.Length > 0)
            Draws[draw / 2][member] += (float)((draw % 2 == 0 ? value : -value) / 2);
    }

    /// <summary>Whether a row, with its first pair of draws, is that of the healthy bike but for rounding; a column
    /// without draws by its value alone.</summary>
    public bool IsAsFirst(int member)
    {
        const float rounding = 1e-5f;
        return Math.Abs(Value[member] - Value[0]) < rounding
            && (Draws.Length == 0 || Math.Abs(Draws[0][member] - Draws[0][0]) < rounding);
    }

    /// <summary>Takes all but the value from the row of the healthy bike.</summary>
    public void TakeSpreadOfFirst(int member)
    {
        (Sigma[member], Battery[member]) = (Sigma[0], Battery[0]);
        foreach (float[] draw in Draws)
            draw[member] = draw[0];
        if (Own.Length > 0)
            Own[member] = Own[0];
    }

    /// <summary>Copies a row of another column, without its draws.</summary>
    public void Take(int row, Column from, int member)
    {
        (Value[row], Sigma[row], Battery[row]) = (from.Value[member], from.Sigma[member], from.Battery[member]);
        if (Own.Length > 0)
            Own[row] = from.OwnAt(member);
    }

    /// <summary>Fills a row with a value whose tolerance and dependence on the supply are those of the row that has
    /// most tolerance.</summary>
    public void Take(int row, double value, Column from, ImmutableArray<int> like)
    {
        Take(row, from, like.MaxBy(m => from.Sigma[m]));
        Value[row] = (float)value;
    }

    private float Draw(int pair, int member) => Draws.Length > 0 ? Draws[pair][member] : 0;
}
