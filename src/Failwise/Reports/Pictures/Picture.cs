namespace Failwise.Reports;

/// <summary>A drawing of ours that belongs to a report.</summary>
/// <param name="Name">File name without ending, unique in the report.</param>
/// <param name="Alt">What a person who cannot see it needs to know.</param>
/// <param name="Svg">The whole file: it carries its own style and asks for nothing.</param>
/// <param name="Inline">The same for a page that carries the style already, so that it can follow the page's colours.</param>
public sealed record Picture(string Name, string Alt, string Svg, string Inline);
