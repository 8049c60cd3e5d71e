//! Writes sample papers of an invented slab into a folder: `cargo run -p papers --example sample -- DIR`.

use std::error::Error;
use std::path::PathBuf;

use jiff::civil::date;
use papers::{
    Found, HourRisk, Lang, PageSize, Panels, PourSheet, PourWeather, PourZone, SiteNotice, WeatherBasis, pour_sheet,
    site_notice,
};
use units::{Area, EvaporationRate, Fraction, Length, Temperature};

fn main() -> Result<(), Box<dyn Error>> {
    let dir: PathBuf = std::env::args_os().nth(1).ok_or("accepted: one folder to write into")?.into();
    std::fs::create_dir_all(&dir)?;
    let (sheet, notice) = (sheet()?, notice());
    for size in PageSize::ALL {
        for lang in Lang::ALL {
            let name = format!("pour-sheet-{}-{}.pdf", lang.name(), size.word());
            std::fs::write(dir.join(name), pour_sheet(&sheet, lang, size)?)?;
        }
        std::fs::write(dir.join(format!("site-notice-{}.pdf", size.word())), site_notice(&notice, size)?)?;
    }
    println!("papers written to {}", dir.display());
    Ok(())
}

fn sheet() -> Result<PourSheet, Box<dyn Error>> {
    let zone = |name: &str, area: f64, finish: &str| PourZone {
        name: name.to_owned(),
        area: Area::square_feet(area),
        finish: finish.to_owned(),
    };
    let panels = |finish: &str, count| Panels {
        finish: finish.to_owned(),
        count,
        edge: Length::inches(18.0),
        thickness: Length::inches(2.0),
    };
    let above = [0, 0, 0, 1, 2, 4, 9, 14, 18, 21, 22, 19, 15, 9, 3, 1];
    let hours = (5_u8..=20)
        .zip(above)
        .map(|(hour, above)| HourRisk { hour, days: 30, above, possible: (30 - above).min(2 + above / 3) })
        .collect();
    Ok(PourSheet {
        job: "Juniper Flat house".to_owned(),
        slab: "Main floor and porch".to_owned(),
        prepared: date(2026, 5, 4),
        pour_day: Some(date(2026, 6, 2)),
        thickness: Length::inches(4.0),
        zones: vec![
            zone("Great room", 720.0, "light-steel-trowel"),
            zone("Bedrooms and hall", 560.0, "hard-steel-trowel"),
            zone("Porch", 240.0, "broom"),
        ],
        panels: vec![panels("light-steel-trowel", 3), panels("hard-steel-trowel", 2), panels("broom", 1)],
        waste: Fraction::share(0.07)?,
        weather: Some(PourWeather {
            place: "a high desert airport".to_owned(),
            month: 6,
            basis: WeatherBasis::TypicalYear,
            alarm: EvaporationRate::pounds_per_square_foot_hour(0.2),
            relative_error: Fraction::share(0.4)?,
            concrete: Temperature::fahrenheit(75.0),
            hours,
        }),
    })
}

fn notice() -> SiteNotice {
    let found = |kind: &str, place: &str| Found { kind: kind.to_owned(), place: place.to_owned() };
    SiteNotice {
        job: "Juniper Flat house".to_owned(),
        slab: "Main floor and porch".to_owned(),
        posted: date(2026, 6, 3),
        kinds: SiteNotice::usual(),
        found: vec![found("cutting-oil", "hall, by the tub wall"), found("red-chalk", "great room")],
        link: Some("https://slabs.example.org/s/4f2a".to_owned()),
    }
}
