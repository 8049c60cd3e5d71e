//! Every screen, in both languages, light and dark, on a phone and on a desk: axe-core has nothing to
//! say, everything to tap is large enough, nothing sticks out sideways, all text can be read outdoors.
//!
//! The screens are found by following every link, so a new one is looked at without being listed here.
//! A page is loaded once in each language; size and theme are changed on the loaded page, which is what
//! the style sheet sees of them. axe-core runs whole on the phone in light and on the desk in dark; the
//! contrast, the one thing that differs in the other two, is measured in all four.

use std::collections::BTreeMap;

use browser_tests::{Fault, Measured, Reading, Server, Site, Tab, Visit, axe_faults, crawl, measure, with_folds_open};

/// The fewest screens that there are: less means that the way to some is lost.
const AT_LEAST: usize = 85;

/// Half of the phone and half of the desk: what 200 % zoom leaves.
const ZOOMED: [(u32, u32); 2] = [(195, 422), (640, 450)];

/// What is wrong, with the screens on which it is.
#[derive(Debug, Default)]
struct Report(BTreeMap<String, Vec<String>>);

impl Report {
    fn add(&mut self, screen: &str, faults: impl IntoIterator<Item = String>) {
        for fault in faults {
            let screens = self.0.entry(fault).or_default();
            if screens.last().is_none_or(|last| last != screen) {
                screens.push(screen.to_owned());
            }
        }
    }

    fn add_axe(&mut self, screen: &str, faults: Vec<Fault>) {
        self.add(screen, faults.into_iter().map(|f| format!("axe {}: {}: {}", f.rule, f.selector, f.what)));
    }

    fn text(&self) -> String {
        let line = |(fault, screens): (&String, &Vec<String>)| {
            format!("{fault}\n    on {} screens: {}", screens.len(), screens[..screens.len().min(4)].join(", "))
        };
        self.0.iter().map(line).collect::<Vec<_>>().join("\n")
    }
}

/// What was found on all screens, and how much was looked at.
#[derive(Debug, Default)]
pub(crate) struct Looks {
    report: Report,
    screens: usize,
    targets: u64,
    texts: u64,
    least_contrast: Option<f64>,
}

impl Looks {
    fn contrast(&mut self, screen: &str, how: &str, found: &Measured) {
        self.report.add(screen, found.faint.iter().map(|line| format!("faint, {how}: {line}")));
        self.texts += found.texts;
        self.least_contrast = Some(self.least_contrast.map_or(found.worst, |least| least.min(found.worst)));
    }

    fn wide(&mut self, screen: &str, how: &str, found: &Measured) {
        self.report.add(screen, found.wide.iter().map(|line| format!("wide, {how}: {line}")));
    }

    /// Tells how much was looked at, and stops with everything that was found.
    #[track_caller]
    pub(crate) fn faultless(&self, reading: Reading) {
        println!(
            "{} screens in {}, {} things to tap, {} texts, least contrast {:.2}:1",
            self.screens,
            reading.lang,
            self.targets,
            self.texts,
            self.least_contrast.unwrap_or_default()
        );
        let faults = self.report.0.len();
        assert!(faults == 0, "{faults} faults in {}:\n{}", reading.lang, self.report.text());
    }
}

fn theme(tab: &Tab, theme: &str) {
    tab.eval(&format!("document.documentElement.dataset.theme = '{theme}'; 0"));
}

/// Looks at the page that is loaded, in every size and theme.
pub(crate) fn look(tab: &Tab, screen: &str, looks: &mut Looks) {
    looks.screens += 1;
    tab.set_size(Reading::PHONE.size);
    with_folds_open(tab);
    let phone = measure(tab);
    looks.targets += phone.targets;
    looks.report.add(screen, phone.small.iter().map(|line| format!("small: {line}")));
    looks.wide(screen, "phone", &phone);
    looks.contrast(screen, "light phone", &phone);
    looks.report.add_axe(screen, axe_faults(tab, &[]));
    theme(tab, "dark");
    looks.contrast(screen, "dark phone", &measure(tab));
    for size in ZOOMED {
        tab.set_size(size);
        looks.wide(screen, "200 %", &measure(tab));
    }
    tab.set_size(Reading::DESK.size);
    let desk = measure(tab);
    looks.wide(screen, "desk", &desk);
    looks.contrast(screen, "dark desk", &desk);
    looks.report.add_axe(screen, axe_faults(tab, &[]));
    theme(tab, "light");
    looks.contrast(screen, "light desk", &measure(tab));
    // Open, it would lie over what a test goes on with.
    tab.eval("document.querySelector('.menu').open = false");
}

/// The demo slab, an empty slab beside it, and pages that say what was wrong.
fn starts(site: &Site) -> Vec<String> {
    let listed: serde_json::Value = serde_json::from_str(&site.run(&["list", "--json"]).fine().out).unwrap();
    let slabs = listed.as_array().unwrap().iter().map(|slab| format!("/slab/{}", slab["id"].as_str().unwrap()));
    let rest = ["/", "/?away=1", "/?q=nothing+like+this", "/offline", "/no-such-page"].map(str::to_owned);
    slabs.chain(rest).collect()
}

fn with_demo() -> (Site, Server) {
    let site = Site::empty();
    let server = site.serve_at(browser_tests::free_port(), &[]);
    let tab = Visit::within(60).tab(Reading::PHONE);
    tab.go(&server, "/");
    tab.tap_to("form[action='/demo'] button");
    site.run(&["new", "Nothing noted yet", "--time-zone", "America/Chicago"]).fine();
    (site, server)
}

fn every_screen(reading: Reading) {
    let (site, server) = with_demo();
    let tab = Visit::within(400).tab(reading);
    tab.read_as(&server, reading);
    let mut looks = Looks::default();
    let pages = crawl(
        &tab,
        &server,
        &starts(&site),
        |_| false,
        |tab, screen| {
            look(tab, screen, &mut looks);
            tab.set_size(reading.size);
        },
    );
    assert!(pages.len() >= AT_LEAST, "only {}: {:?}", pages.len(), pages.keys());
    looks.faultless(reading);
}

#[test]
fn every_screen_in_english() {
    every_screen(Reading::PHONE);
}

#[test]
fn every_screen_in_spanish() {
    every_screen(Reading::PHONE.spanish());
}

#[test]
fn a_form_with_mistakes_is_as_good_as_one_without() {
    let site = Site::with_slab();
    let server = site.serve();
    let slab = site.slab();
    for (reading, told) in [(Reading::PHONE, "script"), (Reading::PHONE.spanish().without_script(), "server")] {
        let tab = Visit::within(60).tab(reading);
        tab.read_as(&server, reading);
        let mut looks = Looks::default();
        for kind in ["air_reading", "incident", "emission_dish"] {
            tab.go(&server, &format!("/slab/{slab}/add/{kind}"));
            match reading.script {
                true => {
                    tab.tap(".send button");
                    tab.until_true("document.querySelector('[data-mistakes]:not([hidden])') !== null");
                }
                false => tab.tap_to(".send button"),
            }
            // What is measured with is a script too.
            tab.forbid_scripts(false);
            look(&tab, &format!("{kind}, mistakes told by the {told}"), &mut looks);
            tab.set_size(reading.size);
            tab.forbid_scripts(!reading.script);
        }
        looks.faultless(reading);
    }
}
