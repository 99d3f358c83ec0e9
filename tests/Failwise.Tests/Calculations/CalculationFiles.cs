namespace Failwise.Tests.Calculations;

/// <summary>Where the files beside these tests and the method pages lie.</summary>
internal static class CalculationFiles
{
    public static string Root { get; } = FindRoot();

    public static string PublishedValues => Path.Combine(Root, "tests", "Failwise.Tests", "Calculations", "published-values.json");

    public static string PublishedIds => Path.Combine(Root, "tests", "Failwise.Tests", "Calculations", "published-ids.txt");

    public static string MethodPages => Path.Combine(Root, "docs", "methods");

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Failwise.sln")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException("Failwise.sln was not found above the tests.");
    }
}
