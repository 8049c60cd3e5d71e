//! Measurements from photographs, without a slab: is it one color, and what color is a panel.

use std::path::{Path, PathBuf};

use clap::{Args, Subcommand};
use jiff::Timestamp;
use jiff::civil::DateTime;
use jiff::tz::TimeZone;
use localization::Locale;
use photo::{
    Card, CardKind, Decoded, Evenness, EvennessLook, NoCard, PixelScale, Rect, Reflectance, Taken, Verdict, Why,
    decode, evenness, find_card, overlay, panel_color, series, two,
};
use pictures::{Look, ScoreChart, score_chart};
use science::color::Lab;
use serde_json::{Value, json};

use crate::cli::Common;
use crate::failure::{Answer, Failure};
use crate::json::rounded;
use crate::session;

/// Which measurement.
#[derive(Debug, Subcommand)]
pub(crate) enum PhotoCommand {
    /// Is the slab one color: even, patchy, or can't tell
    #[command(
        after_help = "Examples:\n  underfoot photo evenness slab.jpg --card 964,359,221,165 --card-reflectance 0.184 --overlay map.png\n  \
        underfoot photo evenness morning.jpg evening.jpg --same-place\n  \
        underfoot photo evenness day1.jpg day3.jpg day6.jpg --series --json"
    )]
    Evenness(EvennessArgs),
    /// The color of a panel, by a card in the same picture
    #[command(after_help = "Example:\n  underfoot photo color panel.jpg --card 60,40,220,160 --area 400,300,900,900")]
    Color(ColorArgs),
}

#[derive(Debug, Args)]
pub(crate) struct CardArgs {
    /// The reference card in pixels of the upright picture: x,y,width,height [default: looked for]
    #[arg(long, value_name = "X,Y,W,H")]
    card: Option<String>,
    /// Light the card throws back, 0.02 to 1 [default: 0.184, a gray card; white paper is about 0.87]
    #[arg(long, value_name = "SHARE")]
    card_reflectance: Option<f64>,
    /// Do not look for a card
    #[arg(long, conflicts_with = "card")]
    no_card: bool,
    /// Size of a pixel on the slab, in millimeters
    #[arg(long, value_name = "MM")]
    scale: Option<f64>,
}

#[derive(Debug, Args)]
pub(crate) struct EvennessArgs {
    /// Photographs, JPEG or PNG
    #[arg(required = true, value_name = "FILE")]
    files: Vec<PathBuf>,
    #[command(flatten)]
    card: CardArgs,
    /// Two photographs of one place, from different sides or hours: what stays is in the slab
    #[arg(long, conflicts_with = "series")]
    same_place: bool,
    /// Photographs of one place over days; when each was taken is read from the file
    #[arg(long)]
    series: bool,
    /// Write the photograph beside its map of patches as PNG (one photograph)
    #[arg(long, value_name = "FILE")]
    overlay: Option<PathBuf>,
    /// Write the scores by date as a drawing, SVG (with --series)
    #[arg(long, value_name = "FILE", requires = "series")]
    plot: Option<PathBuf>,
}

#[derive(Debug, Args)]
pub(crate) struct ColorArgs {
    /// Photograph, JPEG or PNG
    file: PathBuf,
    #[command(flatten)]
    card: CardArgs,
    /// The panel in pixels: x,y,width,height [default: the whole picture beside the card's column]
    #[arg(long, value_name = "X,Y,W,H")]
    area: Option<String>,
}

pub(crate) fn run(command: &PhotoCommand, common: &Common) -> Result<Answer, Failure> {
    let locale = session::locale(common);
    match command {
        PhotoCommand::Evenness(args) => run_evenness(args, common, locale),
        PhotoCommand::Color(args) => run_color(args, common, locale),
    }
}

/// A photograph that was measured.
struct Looked {
    file: PathBuf,
    picture: Decoded,
    taken: Option<Taken>,
    evenness: Evenness,
    found: Option<CardKind>,
}

fn run_evenness(args: &EvennessArgs, common: &Common, locale: Locale) -> Result<Answer, Failure> {
    if args.same_place && args.files.len() != 2 {
        return Err(Failure::Use(format!("--same-place: {} photographs given; accepted: two", args.files.len())));
    }
    if args.overlay.is_some() && args.files.len() != 1 {
        return Err(Failure::Use("--overlay: accepted with one photograph".to_owned()));
    }
    let looked: Vec<Looked> = args.files.iter().map(|file| look(file, &args.card)).collect::<Result<_, _>>()?;
    if let (Some(file), Some(one)) = (&args.overlay, looked.first()) {
        super::papers::write(file, &overlay(&one.picture, &one.evenness).map_err(Failure::data)?)?;
    }
    let verdict = if args.series {
        told_series(args, &looked, common, locale)?
    } else if args.same_place {
        told_two(&looked, common, locale)
    } else {
        told_each(&looked, common, locale)
    };
    Ok(if verdict == Verdict::Even { Answer::Yes } else { Answer::No })
}

fn look(file: &Path, args: &CardArgs) -> Result<Looked, Failure> {
    let (picture, taken) = read(file)?;
    let (card, found) = card_of(file, &picture, args)?;
    let scale = scale_of(args)?;
    let evenness = evenness(&picture, &EvennessLook { card, scale });
    Ok(Looked { file: file.to_owned(), picture, taken, evenness, found })
}

fn read(file: &Path) -> Result<(Decoded, Option<Taken>), Failure> {
    let bytes = std::fs::read(file).map_err(|e| Failure::file(file, &e))?;
    let wrong = |e| Failure::Data(format!("photo \"{}\": {e}", file.display()));
    let header = photo::inspect(&bytes).map_err(wrong)?;
    Ok((decode(&bytes).map_err(wrong)?, header.taken))
}

/// The card that was given, or the one that is seen for sure; a card half seen is asked for.
fn card_of(file: &Path, picture: &Decoded, args: &CardArgs) -> Result<(Option<Card>, Option<CardKind>), Failure> {
    let reflectance = match args.card_reflectance {
        Some(share) => Some(Reflectance::new(share).map_err(|e| Failure::Use(format!("--card-reflectance: {e}")))?),
        None => None,
    };
    if let Some(text) = &args.card {
        let rect = rect("--card", text, picture)?;
        return Ok((Some(Card { rect, reflectance: reflectance.unwrap_or(Reflectance::GRAY_CARD) }), None));
    }
    if args.no_card {
        return Ok((None, None));
    }
    match find_card(picture) {
        Ok(found) => {
            let reflectance = reflectance.unwrap_or(found.card.reflectance);
            Ok((Some(Card { reflectance, ..found.card }), Some(found.kind)))
        }
        Err(NoCard::Unsure { .. } | NoCard::Several { .. }) => {
            anstream::eprintln!(
                "photo \"{}\": something may be a card, but it is not sure; mark it with --card x,y,width,height, or say --no-card",
                file.display()
            );
            Ok((None, None))
        }
        Err(_) => Ok((None, None)),
    }
}

fn scale_of(args: &CardArgs) -> Result<Option<PixelScale>, Failure> {
    let scale = args.scale.map(PixelScale::millimeters).transpose();
    scale.map_err(|e| Failure::Use(format!("--scale: {e}")))
}

fn rect(option: &str, text: &str, picture: &Decoded) -> Result<Rect, Failure> {
    let numbers: Vec<u32> =
        text.split([',', ' ']).filter(|part| !part.is_empty()).map_while(|p| p.parse().ok()).collect();
    let refused = || {
        Failure::Use(format!(
            "{option} \"{text}\": accepted: x,y,width,height in whole pixels inside {} by {}",
            picture.width(),
            picture.height()
        ))
    };
    let [x, y, w, h] = numbers[..] else { return Err(refused()) };
    let rect = Rect { x, y, w, h };
    if rect.is_inside(picture) { Ok(rect) } else { Err(refused()) }
}

fn told_each(looked: &[Looked], common: &Common, locale: Locale) -> Verdict {
    let worst = looked.iter().map(|one| one.evenness.verdict).fold(Verdict::Even, worse);
    if common.json {
        match looked {
            [one] => answer_json(&one_json(one)),
            several => answer_json(&json!({ "photographs": several.iter().map(one_json).collect::<Vec<_>>() })),
        }
        return worst;
    }
    for one in looked {
        told_one(one, locale);
    }
    answer_line(&locale.message("photo-provisional", &[]));
    worst
}

fn worse(a: Verdict, b: Verdict) -> Verdict {
    let rank = |verdict| match verdict {
        Verdict::Even => 0,
        Verdict::CantTell => 1,
        Verdict::Patchy => 2,
    };
    if rank(b) > rank(a) { b } else { a }
}

fn told_one(one: &Looked, locale: Locale) {
    answer_line(&format!("{}: {}", one.file.display(), locale.photo_verdict(one.evenness.verdict.word())));
    if let Some(score) = one.evenness.score_de00 {
        answer_line(&format!("  {}", locale.message("photo-score", &[("score", locale.number(score, 1).into())])));
    }
    if let Some(kind) = one.found {
        let key = match kind {
            CardKind::Gray => "photo-found-gray-card",
            CardKind::Paper => "photo-found-white-paper",
        };
        answer_line(&format!("  {}", locale.message(key, &[])));
    }
    told_why(&one.evenness.why, locale);
    if one.evenness.asks_for_second() {
        answer_line(&format!("  > {}", locale.message("photo-second", &[])));
    }
}

fn told_why(why: &[Why], locale: Locale) {
    for reason in why {
        answer_line(&format!("  - {}", locale.photo_why(reason.key(), &reason.values())));
    }
}

fn told_two(looked: &[Looked], common: &Common, locale: Locale) -> Verdict {
    let agreement = two(&looked[0].evenness, &looked[1].evenness);
    if common.json {
        answer_json(&json!({
            "verdict": agreement.verdict.word(),
            "why": why_json(&agreement.why),
            "photographs": looked.iter().map(one_json).collect::<Vec<_>>(),
        }));
    } else {
        answer_line(&locale.photo_verdict(agreement.verdict.word()));
        told_why(&agreement.why, locale);
        for one in looked {
            told_one(one, locale);
        }
        answer_line(&locale.message("photo-provisional", &[]));
    }
    agreement.verdict
}

fn told_series(args: &EvennessArgs, looked: &[Looked], common: &Common, locale: Locale) -> Result<Verdict, Failure> {
    let days: Vec<(Timestamp, Evenness)> =
        looked.iter().map(|one| Ok((taken(one)?, one.evenness.clone()))).collect::<Result<_, Failure>>()?;
    let row = series(&days);
    if let Some(file) = &args.plot {
        let points = row.points.iter().map(|p| (p.at.to_zoned_datetime(TimeZone::UTC).date(), p.score_de00)).collect();
        let look = Look::new("score", &locale.message("photo-series-title", &[]), locale);
        let chart = ScoreChart { look, points, even_below: photo::EVEN_BELOW, patchy_from: photo::PATCHY_FROM };
        super::papers::write(file, score_chart(&chart).svg.as_bytes())?;
    }
    let last = row.points.last().map_or(Verdict::CantTell, |point| point.verdict);
    if common.json {
        let points = row.points.iter().map(|p| {
            json!({ "at": p.at.to_string(), "score_de00": p.score_de00.map(|s| rounded(s, 3)), "verdict": p.verdict.word() })
        });
        answer_json(&json!({
            "verdict": last.word(),
            "trend": row.trend.word(),
            "change_de00_per_day": row.change_per_day.map(|c| rounded(c, 4)),
            "points": points.collect::<Vec<_>>(),
            "photographs": looked.iter().map(one_json).collect::<Vec<_>>(),
        }));
        return Ok(last);
    }
    answer_line(&locale.photo_trend(row.trend.word()));
    for point in &row.points {
        let day = locale.date(point.at.to_zoned_datetime(TimeZone::UTC).date());
        let score = point.score_de00.map_or_else(|| "-".to_owned(), |s| locale.number(s, 1));
        answer_line(&format!("  {day}  {score}  {}", locale.photo_verdict(point.verdict.word())));
    }
    answer_line(&locale.message("photo-provisional", &[]));
    Ok(last)
}

/// When a photograph was taken, by the file itself.
fn taken(one: &Looked) -> Result<Timestamp, Failure> {
    let missing = || {
        Failure::Data(format!(
            "photo \"{}\": the file does not say when it was taken; accepted: a photograph as the camera wrote it",
            one.file.display()
        ))
    };
    let taken = one.taken.ok_or_else(missing)?;
    let local: DateTime = taken.local;
    let zone = taken.offset.map_or(TimeZone::UTC, TimeZone::fixed);
    local.to_zoned_datetime(zone).map(|at| at.timestamp()).map_err(|_| missing())
}

fn lab_json(lab: Lab) -> Value {
    json!([rounded(lab.lightness(), 3), rounded(lab.a(), 3), rounded(lab.b(), 3)])
}

fn why_json(why: &[Why]) -> Vec<Value> {
    why.iter()
        .map(|reason| {
            let values: serde_json::Map<String, Value> =
                reason.values().into_iter().map(|(name, value)| (name.to_owned(), rounded(value, 4))).collect();
            json!({ "code": reason.code(), "values": values })
        })
        .collect()
}

fn one_json(one: &Looked) -> Value {
    let seen = &one.evenness;
    json!({
        "file": one.file.display().to_string(),
        "verdict": seen.verdict.word(),
        "score_de00": seen.score_de00.map(|s| rounded(s, 3)),
        "class_de00": seen.class_de00.map(|s| rounded(s, 3)),
        "share": seen.share.map(|s| rounded(s, 4)),
        "base_lab": seen.base_lab.map(lab_json),
        "why": why_json(&seen.why),
        "clipped_pct": rounded(seen.clipped_share * 100.0, 2),
        "card_px": seen.card.map(|c| json!([c.x, c.y, c.w, c.h])),
        "card_found": one.found.map(|kind| match kind {
            CardKind::Gray => "gray_card",
            CardKind::Paper => "white_paper",
        }),
        "asks_for_second": seen.asks_for_second(),
        "provisional": true,
    })
}

fn run_color(args: &ColorArgs, common: &Common, locale: Locale) -> Result<Answer, Failure> {
    let (picture, _) = read(&args.file)?;
    let (card, _) = card_of(&args.file, &picture, &args.card)?;
    let area = match &args.area {
        Some(text) => rect("--area", text, &picture)?,
        None => Rect::of_panel(&picture, card.map(|card| card.rect), None),
    };
    let color = panel_color(&picture, card, area, scale_of(&args.card)?)
        .map_err(|e| Failure::Data(format!("photo \"{}\": {e}", args.file.display())))?;
    if common.json {
        let power = color.radial_power.iter().map(|band| {
            json!({
                "cycles_per_px": rounded(band.cycles_per_px, 6),
                "cycles_per_mm": band.cycles_per_mm.map(|c| rounded(c, 6)),
                "power_lab": band.power.map(|p| rounded(p, 6)),
            })
        });
        answer_json(&json!({
            "file": args.file.display().to_string(),
            "lab": lab_json(color.mean),
            "srgb": color.mean.srgb().as_bytes(),
            "covariance_lab": color.covariance.map(|row| row.map(|c| rounded(c, 5))),
            "mottling_de00": rounded(color.mottling_de00, 3),
            "radial_power": power.collect::<Vec<_>>(),
            "points": color.n,
            "area_px": [area.x, area.y, area.w, area.h],
        }));
        return Ok(Answer::Yes);
    }
    let [l, a, b] = [color.mean.lightness(), color.mean.a(), color.mean.b()].map(|n| locale.number(n, 1));
    let [red, green, blue] = color.mean.srgb().as_bytes();
    let said = [
        ("l", l.into()),
        ("a", a.into()),
        ("b", b.into()),
        ("hex", format!("#{red:02x}{green:02x}{blue:02x}").into()),
        ("mottling", locale.number(color.mottling_de00, 1).into()),
    ];
    answer_line(&locale.message("photo-color", &said));
    Ok(Answer::Yes)
}

fn answer_json(value: &Value) {
    crate::out::print(format_args!("{value:#}\n"));
}

fn answer_line(text: &str) {
    crate::out::print(format_args!("{text}\n"));
}
