//! Photographs and colors here and in Python, timed in one run and printed as one table, with the
//! difference of the values and the most memory that a photograph takes.
//!
//! `cargo bench -p benches --bench against_color`, with the Python environment that `./check` makes in
//! `.tools/venv`, or another one named by `UNDERFOOT_PYTHON`. What was measured last, and what that
//! does not prove, is in `docs/speed.md`.

use std::error::Error;
use std::fs;
use std::path::Path;
use std::process::{Command, ExitCode};

use benches::python::{Python, number};
use benches::times;
use image::codecs::jpeg::JpegEncoder;
use image::{ImageFormat, RgbImage};
use photo::{Evenness, EvennessLook, decode, evenness};
use science::color::bulk::{Bulk, ciede2000_to};
use science::color::{Lab, Srgb, ciede2000};

type Outcome<T> = Result<T, Box<dyn Error>>;

/// As many as a 12-megapixel picture has.
const COLORS: usize = 12_000_000;
/// The one color of the differences, as in `python/colors.py`.
const BASE: [f64; 3] = [58.0, 2.0, 7.0];
const RUNS: usize = 9;
/// What the program is started with to look at one photograph and say how much memory it took.
const MEMORY: &str = "--memory-of";

/// A line of the table, in milliseconds.
fn line(what: &str, ours: f64, theirs: Option<f64>, asked: &str) {
    let python = theirs.map_or_else(|| "-".to_owned(), |theirs| format!("{:.0} ms", 1e3 * theirs));
    let ratio = theirs.map_or_else(|| "-".to_owned(), |theirs| format!("{:.1}", theirs / ours));
    println!("| {what} | {:.0} ms | {python} | {ratio} | {asked} |", 1e3 * ours);
}

/// Scattered bits that depend on the place alone (splitmix64).
fn scattered(place: u64) -> u64 {
    let z = place.wrapping_add(0x9e37_79b9_7f4a_7c15);
    let z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    let z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    z ^ (z >> 31)
}

/// A drawn slab: warm gray, lit from the left, with grain and two damp rounds.
fn slab(width: u32, height: u32) -> RgbImage {
    let (w, h) = (f64::from(width), f64::from(height));
    RgbImage::from_fn(width, height, |x, y| {
        let grain = (scattered(u64::from(x / 4) << 32 | u64::from(y / 4)) % 11) as f64
            + (scattered(1 << 63 | u64::from(x) << 32 | u64::from(y)) % 17) as f64;
        let (x, y) = (f64::from(x) / w, f64::from(y) / h);
        let round = |cx: f64, cy: f64, r: f64| ((((x - cx).hypot(y - cy)) - r) * 400.0).clamp(-1.0, 1.0);
        let damp = 0.5 - 0.5 * round(0.3, 0.4, 0.13).min(round(0.7, 0.65, 0.17));
        let light = 138.0 - 10.0 * x + grain;
        image::Rgb([1.03, 1.0, 0.95].map(|part: f64| (light * part - damp * (26.0 + 20.0 * (1.0 - part))) as u8))
    })
}

/// The segment that says "turn by a quarter", EXIF 0x0112 = 6.
const TURNED: &[u8] = b"\xff\xe1\x00\x22Exif\0\0MM\0*\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0\x06\0\0\0\0\0\0";

/// Writes the photographs and gives their names and sides.
fn photographs(folder: &Path) -> Outcome<Vec<(&'static str, u32, u32)>> {
    let mut names = Vec::new();
    for (width, height, jpeg) in [(4000, 3000, "12 MP.jpg"), (8000, 6000, "48 MP.jpg")] {
        let image = slab(width, height);
        let mut bytes = Vec::new();
        JpegEncoder::new_with_quality(&mut bytes, 90).encode_image(&image)?;
        fs::write(folder.join(jpeg), &bytes)?;
        names.push((jpeg, width, height));
        // A PNG of 48 megapixels is over the 40 MB that are accepted.
        if width == 4000 {
            image.save_with_format(folder.join("12 MP.png"), ImageFormat::Png)?;
            names.push(("12 MP.png", width, height));
        } else {
            bytes.splice(2..2, TURNED.iter().copied());
            fs::write(folder.join("48 MP turned.jpg"), &bytes)?;
            names.push(("48 MP turned.jpg", width, height));
        }
    }
    Ok(names)
}

fn judged(path: &Path) -> Outcome<Evenness> {
    Ok(evenness(&decode(&fs::read(path)?)?, &EvennessLook::default()))
}

/// 12 megapixels from the file to the verdict.
fn verdicts(python: &Python, folder: &Path) -> Outcome<Vec<String>> {
    let paths = ["12 MP.jpg", "12 MP.png"].map(|name| folder.join(name));
    let said = python.run("evenness.py", &paths.each_ref().map(|path| path.as_path()))?;
    let mut notes = Vec::new();
    for (path, theirs) in paths.iter().zip(said["pictures"].as_array().ok_or("a list of pictures")?) {
        let kind = path.extension().and_then(|end| end.to_str()).unwrap_or_default().to_uppercase();
        let (whole, _) = times(RUNS, || judged(path).is_ok());
        let (decoding, _) = times(RUNS, || fs::read(path).is_ok_and(|bytes| decode(&bytes).is_ok()));
        let picture = decode(&fs::read(path)?)?;
        let (judging, _) = times(RUNS, || evenness(&picture, &EvennessLook::default()));
        let (decode_theirs, judge_theirs) = (number(theirs, "decode")?, number(theirs, "judge")?);
        let megabytes = fs::metadata(path)?.len() as f64 / 1e6;
        let what = format!("12 megapixels, {kind} of {megabytes:.1} MB, from the file to the verdict");
        line(&what, whole.as_secs_f64(), Some(decode_theirs + judge_theirs), "under 250 ms");
        line("- of it decoding", decoding.as_secs_f64(), Some(decode_theirs), "-");
        line("- of it judging", judging.as_secs_f64(), Some(judge_theirs), "-");
        let ours = judged(path)?;
        notes.push(format!(
            "{kind}: ours {}, score {:.3}, share {:.3}; the core in Python {}, score {:.3}, share {:.3}",
            ours.verdict.word(),
            ours.score_de00.unwrap_or(f64::NAN),
            ours.share.unwrap_or(f64::NAN),
            theirs["word"],
            number(theirs, "score")?,
            number(theirs, "share")?,
        ));
    }
    Ok(notes)
}

fn floats(path: &Path) -> Outcome<Vec<f32>> {
    Ok(fs::read(path)?.as_chunks::<4>().0.iter().map(|four| f32::from_le_bytes(*four)).collect())
}

/// The largest distance between numbers, where `counts`.
fn apart(ours: &[f32], theirs: &[f32], counts: impl Fn(usize) -> bool) -> f32 {
    let pairs = ours.iter().zip(theirs).enumerate().filter(|(at, _)| counts(*at));
    pairs.map(|(_, (ours, theirs))| (ours - theirs).abs()).fold(0.0, f32::max)
}

/// Twelve million different colors to CIELAB, and their differences to one.
fn colors(python: &Python, folder: &Path) -> Outcome<Vec<String>> {
    // An odd step through all 2²⁴ colors meets none twice.
    let pixels: Vec<u8> = (0..COLORS as u32)
        .flat_map(|i| {
            let [r, g, b, _] = (i.wrapping_mul(10_368_889) & 0x00ff_ffff).to_le_bytes();
            [r, g, b]
        })
        .collect();
    let base = Lab::new(BASE[0], BASE[1], BASE[2])?;
    let bulk = Bulk::new();
    let (mut lab, mut difference) = (vec![0.0_f32; 3 * COLORS], vec![0.0_f32; COLORS]);
    let (to_lab, _) = times(RUNS, || bulk.lab_of_bytes(&pixels, &mut lab));
    let (to_one, _) = times(RUNS, || ciede2000_to(&lab, base, &mut difference));
    fs::write(folder.join("rgb.u8"), &pixels)?;
    fs::write(folder.join("lab.f32"), lab.iter().flat_map(|value| value.to_le_bytes()).collect::<Vec<u8>>())?;
    let said = python.run("colors.py", &[folder])?;
    let seconds = |name: &str| number(&said, name).map(Some);
    line("12 million colors, sRGB bytes to CIELAB / scikit-image", to_lab.as_secs_f64(), seconds("lab_skimage")?, "20");
    line("12 million CIEDE2000 to one / colour-science", to_one.as_secs_f64(), seconds("de_color")?, "20");
    line("12 million CIEDE2000 to one / scikit-image", to_one.as_secs_f64(), seconds("de_skimage")?, "-");

    let opposite = |at: usize| {
        let hue = |a: f64, b: f64| b.atan2(a).to_degrees();
        let turn = hue(lab[3 * at + 1].into(), lab[3 * at + 2].into()) - hue(BASE[1], BASE[2]);
        (turn.abs() - 180.0).abs() < 1.0
    };
    let one = |at: usize| [lab[3 * at], lab[3 * at + 1], lab[3 * at + 2]];
    let every = (0..COLORS).step_by(7);
    let exact = |at: usize| Srgb::bytes([pixels[3 * at], pixels[3 * at + 1], pixels[3 * at + 2]]).lab();
    let off = |at: usize| {
        let exact = exact(at);
        let exact = [exact.lightness(), exact.a(), exact.b()];
        one(at).iter().zip(exact).map(|(fast, exact)| (f64::from(*fast) - exact).abs()).fold(0.0, f64::max)
    };
    let to_exact = |at: usize| {
        let [l, a, b] = one(at).map(f64::from);
        let exact = Lab::new(l.max(0.0), a, b).map_or(f64::NAN, |lab| ciede2000(lab, base).as_units());
        (f64::from(difference[at]) - exact).abs()
    };
    Ok(vec![
        format!(
            "CIELAB, every 7th: at most {:.1e} from our exact function",
            every.clone().map(off).fold(0.0, f64::max)
        ),
        format!(
            "CIELAB, all: at most {:.4} from scikit-image {} (its matrix and white have 6 digits, ours come from the \
             primaries)",
            apart(&lab, &floats(&folder.join("lab_skimage.f32"))?, |_| true),
            said["skimage"],
        ),
        format!(
            "CIEDE2000, every 7th, hues within 1° of opposite left out: at most {:.1e} from our exact function",
            every.filter(|at| !opposite(*at)).map(to_exact).fold(0.0, f64::max)
        ),
        format!(
            "CIEDE2000, all but those: at most {:.1e} from colour-science {}, {:.1e} from scikit-image",
            apart(&difference, &floats(&folder.join("de_color.f32"))?, |at| !opposite(at)),
            said["color"],
            apart(&difference, &floats(&folder.join("de_skimage.f32"))?, |at| !opposite(at)),
        ),
    ])
}

/// The most memory this process ever held, in bytes (`VmHWM` of Linux).
fn most_memory() -> Outcome<u64> {
    let status = fs::read_to_string("/proc/self/status")?;
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:")).ok_or("no VmHWM")?;
    Ok(1024 * line.trim().trim_end_matches(" kB").parse::<u64>()?)
}

/// Each photograph in a process of its own.
fn memory(folder: &Path, photographs: &[(&str, u32, u32)]) -> Outcome<()> {
    println!(
        "| one process, one photograph | most memory | the file | beyond picture and file, bytes a pixel | asked |"
    );
    println!("|---|--:|--:|--:|--:|");
    for (name, width, height) in photographs {
        let path = folder.join(name);
        let said = Command::new(std::env::current_exe()?).arg(MEMORY).arg(&path).output()?;
        if !said.status.success() {
            return Err(format!("{name}: {}", String::from_utf8_lossy(&said.stderr)).into());
        }
        let most: u64 = String::from_utf8(said.stdout)?.trim().parse()?;
        let (pixels, file) = (u64::from(*width) * u64::from(*height), fs::metadata(&path)?.len());
        let megabytes = |bytes: u64| bytes as f64 / 1e6;
        println!(
            "| {name} | {:.0} MB | {:.0} MB | {:.2} | about 2 |",
            megabytes(most),
            megabytes(file),
            (most as f64 - 3.0 * pixels as f64 - file as f64) / pixels as f64
        );
    }
    Ok(())
}

fn run() -> Outcome<()> {
    let arguments: Vec<String> = std::env::args().collect();
    if let Some(at) = arguments.iter().position(|argument| argument == MEMORY) {
        judged(Path::new(arguments.get(at + 1).ok_or("a photograph")?))?;
        println!("{}", most_memory()?);
        return Ok(());
    }
    let python = Python::find()?;
    let folder = tempfile::tempdir()?;
    let photographs = photographs(folder.path())?;
    println!("{} cores", std::thread::available_parallelism()?);
    println!("| work, best of several | ours | Python | Python ÷ ours | asked |\n|---|--:|--:|--:|--:|");
    let mut notes = verdicts(&python, folder.path())?;
    notes.extend(colors(&python, folder.path())?);
    println!();
    notes.iter().for_each(|note| println!("- {note}"));
    println!();
    memory(folder.path(), &photographs)
}

fn main() -> ExitCode {
    match run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(reason) => {
            eprintln!("{reason}");
            ExitCode::FAILURE
        }
    }
}
