using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace Lighting.Calc.Tests.Examples;

/// <summary>The manual's web endpoint.</summary>
internal static class WebEndpoint
{
    public static WebApplication Build(string[] args)
    {
        #region endpoint
        WebApplication app = WebApplication.CreateSlimBuilder(args).Build();
        app.MapPost(
            "/check",
            async (HttpRequest request, CancellationToken stop) =>
            {
                // A form with the lists as files, or a body that is JSON, a zip of lists or a lamps.csv.
                ListSource source = ListSource.Empty;
                if (request.HasFormContentType)
                    foreach (IFormFile file in (await request.ReadFormAsync(stop)).Files)
                    {
                        await using Stream list = file.OpenReadStream();
                        source = await source.WithAsync(Path.GetFileName(file.FileName), list, stop);
                    }
                else
                    source = await ListSource.FromStreamAsync(request.Body, stop);
                ListResult<BikeLists> read = BikeLists.Read(source);
                if (!read.TryGetValue(out BikeLists? lists))
                    return Results.UnprocessableEntity(
                        read.Faults.Select(f => new
                        {
                            f.File,
                            f.Line,
                            f.Row,
                            f.Message,
                        })
                    );
                try
                {
                    BikeReport report = BikeCheck.Evaluate(lists.Bike, cancellationToken: stop);
                    return Results.Text(BikeReportWriter.ToJson(report), "application/json");
                }
                catch (Exception wrong) when (wrong is ArgumentException or NetworkNotSolvedException)
                {
                    return Results.UnprocessableEntity(new[] { new { wrong.Message } });
                }
            }
        );
        #endregion
        return app;
    }
}
