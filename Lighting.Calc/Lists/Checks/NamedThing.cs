namespace Lighting.Calc;

/// <summary>The kinds of thing that rows refer to by name.</summary>
internal enum NamedThing
{
    Lamp,
    Run,
    Switch,
    Fuse,
    Point,
}
