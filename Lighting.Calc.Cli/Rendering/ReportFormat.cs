namespace Lighting.Calc.Cli.Rendering;

/// <summary>The forms a result can be given in.</summary>
internal enum ReportFormat
{
    /// <summary>For people at a terminal.</summary>
    Text,

    /// <summary>For a spreadsheet.</summary>
    Csv,

    /// <summary>For programs.</summary>
    Json,
}
