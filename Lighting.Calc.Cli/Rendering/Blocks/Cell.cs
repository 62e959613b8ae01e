using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>A cell of a table, or a value of JSON: what people read, and what a program reads.</summary>
/// <param name="Text">What people read.</param>
/// <param name="Value">A number, words, yes or no, a setting; null where it is unknown.</param>
/// <param name="IsNumber">Whether it is set to the right.</param>
internal readonly record struct Cell(string Text, object? Value, bool IsNumber = false)
{
    /// <summary>The value as programs get it: of a number no more digits than the calculation holds.</summary>
    public object? Written => Value is double number ? Figures.Exact(number) : Value;

    /// <summary>Whether the value is beyond its limit; a page marks it.</summary>
    public bool IsBeyond { get; init; }

    /// <summary>The reading that is written into the cell, where it is one; a page has a field for it.</summary>
    public ReadingField? Field { get; init; }

    /// <summary>What JSON has in place of the value, if anything.</summary>
    public object? Json { get; init; }

    public static implicit operator Cell(string? text) => new(VisibleText.Of(text ?? "", keepLines: true), text);

    public static implicit operator Cell(ImmutableArray<string> texts) => new(string.Join("; ", texts), texts);

    public static implicit operator Cell(Setting? setting) => new(setting?.ToString() ?? "", setting);

    public static implicit operator Cell(bool? holds) =>
        new(
            holds switch
            {
                true => "yes",
                false => "no",
                null => "unknown",
            },
            holds
        );

    public static implicit operator Cell(long count) => new(Figures.Number(count, 0), count, IsNumber: true);

    public static implicit operator Cell(double? number) => Figures.Cell(number, 2);

    public static implicit operator Cell(ElectricPotential? value) => Figures.Cell(value?.Volts, 2);

    public static implicit operator Cell(ElectricCurrent? value) => Figures.Cell(value?.Amperes, 2);

    public static implicit operator Cell(Power? value) => Figures.Cell((double?)value?.Watts, 1);

    public static implicit operator Cell(Ratio? value) => Figures.Cell(value?.Percent, 1);

    public static implicit operator Cell(ElectricResistance? value) =>
        value is { } known
            ? new Cell(Figures.TwoFigures(known.Ohms), known.Ohms, IsNumber: true)
            : Figures.Cell(null, 0);

    public static implicit operator Cell(ElectricCharge? value) => Figures.Cell(value?.AmpereHours, 2);

    public static implicit operator Cell(RotationalSpeed? value) => Figures.Cell(value?.RevolutionsPerMinute, 0);

    /// <summary>The cell, marked where it is beyond its limit.</summary>
    public Cell Beyond(bool isBeyond) => this with { IsBeyond = isBeyond };

    /// <summary>The cell with its number printed as a format says.</summary>
    public Cell In(string? format) =>
        format is not null && Value is double number ? this with { Text = Figures.Number(number, format) } : this;
}
