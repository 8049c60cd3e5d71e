//! The verdict, on pictures made elsewhere with labels, and on small ones made here.

use std::fs;
use std::path::Path;

use image::{Rgb, RgbImage};
use photo::{
    Card, CardKind, Decoded, EvennessLook, NoCard, PanelError, PixelScale, Rect, Reflectance, Trend, Verdict, Why,
    decode, evenness, find_card, overlay, panel_color, series, two,
};

/// Deterministic noise, −1 to 1.
fn noise(x: u32, y: u32) -> f64 {
    let mut z = u64::from(x) << 32 | u64::from(y);
    z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    ((z ^ (z >> 31)) >> 11) as f64 / (1_u64 << 52) as f64 - 1.0
}

/// A slab of light 0.30 with fine texture, changed by `change` (factors on red, green, blue light),
/// with a card of light 0.184 at 640, 80 when asked for.
fn slab(card: bool, change: impl Fn(f64, f64) -> [f64; 3]) -> Decoded {
    let mut pixels = Vec::new();
    for y in 0..600_u32 {
        for x in 0..800_u32 {
            let on_card = card && (640..740).contains(&x) && (80..150).contains(&y);
            let texture = if on_card { 1.0 + 0.005 * noise(x, y) } else { 1.0 + 0.08 * noise(x, y) };
            let base = if on_card { [0.184; 3] } else { [0.32, 0.30, 0.27] };
            let change = if on_card { [1.0; 3] } else { change(f64::from(x), f64::from(y)) };
            for i in 0..3 {
                let light = base[i] * texture * change[i] * (1.0 + 0.2 * f64::from(x) / 800.0);
                let value = if light <= 0.003_130_8 { 12.92 * light } else { 1.055 * light.powf(1.0 / 2.4) - 0.055 };
                pixels.push((value.clamp(0.0, 1.0) * 255.0).round() as u8);
            }
        }
    }
    Decoded::from_rgb(800, 600, pixels).expect("a picture of 800 by 600")
}

const CARD: Card = Card { rect: Rect { x: 642, y: 82, w: 96, h: 66 }, reflectance: Reflectance::GRAY_CARD };

fn with_card() -> EvennessLook {
    EvennessLook { card: Some(CARD), scale: None }
}

/// 1 inside a round of radius 130, 0 outside, with a rim of some pixels.
fn round(x: f64, y: f64) -> f64 {
    1.0 / (1.0 + (((x - 330.0).hypot(y - 330.0) - 130.0) / 4.0).exp())
}

fn damp(x: f64, y: f64) -> [f64; 3] {
    [0.91, 1.0, 1.10].map(|part| (-0.25 * part * round(x, y)).exp())
}

fn shade(x: f64, y: f64) -> [f64; 3] {
    [1.08, 1.0, 0.9].map(|part| (-0.25 * part * round(x, y)).exp())
}

#[test]
fn an_even_slab_is_even_and_a_damp_round_is_patchy() {
    let even = evenness(&slab(true, |_, _| [1.0; 3]), &with_card());
    assert_eq!((even.verdict, even.why.as_slice()), (Verdict::Even, [].as_slice()));
    let base = even.base_lab.expect("the card is good");
    // The slab drawn has Y 0.30 near its middle, L 61.7 (CIELAB's own formula), whatever the light.
    assert!((base.lightness() - 61.7).abs() < 1.0, "{base:?}");
    let patchy = evenness(&slab(true, damp), &with_card());
    assert_eq!(patchy.verdict, Verdict::Patchy, "{:?}", patchy.why);
    let share = patchy.share.expect("measured");
    // π 130² of 800 × 600, less the card and what lies around it.
    assert!((share - 0.11).abs() < 0.02, "{share}");
}

#[test]
fn a_round_shade_is_never_called_anything() {
    let answer = evenness(&slab(true, shade), &with_card());
    assert_eq!(answer.verdict, Verdict::CantTell);
    assert!(answer.why.iter().any(|why| matches!(why, Why::CouldBeShade { .. })), "{:?}", answer.why);
    assert!(answer.asks_for_second());
    let neutral = evenness(&slab(true, |x, y| [(-0.25 * round(x, y)).exp(); 3]), &with_card());
    assert_eq!(neutral.verdict, Verdict::CantTell);
}

#[test]
fn a_straight_shade_is_never_called_anything() {
    for depth in [0.11, 0.3, 0.7] {
        for rim in [0.5, 3.0, 12.0] {
            let side = |x: f64, y: f64| [(-depth / (1.0 + (-(x - 0.4 * y - 200.0) / rim).exp())).exp(); 3];
            let answer = evenness(&slab(true, side), &with_card());
            assert_eq!(answer.verdict, Verdict::CantTell, "{depth} {rim}");
        }
    }
}

/// Six prints as of a wet boot, too faint for any spot of them to stand out.
#[test]
fn faint_footprints_are_small_marks() {
    let print = |x: f64, y: f64| {
        let near = (0..6).map(|i| {
            let (cx, cy) = (150.0 + 90.0 * f64::from(i), if i % 2 == 0 { 280.0 } else { 320.0 });
            ((x - cx) / 26.0).hypot((y - cy) / 11.0)
        });
        1.0 / (1.0 + ((near.fold(f64::MAX, f64::min) - 1.0) * 8.0).exp())
    };
    let mottle = |x: f64, y: f64| 0.012 * (x / 13.0).sin() * (y / 17.0).sin();
    let prints = |x: f64, y: f64| [0.91, 1.0, 1.10].map(|part| (mottle(x, y) - 0.12 * part * print(x, y)).exp());
    let answer = evenness(&slab(true, prints), &with_card());
    assert_eq!(answer.verdict, Verdict::CantTell, "{:?} {:?}", answer.score_de00, answer.class_de00);
    assert!(answer.why.iter().any(|why| matches!(why, Why::SmallMarks { .. })), "{:?}", answer.why);
}

/// Damp that comes in softly from one side is nearly what a smooth light does; what the light leaves of
/// it is asked about.
#[test]
fn soft_damp_along_one_side_is_not_called_even() {
    for width in [35.0, 50.0, 65.0] {
        for (place, depth) in [(400.0, 0.2), (400.0, 0.14), (520.0, 0.14)] {
            let damp =
                |x: f64, _: f64| [0.92, 1.0, 1.09].map(|p| (-depth * p / (1.0 + ((place - x) / width).exp())).exp());
            let answer = evenness(&slab(true, damp), &with_card());
            assert_ne!(answer.verdict, Verdict::Even, "{width} {place} {depth} {:?}", answer.score_de00);
        }
    }
}

#[test]
fn joints_are_left_out() {
    let joint =
        |x: f64, y: f64| if (x - 0.1 * y - 300.0).abs() < 2.0 || (y - 400.0).abs() < 2.0 { [0.4; 3] } else { [1.0; 3] };
    let answer = evenness(&slab(true, joint), &with_card());
    assert_eq!(answer.verdict, Verdict::Even, "{:?}", answer.why);
    assert!(answer.why.iter().any(|why| matches!(why, Why::Joints { count: 2 })), "{:?}", answer.why);
}

#[test]
fn small_dark_and_gray_pictures_are_not_judged() {
    let tiny = Decoded::from_rgb(1, 1, vec![90; 3]).unwrap();
    assert!(matches!(evenness(&tiny, &EvennessLook::default()).why[0], Why::TooSmall { .. }));
    let dark = evenness(&slab(false, |_, _| [0.01; 3]), &EvennessLook::default());
    assert!(dark.verdict == Verdict::CantTell && dark.why.iter().any(|why| matches!(why, Why::Dark { .. })));
    let bright = evenness(&slab(false, |_, _| [4.0; 3]), &EvennessLook::default());
    assert!(bright.verdict == Verdict::CantTell && bright.why.iter().any(|why| matches!(why, Why::Clipped { .. })));
    for value in [0, 90, 255] {
        let flat = Decoded::from_rgb(400, 300, vec![value; 360_000]).unwrap();
        let answer = evenness(&flat, &EvennessLook::default());
        assert!(answer.verdict == Verdict::CantTell && answer.why.contains(&Why::NoColor), "{:?}", answer.why);
    }
}

#[test]
fn every_code_has_its_place() {
    assert_eq!(Why::KEYS.len(), 27);
    assert_eq!(Why::Blurred { sharpness: 0.1, least: 0.2 }.code(), "blurred");
    assert_eq!(Why::NotLaidOver.code(), "not_laid_over");
    assert_eq!(
        Why::TooSmall { width: 1, height: 2, least: 3 }.values(),
        [("width", 1.0), ("height", 2.0), ("least", 3.0)]
    );
}

#[test]
fn two_photographs_agree_or_say_nothing() {
    let (even, patchy) =
        (evenness(&slab(true, |_, _| [1.0; 3]), &with_card()), evenness(&slab(true, damp), &with_card()));
    let shady = evenness(&slab(true, shade), &with_card());
    assert_eq!(two(&even, &even).verdict, Verdict::Even);
    assert_eq!(two(&patchy, &patchy).verdict, Verdict::Patchy);
    for (first, second) in [(&even, &patchy), (&shady, &even), (&patchy, &shady), (&shady, &shady)] {
        assert_eq!(two(first, second).verdict, Verdict::CantTell);
    }
    let mut apart = patchy.clone();
    apart.score_de00 = patchy.score_de00.map(|score| 2.5 * score);
    assert!(matches!(two(&patchy, &apart).why[0], Why::ScoresApart { .. }));
}

#[test]
fn a_row_of_days_shows_its_trend() {
    let base = evenness(&slab(true, damp), &with_card());
    let row = |scores: &[f64]| -> Vec<_> {
        let at = |day: i64| jiff::Timestamp::from_second(1_770_000_000 + day * 86_400).unwrap();
        let with = |score: f64| photo::Evenness { score_de00: Some(score), ..base.clone() };
        (0..).zip(scores).map(|(day, score)| (at(day), with(*score))).collect()
    };
    let falling = series(&row(&[8.0, 6.5, 5.2, 4.0]));
    assert_eq!(falling.trend, Trend::MoreEven);
    // Slopes −1.5, −1.4, −1.333, −1.3, −1.25, −1.2: median half way between −1.333 and −1.3.
    assert!((falling.change_per_day.unwrap() + 1.316_667).abs() < 1e-5);
    assert_eq!(series(&row(&[4.0, 4.2, 3.9, 4.1])).trend, Trend::NoChange);
    assert_eq!(series(&row(&[2.0, 3.0, 4.0])).trend, Trend::LessEven);
    assert_eq!(series(&row(&[8.0, 4.0])).trend, Trend::TooFew);
}

#[test]
fn the_card_is_found_or_asked_for() {
    let found = find_card(&slab(true, |_, _| [1.0; 3])).expect("a plain card");
    assert_eq!(found.kind, CardKind::Gray);
    let (ours, drawn) = (found.card.rect, Rect { x: 640, y: 80, w: 100, h: 70 });
    assert!(
        ours.x >= drawn.x
            && ours.y >= drawn.y
            && ours.x + ours.w <= drawn.x + drawn.w
            && ours.y + ours.h <= drawn.y + drawn.h
    );
    assert!(ours.w >= 88 && ours.h >= 58, "{ours:?}");
    assert_eq!(find_card(&slab(false, |_, _| [1.0; 3])), Err(NoCard::NotSeen));
    // A damp round is no card.
    assert!(find_card(&slab(false, damp)).is_err());
}

#[test]
fn the_drawing_is_a_png_of_the_promised_size() {
    let picture = slab(true, damp);
    let answer = evenness(&picture, &with_card());
    let drawing = image::load_from_memory(&overlay(&picture, &answer).unwrap()).unwrap().to_rgb8();
    assert!(drawing.width() <= 1600 && drawing.width() > 1580, "{}", drawing.width());
    // The rim of the round lies 130 pixels from its middle, on the photograph's side.
    let scale = f64::from(drawing.width() - 10) / 1600.0;
    let rim = |drawing: &RgbImage| {
        (110..150)
            .any(|r| drawing.get_pixel(((330 - r) as f64 * scale) as u32, (330.0 * scale) as u32) == &Rgb([0, 0, 0]))
    };
    assert!(rim(&drawing));
}

#[test]
fn a_panel_is_measured_by_its_card_and_not_without() {
    let picture = slab(true, |_, _| [1.0; 3]);
    let area = Rect { x: 300, y: 250, w: 200, h: 200 };
    let scale = PixelScale::millimeters(0.5).unwrap();
    let panel = panel_color(&picture, Some(CARD), area, Some(scale)).unwrap();
    // The light rises by 20 % across the picture: at the panel it is 0.936 of that at the card.
    let expected = [0.32, 0.30, 0.27].map(|light| light * (1.0 + 0.2 * 400.0 / 800.0) / (1.0 + 0.2 * 690.0 / 800.0));
    let expected = science::color::LinearRgb::new(expected).xyz().lab();
    let apart = science::color::ciede2000(panel.mean, expected).as_units();
    assert!(apart < 0.3, "{apart} {:?}", panel.mean);
    assert_eq!(panel.n, 200 * 200);
    // The bands reach from three half waves to the square's corners, so they hold the variance but for
    // the plane that is taken out (the slope of the light, about 5 % here) and the noise of sampling.
    let total: f64 = panel.radial_power.iter().map(|band| band.power[0]).sum();
    assert!((total / panel.covariance[0][0] - 0.95).abs() < 0.1, "{total} {:?}", panel.covariance);
    let last = panel.radial_power.last().unwrap();
    assert!((last.cycles_per_mm.unwrap() / last.cycles_per_px - 2.0).abs() < 1e-9);
    assert_eq!(panel_color(&picture, None, area, None), Err(PanelError::NoCard));
    let over = Rect { x: 600, y: 60, w: 100, h: 100 };
    assert_eq!(panel_color(&picture, Some(CARD), over, None), Err(PanelError::Overlap));
}

/// The labeled pictures of the repository, by their own labels of what may be said.
#[test]
fn labeled_pictures() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../reference/photos");
    let (mut counted, mut answered) = (0, 0);
    let mut reader = csv::Reader::from_path(folder.join("labels.csv")).expect("labels");
    let names = reader.headers().unwrap().clone();
    for row in reader.records().map(Result::unwrap) {
        let get = |name: &str| row.get(names.iter().position(|n| n == name).expect("a column")).unwrap_or_default();
        let picture = decode(&fs::read(folder.join(get("file"))).expect("the picture")).unwrap();
        let number = |name: &str| get(name).parse::<u32>().ok();
        let card = number("card_x").map(|x| {
            let rect =
                Rect { x, y: number("card_y").unwrap(), w: number("card_w").unwrap(), h: number("card_h").unwrap() };
            Card { rect, reflectance: Reflectance::new(get("card_reflectance").parse().unwrap()).unwrap() }
        });
        let answer = evenness(&picture, &EvennessLook { card, scale: None });
        let word = match answer.verdict {
            Verdict::Even => "uniform",
            Verdict::Patchy => "patchy",
            Verdict::CantTell => "cannot_tell",
        };
        assert!(get("accept").split('|').any(|accepted| accepted == word), "{}: {word} {:?}", get("file"), answer.why);
        counted += 1;
        answered += usize::from(answer.verdict != Verdict::CantTell);
    }
    assert_eq!(counted, 24);
    assert!(answered >= 8, "{answered} of {counted} answered: saying nothing at all is no answer");
}
