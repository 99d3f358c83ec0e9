namespace Failwise.Drawings;

/// <summary>Seals, gaskets, joints and hoses.</summary>
internal static class SealFigures
{
    private const string Good = "M58 8L46 30L54 54L62 36";

    public static readonly (string Id, Action<Sketch> Draw)[] All =
    [
        ("lip-hardened", s => s.LipFace().Rays((60, 38), 18, 14, 23)),
        ("lip-torn", s => s.LipFace().White("M70 26l14 -9l-3 7l5 3l-9 9Z", 2)),
        ("lip-lined", s => s.LipFace().Ring(60, 38, 17, 1.3).Ring(60, 38, 20, 1.3).Ring(60, 38, 23, 1.3)),
        ("lip-scratched", s => s.LipFace().Lines((66, 24, 78, 14), 3, 4, 3, 2)),
        ("lip-untouched", s => s.SealCut("M58 8L46 28L54 44L62 32").Dashed("M42 50H70", 1.5)),
        ("band-wide", s => s.LipFace().Clipped("c-band-wide", "M60 14A24 24 0 1 1 60 62A24 24 0 1 1 60 14ZM60 24A14 14 0 1 0 60 52A14 14 0 1 0 60 24Z",
            () => s.Grey("M0 0H120V76H0Z")).Ring(60, 38, 24, 1.5)),
        ("spring-missing", s => s.SealCut(Good).Dashed("M34 26a6 6 0 1 0 12 0a6 6 0 1 0 -12 0", 1.5).Line(34, 20, 46, 32).Line(46, 20, 34, 32)),
        ("seal-cocked", s => s.SealBore("M33 26L87 40V56L33 42Z")),
        ("pushed-out", s => s.SealBore("M33 6H87V30H33Z").Up(60, 62, 38)),
        ("stands-proud", s => s.SealBore("M33 8H87V50H33Z").Dashed("M33 66H87", 2).Path("M60 52V64M56 56L60 52L64 56M56 60L60 64L64 60")),
        ("compression-set", s => s.Groove(() => s.Grey("M42 25H78Q88 46 78 67H42Q32 46 42 25Z").Path("M42 25H78Q86 46 78 67H42Q34 46 42 25Z", thick: 3))),
        ("shrunken", s => s.Groove(() => s.Ring(60, 55, 12, 3))),
        ("swollen", s => s.Groove(() => s.Grey("M35 25H85V67H35Z").Path("M35 25Q60 18 85 25V67H35Z", thick: 3).Path("M24 48H33M96 48H87", thick: 3))),
        ("extruded", s => s.Groove(() => s.Ring(60, 46, 20, 3).White("M72 30Q86 25 104 25V29Q90 30 80 40Z", 2))),
        ("nibbled", s => s.Groove(() => s.Ring(60, 46, 20, 3).White("M80 30l-8 2l2 5l-5 1l5 5l6 0l2 -6Z").Dots(1.6, (92, 27), (98, 28), (88, 27)))),
        ("blistered", s => s.Groove(() => s.Ring(60, 46, 21, 3).Ring(54, 40, 5).Ring(66, 48, 6).Ring(55, 56, 3.5).Ring(68, 35, 3))),
        ("split-round", s => s.Ring(60, 38, 33, 3).Ring(60, 38, 21, 3).Path("M60 11l5 2l4 -1l5 4l3 0l4 5l3 2l1 6l2 3l-1 6l1 4M60 65l-6 0l-4 -2l-5 -1l-4 -5l-4 -3l-2 -6", thick: 2)),
        ("spiral-twisted", s => s.Ring(60, 38, 33, 3).Ring(60, 38, 21, 3).Path("M60 5l7 13M77 9l2 13M89 22l-8 9M93 40l-12 -2M87 57l-8 -8M72 69l-2 -11M54 71l2 -12M38 63l6 -8M28 47l11 -3M28 28l12 3M40 12l4 10")),
        ("seal-track-shiny", s => s.ShaftSide().Dashed("M52 20V56M66 20V56", 1.5).Path("M59 29l2 7l6 2l-6 2l-2 7l-2 -7l-6 -2l6 -2Z", thick: 1.3)),
        ("lip-grooved", s => s.White("M6 20H52L58 27L64 20H114V56H64L58 49L52 56H6Z", 3).Grey("M52 20L58 27V49L52 56Z").Grey("M64 20L58 27V49L64 56Z").Path("M58 27V49", thick: 1.5)),
        ("wrapped-debris", s => s.ShaftSide().White("M76 4H96V72H76Z", 3).Path("M60 17Q72 38 60 60M66 16Q78 38 64 61M54 18Q68 38 54 59M72 17Q62 38 72 60M60 17Q48 8 42 12M54 59Q44 70 36 66", thick: 2.5)),
        ("damp-weep", s => s.White("M8 8H112V50H8Z", 3).Ring(60, 38, 5, 2.5).Grey("M55 44Q60 50 65 44V49H55Z").Dashed("M52 46Q50 62 60 66Q70 62 68 46", 1.5)),
        ("sealant-squeezed-in", s => s.White("M6 6H70V34H6Z", 3).White("M6 42H70V70H6Z", 3).Grey("M8 35.5H70V40.5H8Z").Path("M70 34Q94 26 96 40Q94 52 70 42", filled: true)),
        ("sealant-strings", s => s.White("M16 10H104V66H16Z", 3).Path("M30 10V66M44 10V66M58 10V66M72 10V66M86 10V66M16 24H104M16 38H104M16 52H104", thick: 1)
            .Path("M28 20q10 8 4 16t8 14M60 18q14 4 8 16t14 8t-4 14M44 58q12 -6 20 2", thick: 4)),
        ("gritty-joint", s => s.White("M6 6H114V32H6Z", 3).White("M6 40H114V66H6Z", 3).Path("M56 36l4 -7l6 2l2 6l-4 6l-6 -1Z", filled: true)),
        ("joint-step", s => s.White("M6 8H114V36H6Z", 3).White("M6 36H62V70H6Z", 3).White("M62 42H114V70H62Z", 3)),
        ("gasket-blown", s => s.HeadGasket(15).Path("M52 31L60 34L69 30L68 46L60 42L52 45Z", filled: true).Path("M60 44L56 52L61 64", thick: 3)),
        ("gasket-crushed", s => s.HeadGasket(19).Grey("M54 22H66V54H54Z").Lines((56, 26, 64, 24), 0, 6, 5).Path("M57 12Q60 2 63 12M57 64Q60 74 63 64", thick: 3)),
        ("gasket-shifted", s => s.Dashed("M6 6H100V54H6Z", 2).Dashed("M20 30a15 15 0 1 0 30 0a15 15 0 1 0 -30 0M58 30a15 15 0 1 0 30 0a15 15 0 1 0 -30 0", 1.3)
            .Path("M18 20H114V70H18Z", thick: 3).Ring(49, 45, 14, 3).Ring(87, 45, 14, 3)),
        ("gasket-torn", s => s.White("M6 12H70L62 24L72 36L60 48L68 64H6Z", 3).White("M84 12H114V64H82L74 50L86 38L76 26Z", 3).Ring(30, 38, 14)),
        ("gasket-doubled", s => s.White("M24 4H96V48H24Z", 3).White("M28 48H92V56H28Z", 2.5).White("M28 56H92V64H28Z", 2.5).White("M8 64H112V74H8Z", 3)),
        ("ballooned", s => s.White("M34 66V54Q22 34 34 18Q60 2 86 18Q98 34 86 54V66Z", 3).Dashed("M38 62V16H82V62", 1.5).White("M30 64H90V72H30Z", 2.5)),
        ("collapsed", s => s.White("M32 6H88Q66 36 88 66H32Q54 36 32 6Z", 3).Path("M42 10Q58 36 42 62M50 10Q60 36 50 62M70 10Q60 36 70 62M78 10Q62 36 78 62", thick: 1.3).Path("M14 36H34M28 30L34 36L28 42M106 36H86M92 30L86 36L92 42", thick: 3)),
        ("dust-track", s => s.White("M8 20H112V56H8Z", 3).White("M52 12H68V64H52Z", 3).Spread(new(10, 24, 40, 28), 34, 1.3).Spread(new(68, 46, 42, 10), 26, 1.2)),
        ("hardened-hose", s => s.White("M8 66V50Q8 10 60 10H112V34H60Q34 34 34 50V66Z", 3).Dashed("M21 66V50Q21 22 60 22H112", 1).Path("M14 38l8 2M19 27l7 5M28 18l6 8M40 13l4 8M53 10l2 9", thick: 2.5)),
        ("delaminated", s => s.White("M6 16H114V60H6Z", 3).Line(6, 24, 114, 24).Line(6, 52, 114, 52).White("M44 52Q62 50 78 30L82 32Q72 52 70 52Z", 2.5).Path("M14 38H40M34 32L40 38L34 44", thick: 3)),
        ("kinked", s => s.White("M6 62L44 34L4 18L10 2L62 24L116 34V58L64 44L18 76Z", 3).Dashed("M12 68L54 39M7 10L56 34L116 46", 1).Path("M44 34L64 44M50 26L58 46")),
        ("chafed", s => s.White("M6 22H114V58H6Z", 3).White("M44 22Q60 44 76 22Z", 2.5).Lines((48, 24, 56, 32), 6, 0, 4, 1.2).Lines((52, 30, 56, 36), 5, 0, 3, 1.2).White("M52 2H68V16Q60 24 52 16Z", 2.5)),
        ("damper-slipped", s => s.Ring(60, 38, 35, 3).Ring(60, 38, 25, 2).Ring(60, 38, 20, 2).Ring(60, 38, 6).Line(60, 18, 60, 30, 4).Line(84, 20, 77, 25, 4).Path("M64 9Q74 10 82 16M74 8L82 16L72 17")),
    ];
}
