using System.Text.Json;
using Lighting.Calc.FaultFinding;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The JSON of <c>faults</c>.</summary>
internal static class FaultsJson
{
    public static void Write(Utf8JsonWriter json, FaultFinder finder, Diagnosis diagnosis)
    {
        json.WriteString("bike", finder.Bike.Name);
        json.Number("engineRpm", finder.EngineSpeed?.RevolutionsPerMinute);
        json.WriteString("summary", diagnosis.Summary);
        json.WriteBoolean("nothingFound", diagnosis.NothingFound);
        json.WriteNumber("readings", diagnosis.Used.Length);
        json.Array("faults", diagnosis.Ranked, group =>
        {
            json.WriteNumber("probability", group.Probability);
            json.Array("alternatives", group.Alternatives, alternative =>
            {
                json.WriteNumber("probability", alternative.Probability);
                json.WriteString("sentence", alternative.Sentence);
                json.Array("faults", alternative.Faults, fault =>
                {
                    json.WriteString("kind", fault.Code);
                    json.WriteString("part", fault.Part);
                    json.Number("resistanceOhm", fault.Resistance?.Best.Ohms);
                    json.Number("lowestOhm", fault.Resistance?.Low.Ohms);
                    json.Number("highestOhm", fault.Resistance?.High?.Ohms);
                });
            });
            json.WriteStartArray("against");
            foreach (ConflictingReading conflicting in group.Conflicting)
                json.WriteStringValue(conflicting.Message);
            json.WriteEndArray();
        });
        if (diagnosis.Next is { } next)
        {
            json.WriteStartObject("nextTest");
            json.Setting("setting", next.Setting);
            json.WriteString("point", next.Point);
            json.WriteString("instrument", ReadingsDocument.InstrumentWord(next.Instrument));
            json.WriteNumber("informationBits", next.ExpectedInformationGain);
            json.WriteNumber("effort", next.Cost);
            json.WriteString("instruction", next.Instruction);
            json.Array("outcomes", next.Outcomes, outcome =>
            {
                json.WriteString("outcome", outcome.Outcome);
                json.WriteNumber("probability", outcome.Probability);
                json.WriteString("meaning", outcome.Meaning);
            });
            json.WriteEndObject();
        }

        json.Findings(diagnosis.Findings);
    }
}
