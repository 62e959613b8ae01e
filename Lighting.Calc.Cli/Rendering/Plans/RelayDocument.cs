using System.Text.Json;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>drop --relay</c> gives: the relay, its fuse and wires, and what the lamp gains.</summary>
internal static class RelayDocument
{
    private static readonly Columns<RelayPlan> s_gain = new()
    {
        { "lamp", "lamp", p => p.Lamp.Lamp },
        { "setting", p => p.Setting },
        { "V now", "voltageNowV", p => p.VoltageNow },
        { "V with relay", "voltageThenV", p => p.VoltageThen },
        { "gain V", "gainV", p => p.VoltageThen - p.VoltageNow },
        { "light now %", "lightNow", p => p.LightNow },
        { "light then %", "lightThen", p => p.LightThen },
        { "fuse A", "fuseA", p => p.Fuse?.Rating, Figures.Rated },
        { "wire", "wire", p => p.NewRuns.IsEmpty ? null : p.NewRuns[1].Wire.Name },
    };

    private static readonly Columns<Run> s_run = new()
    {
        { "run", "run", r => r.Name },
        { "from", "from", r => r.From },
        { "to", "to", r => r.To },
        { "wire", "wire", r => r.Wire.Name },
        { "length m", "lengthM", r => Figures.Cell(r.Length.Meters, 2) },
    };

    public static Document Of(Bike bike, RelayPlan plan) =>
        new(
            CommonBlocks.TitleOf(bike, "Relay"),
            Summary(plan),
            Cautions.OfWork(bike),
            () => plan.IsFeasible ? Blocks(bike, plan) : [new SpreadsheetOnly(s_gain.Table([]) with { IsMain = true })],
            json =>
            {
                json.Write("bike", bike.Name);
                json.Write("explanation", plan.Explanation);
                WriteGains(json, plan.IsFeasible ? [plan] : []);
                json.Write("newRuns", s_run, plan.NewRuns);
            }
        )
        {
            Outcome = plan.IsFeasible ? BikeVerdict.Suits : BikeVerdict.DoesNotSuit,
        };

    /// <summary>What relays would gain, for the page of <c>drop</c>; nothing where none would.</summary>
    public static IEnumerable<Block> Gains(IReadOnlyCollection<RelayPlan> plans) =>
        plans.Count == 0
            ? []
            :
            [
                new Heading("With a relay near the battery, fed through a fuse of its own"),
                s_gain.Table(plans),
                new Paragraph(
                    "'drop BIKE --relay LAMP' shows its wires; with '--lists FOLDER' it writes the bike with it."
                ),
            ];

    /// <summary>The same as members of JSON.</summary>
    public static void WriteGains(Utf8JsonWriter json, IReadOnlyCollection<RelayPlan> plans) =>
        json.Write("relays", s_gain, plans);

    private static string Summary(RelayPlan plan) =>
        plan.IsFeasible
            ? $"{plan.Lamp.Lamp}: {Figures.Volts(plan.VoltageNow)} now, {Figures.Volts(plan.VoltageThen)} with a relay "
                + $"near the battery, fed through a fuse of {Figures.Rating(plan.Fuse!.Rating)} of its own"
                + (
                    plan is { LightNow: { } now, LightThen: { } then }
                        ? $"; light {Figures.Percent(now)}, then {Figures.Percent(then)}."
                        : "."
                )
            : $"No relay for {plan.Lamp.Lamp}: {plan.Explanation}.";

    private static IEnumerable<Block> Blocks(Bike bike, RelayPlan plan)
    {
        Relay relay = plan.Relay!;
        yield return s_gain.Table([plan]) with { IsMain = true };
        yield return new Heading("Terminals of the relay");
        yield return new Columns<(string Terminal, string What)>
        {
            { "terminal", "terminal", t => t.Terminal },
            { "joined to", "joinedTo", t => t.What },
        }.Table([
            (
                "30",
                $"battery, through the fuse '{plan.Fuse!.Name}' ({Figures.Rating(plan.Fuse.Rating)}), as near to it as "
                    + "practicable"
            ),
            ("87", $"{plan.Lamp.Lamp}, by '{plan.NewRuns[1].Name}'"),
            ("86", $"'{plan.FormerFeed}', which fed the lamp: take the lamp off it"),
            ("85", $"{bike.EarthPoint}, by '{plan.NewRuns[3].Name}'"),
        ]);
        yield return new Paragraph(
            $"Coil {Figures.Number(relay.CoilResistance.Ohms, 0)} Ω, pulls in from "
                + $"{Figures.Volts(relay.PullInVoltage)}, drops out below {Figures.Volts(relay.DropOutVoltage)}: "
                + "typical figures; enter those of your relay in relays.csv."
        );
        yield return new Heading("New wires");
        yield return s_run.Table(plan.NewRuns);
        foreach (Block block in CommonBlocks.RatedAs(plan.Planned!))
            yield return block;
        if (bike.Runs.Any(r => (r.Cable ?? bike.Cable) is null))
            yield return new Paragraph(
                "The kind of cable is not stated: the new wires are sized as ordinary PVC cable, the lowest rated."
            );
    }
}
