namespace Failwise.Drawings;

/// <summary>Bolts, studs, their holes, keys and belts.</summary>
internal static class FastenerFigures
{
    public static readonly (string Id, Action<Sketch> Draw)[] All =
    [
        ("stretched", s => s.White("M6 16H28V60H6Z", 3).White("M28 27H50Q66 33 82 33H90V27H114V49H90V43H82Q66 43 50 49H28Z", 3).Lines((94, 28, 97, 48), 5, 0, 4)
            .Path("M34 68H112M40 63L34 68L40 73M106 63L112 68L106 73")),
        ("necked", s => s.White("M6 16H28V60H6Z", 3).White("M28 27H56Q68 36 80 27H114V49H80Q68 40 56 49H28Z", 3).Lines((92, 28, 95, 48), 6, 0, 3)),
        ("overload-fracture", s => s.White("M6 16H28V60H6Z", 3).White("M28 27H46L58 33L52 38L58 43L46 49H28Z", 3).White("M114 27H86L72 33L66 38L72 43L86 49H114Z", 3).Lines((94, 28, 97, 48), 6, 0, 3)),
        ("shear-fracture", s => s.White("M6 8H28V52H6Z", 3).White("M28 19H62V41H28Z", 3).White("M66 31H114V53H66Z", 3).Path("M63 4V14M59 10L63 16L67 10M63 72V62M59 66L63 60L67 66")),
        ("backed-out", s => s.White("M4 58H116V74H4Z", 3).White("M50 20H70V58H50Z", 3).White("M38 8H82V28H38Z", 3).Dashed("M38 58V40H82V58", 1.5).Path("M92 30V14M87 20L92 13L97 20", thick: 3)),
        ("short-engagement", s => s.BoltSide().Lines((62, 28, 65, 48), 6, 0, 8).White("M100 10H116V66H100Z", 2.5)),
        ("holes-beaten", s => s.White("M8 8H112V68H8Z", 3).Grey("M36 38A24 15 0 1 1 84 38A24 15 0 1 1 36 38Z").Path("M36 38A24 15 0 1 1 84 38A24 15 0 1 1 36 38Z", thick: 3).Dashed("M45 38a15 15 0 1 0 30 0a15 15 0 1 0 -30 0", 2)),
        ("thread-dirty", s => s.BoltSide().Lines((62, 28, 65, 48), 6, 0, 8).Spread(new(56, 24, 56, 28), 40, 1.6).Grey("M30 10H38V24H30ZM30 52H38V66H30Z")),
        ("fluid-in-hole", s => s.White("M30 20H4V74H116V20H90V64H30Z", 3).Grey("M31 44H89V63H31Z").Line(31, 44, 89, 44, 1.5).White("M36 2H84V40H36Z", 3).Lines((36, 10, 84, 14), 0, 7, 4)),
        ("rust-streaks", s => s.White("M40 20L60 8L80 20V50L60 62L40 50Z", 3).Ring(60, 35, 10, 2.5).Path("M38 16L18 4M34 28L10 22M34 44L10 52M42 60L28 74M60 66V76M78 60L94 74M86 44L110 52M86 28L110 22M82 16L100 4", thick: 3)),
        ("half-tightened-marks", s => s.Ring(60, 38, 33, 3).Ring(60, 38, 12, 3).Path("M32 26l8 4M34 22l2 9M28 40l9 -2M31 35l4 8M36 52l7 -4M38 46l3 8M48 60l4 -7M45 54l8 2", thick: 1.5)),
        ("burr", s => s.White("M6 74V40H70V74Z", 3).Dashed("M70 40H104M70 40V8", 1.3).Path("M70 40Q74 30 68 22Q80 26 78 42Q76 48 70 50Z", filled: true)),
        ("belt-cracked", s => s.White("M4 16H116V60H4Z", 3).Lines((4, 31, 116, 31), 0, 14, 2).Path("M18 16l3 12l-3 14l2 18M44 16l-3 15l4 13l-2 16M70 16l2 14l-4 14l3 16M98 16l-3 12l4 16l-3 16")),
        ("crack-along-rib", s => s.White("M4 16H116V60H4Z", 3).Lines((4, 31, 116, 31), 0, 14, 2).Path("M10 38l14 2l12 -4l16 3l14 -3l18 4l12 -3l12 2", thick: 2.5)),
        ("belt-cut", s => s.White("M4 16H116V60H4Z", 3).White("M50 14L58 38L62 38L58 14Z", 2.5).Path("M54 4L56 12")),
        ("cord-broken-straight", s => s.White("M4 18H54V58H4Z", 3).White("M66 18H116V58H66Z", 3).Lines((8, 24, 54, 24), 0, 7, 5).Lines((66, 24, 112, 24), 0, 7, 5)),
        ("cord-broken-ragged", s => s.White("M4 18H42L54 26L38 34L56 44L40 50L50 58H4Z", 3).White("M116 18H72L80 28L66 36L82 44L70 52L76 58H116Z", 3)
            .Path("M52 25l10 -3M40 34l16 2M55 44l8 4M41 50l14 3M79 28l-10 -2M67 36l-8 4M80 44l-9 3", thick: 1.5)),
        ("frayed", s => s.White("M4 16H116V50H4Z", 3).Line(4, 33, 116, 33, 1.5).Path("M10 50l-3 14M20 50l4 10M30 50l-5 18M42 50l3 12M52 50l-3 16M64 50l5 12M74 50l-4 18M86 50l3 11M96 50l-3 15M106 50l5 12", thick: 1.5)),
        ("teeth-sheared", s => s.ToothedBelt(i => i is not 3)),
        ("teeth-sheared-group", s => s.ToothedBelt(i => i is < 2 or > 4)),
        ("teeth-sheared-all", s => s.ToothedBelt(i => false)),
        ("canvas-worn", s => s.ToothedBelt(i => true).Spread(new(6, 36, 106, 16), 60, 1.1)),
        ("ribs-worn", s => s.White("M6 20H114V38L107 44L100 38L93 44L86 38L79 44L72 38L65 44L58 38L51 44L44 38L37 44L30 38L23 44L16 38L6 44Z", 3).Line(6, 28, 114, 28, 1.3).Dashed("M6 44L13 62L20 44M34 44L41 62L48 44M62 44L69 62L76 44M90 44L97 62L104 44", 1.3)),
        ("ribs-missing", s => s.White("M6 18H114V34L106 58L98 34H60L52 58L44 34L36 58L28 34L20 58L12 34H6Z", 3).Line(6, 26, 114, 26, 1.3).Path("M62 37l6 -3l6 4l6 -4l6 4l8 -3", thick: 1.5)),
        ("slack", s => s.Ring(24, 44, 18, 3).Ring(96, 44, 18, 3).Path("M24 26Q60 60 96 26M24 62H96", thick: 3)),
        ("over-tight", s => s.Ring(24, 44, 18, 3).Ring(96, 44, 18, 3).Path("M24 26H96M24 62H96", thick: 3).Path("M52 6V20M47 14L52 21L57 14M68 20V6M63 12L68 5L73 12", thick: 2.5).Line(50, 26, 70, 26, 6)),
        ("links-loose", s => s.White("M8 28H52V48H8Z", 3).White("M62 28H112V48H62Z", 3).Ring(18, 38, 5).Ring(42, 38, 5).Ring(72, 38, 9, 1.5).Dot(69, 38, 4).Ring(102, 38, 9, 1.5).Dot(105, 38, 4)),
        ("elongated", s => s.Ring(16, 22, 8, 2.5).Ring(42, 22, 8, 2.5).Ring(68, 22, 8, 2.5).Line(16, 22, 68, 22, 2.5).Ring(16, 54, 8, 2.5).Ring(50, 54, 8, 2.5).Ring(84, 54, 8, 2.5).Line(16, 54, 84, 54, 2.5).Path("M72 36H100M94 30L100 36L94 42")),
        ("key-damaged", s => s.Ring(60, 42, 30, 3).Ring(60, 42, 18, 2).White("M50 4H62V24L56 28H50Z", 2.5).White("M64 14H74V32H64Z", 2.5)),
        ("bolt-hole-elongated", s => s.White("M8 8H112V68H8Z", 3).Path("M46 26H72A12 12 0 0 1 72 50H46A12 12 0 0 1 46 26Z", thick: 3).Dashed("M38 38a12 12 0 1 0 24 0a12 12 0 1 0 -24 0", 1.5)),
    ];
}
