//! From an empty folder to the first standing: open a slab, draw its plan, note the pour. On a phone,
//! in both languages, and with scripts forbidden.
//!
//! A machine taps faster than a person, so besides the clock on the wall the path is counted: taps and
//! letters, each at what a person takes for it by the keystroke-level model (Card, Moran and Newell,
//! "The keystroke-level model for user performance time with interactive systems", Communications of
//! the ACM 23(7), 1980: 1.35 s to make up one's mind, 1.1 s to point, 0.5 s for a letter when typing
//! random ones). Graded M: figures from memory of the paper, and it was made for desks.

use std::time::Duration;

use browser_tests::{CLOCK, Reading, Server, Site, Tab, Visit, stopwatch};

const MOST: Duration = Duration::from_secs(120);
const DECIDE_AND_POINT: f64 = 1.35 + 1.1;
const LETTER: f64 = 0.5;

fn typed(tab: &Tab, letters: &mut usize, selector: &str, text: &str) {
    *letters += text.chars().count();
    tab.fill(selector, text);
}

fn open_slab(tab: &Tab, server: &Server, letters: &mut usize) {
    tab.go(server, "/");
    tab.tap_to("a.button[href='/new']");
    typed(tab, letters, "[name='name']", "Peña 12");
    tab.tap_to(".send button");
}

fn draw_plan(tab: &Tab, letters: &mut usize) {
    tab.tap_to("a[href$='/plan/draw']");
    let rooms = [["taller", "40'", "30'"], ["oficina", "12' 6\"", "10'"]];
    for (row, [name, width, depth]) in rooms.into_iter().enumerate() {
        let nth = |input: &str| format!("#field-{input}\\[{row}\\]");
        if row > 0 && !tab.sees(&nth("room_width")) {
            tab.tap("[data-add-row]");
            tab.until_true("document.querySelectorAll('[name=\"room_width[]\"]').length > 1");
        }
        // Rows that the script adds have no number of their own.
        let each = |input: &str| format!("[data-test=\"{input}-{row}\"]");
        tab.eval(&format!(
            "for (const input of ['room_name', 'room_x', 'room_width', 'room_depth']) {{
               const all = [...document.querySelectorAll(`[name=\"${{input}}[]\"]`)];
               if (all[{row}]) all[{row}].dataset.test = `${{input}}-{row}`; }}"
        ));
        typed(tab, letters, &each("room_name"), name);
        if row > 0 {
            typed(tab, letters, &each("room_x"), "40'");
        }
        typed(tab, letters, &each("room_width"), width);
        typed(tab, letters, &each("room_depth"), depth);
    }
    tab.tap_to(".send button:not(.plain)");
}

fn note_pour(tab: &Tab, slab: &str, letters: &mut usize) {
    tab.tap_to(".bar a[href$='/add']");
    tab.tap_to(".kinds a[href$='/add/pour']");
    tab.choose("place_kind", "slab");
    typed(tab, letters, "[name='happened']", "2025-05-20 07:00");
    typed(tab, letters, "[name='thickness']", "4 in");
    tab.tap_to(".send button");
    assert_eq!(tab.path(), format!("/slab/{slab}"));
}

fn first_run(reading: Reading) {
    let site = Site::empty();
    let server = site.serve();
    let tab = Visit::within(120).tab(reading);
    tab.read_as(&server, reading);
    let mut letters = 0;
    let watch = stopwatch();
    open_slab(&tab, &server, &mut letters);
    let slab = site.slab();
    assert_eq!(tab.path(), format!("/slab/{slab}"));
    let before = tab.text("document.querySelector('.answer h1').innerText");
    draw_plan(&tab, &mut letters);
    assert_eq!(site.count("plan"), 1, "{}", tab.seen());
    tab.go(&server, &format!("/slab/{slab}"));
    note_pour(&tab, &slab, &mut letters);
    let took = watch();
    let answer = tab.text("document.querySelector('.answer h1').innerText");
    assert_ne!(answer, before, "the plan and the pour change the answer");
    // The same sentence as on the command line, behind the mark of its state.
    let told = site.run(&["--lang", reading.lang, "standing", "--at", CLOCK]).fine().out;
    let sentence = answer.split_once(' ').map_or(answer.as_str(), |(_, rest)| rest);
    assert!(told.replace('\n', " ").contains(sentence), "\"{sentence}\" is not in: {told}");
    let person = f64::from(tab.taps()) * DECIDE_AND_POINT + letters as f64 * LETTER;
    println!(
        "first run, {}{}: {} taps, {letters} letters, a person about {person:.0} s, this machine {:.1} s",
        reading.lang,
        if reading.script { "" } else { ", without script" },
        tab.taps(),
        took.as_secs_f64(),
    );
    assert!(took < MOST, "{took:?}");
    assert!(person < MOST.as_secs_f64(), "{person} s");
}

#[test]
fn in_english() {
    first_run(Reading::PHONE);
}

#[test]
fn in_spanish() {
    first_run(Reading::PHONE.spanish());
}

#[test]
fn without_script() {
    first_run(Reading::PHONE.without_script());
}

/// The demo slab is one tap away on an empty folder.
#[test]
fn the_demo_is_one_tap_away_and_can_be_put_away() {
    let site = Site::empty();
    let server = site.serve_at(browser_tests::free_port(), &[]);
    let tab = Visit::within(60).tab(Reading::PHONE);
    tab.go(&server, "/");
    tab.tap_to("form[action='/demo'] button");
    assert_eq!(tab.taps(), 1);
    assert!(tab.sees(".top .tag"), "it is marked as the demo");
    assert!(tab.sees(".strip"), "and says as of when it answers");
    tab.tap_to("form[action$='/put-away'] button");
    assert_eq!(tab.path(), "/");
    assert!(!tab.sees(".slabs a"), "{}", tab.seen());
}
