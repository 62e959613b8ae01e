using System.Collections.Immutable;
using Lighting.Calc.Harness;

namespace Lighting.Calc.Lists;

/// <summary>Catches a misspelt point: one that is named once, next to another that looks alike.</summary>
internal static class PointChecks
{
    public static void Caution(BikeNames names)
    {
        if (!names.IsComplete)
            return;
        var points = names.Points.GroupBy(u => u.Text, Name.Comparer).ToList();
        var looks = new LookAlikes(points.Select(p => p.Key));
        foreach (var point in points.Where(p => p.Count() == 1))
        {
            NameUse use = point.First();
            ImmutableArray<string> alike = looks.Of(use.Text);
            if (alike.Length > 0)
                use.Row?.Caution(use.Column, use.Text, "is a point that nothing else is joined to", null, alike);
        }
    }
}
