namespace Failwise.Entry;

/// <summary>What is known when a case is begun. Words are ids of the vocabulary; texts are the writer's own.</summary>
/// <param name="Cylinders">Number of cylinders, 1 to 64; null when not known.</param>
/// <param name="Mains">Number of main bearings, 1 to 64; null when not known.</param>
/// <param name="Feed">Main bearings in the order in which the oil reaches them; empty when not known.</param>
/// <param name="DriveEndFirst">True when No. 1 stands at the drive end; null when not known.</param>
/// <param name="Hours">Hours run in all; null when not known.</param>
/// <param name="Denied">Symptoms and history words that were asked and are not so.</param>
public sealed record CaseDraft(
    string Title, IReadOnlyList<string> Kinds, string? Name, int? Cylinders, int? Mains, IReadOnlyList<int> Feed, bool? DriveEndFirst, string? NumberOne,
    IReadOnlyList<string> Features, IReadOnlyList<string> Without, double? Hours, IReadOnlyList<string> History, IReadOnlyList<string> Symptoms,
    IReadOnlyList<string> Denied);
