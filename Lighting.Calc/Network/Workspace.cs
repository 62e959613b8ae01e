// All that one solver works with for one plan.
namespace Lighting.Calc.Network;

internal sealed class Workspace(Plan plan, Circuit circuit)
{
    public Plan Plan { get; } = plan;

    public LiveCircuit Live { get; } = new(plan, circuit);

    public ZeroOhmCurrents ZeroOhm { get; } = new(plan.ZeroOhm, circuit);

    public DropOutSearch DropOuts => field ??= new DropOutSearch(Live);
}
