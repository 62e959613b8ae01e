using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Gathers the faults and cautions of a folder, and hands them out in file and line order.</summary>
internal sealed class FaultLog
{
    private readonly List<string> _files = [];
    private readonly List<ListFault> _faults = [];
    private readonly List<ListFault> _cautions = [];

    public bool HasFaults => _faults.Count > 0;

    public IReadOnlyList<ListFault> Faults => _faults;

    public int FaultCount => _faults.Count;

    /// <summary>Starts a file: its faults follow those of the files before it.</summary>
    public void Begin(string file) => _files.Add(file);

    public void Fault(ListFault fault) => _faults.Add(fault);

    public void Caution(ListFault caution) => _cautions.Add(caution);

    public ListResult<T> Result<T>(T value)
        where T : class => new(HasFaults ? null : value, InOrder(_faults), InOrder(_cautions));

    public ListResult<T> Failure<T>()
        where T : class => new(null, InOrder(_faults), InOrder(_cautions));

    private ImmutableArray<ListFault> InOrder(List<ListFault> faults) =>
        faults.Count == 0
            ? []
            :
            [
                .. faults
                    .OrderBy(f => _files.IndexOf(f.File))
                    .ThenBy(f => f.Line)
                    .ThenBy(f => f.Row)
                    .ThenBy(f => f.ColumnNumber)
                    .Distinct(),
            ];
}
