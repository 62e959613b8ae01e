using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Caution for a misspelt point: one that is named once, next to another that looks alike.</summary>
internal static class PointChecks
{
    public static void Caution(BikeNames names)
    {
        if (!names.IsComplete)
            return;
        var uses = new Dictionary<string, int>(Name.Comparer);
        foreach (NameUse use in names.Points)
            uses[use.Text] = uses.GetValueOrDefault(use.Text) + 1;
        // On most bikes every point is named twice, and there is nothing to compare.
        SpellingIndex? looks = null;
        foreach (NameUse use in names.Points)
        {
            if (uses[use.Text] > 1)
                continue;
            looks ??= new SpellingIndex(uses.Keys);
            ImmutableArray<string> alike = looks.Of(use.Text);
            if (alike.Length > 0)
                use.Row?.Caution(use.Column, use.Text, "is a point that nothing else is joined to", null, alike);
        }
    }
}
