// All that one solver works with for one plan.
namespace Lighting.Calc.Network;

internal sealed class Workspace(Plan plan, Circuit circuit)
{
    public Plan Plan { get; } = plan;

    public LiveCircuit Live { get; } = new(plan, circuit);

    public ZeroOhmCurrents ZeroOhm => field ??= new ZeroOhmCurrents(Plan.ZeroOhm, circuit);

    public DropOutSearch DropOuts => field ??= new DropOutSearch(Live);
}
