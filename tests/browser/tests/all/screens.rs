//! Every screen, in both languages, light and dark, on a phone and on a desk: axe-core has nothing to
//! say, everything to tap is large enough, nothing sticks out sideways, all text can be read outdoors.
//!
//! The screens are found by following every link, so a new one is looked at without being listed here.
//! A page is loaded once in each language; size and theme are changed on the loaded page, which is what
//! the style sheet sees of them. axe-core runs whole on the phone in light and on the desk in dark; the
//! contrast, the one thing that differs in the other two, is measured in all four.

use std::collections::BTreeMap;

use browser_tests::{
    Fault, Measured, Reading, Server, Site, Tab, Visit, axe_faults, crawl, measure, with_folds_open,
};

/// The fewest screens that there are: less means that the way to some is lost.
const AT_LEAST: usize = 50;

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

/// What else is measured, to be told at the end.
#[derive(Debug)]
struct Sums {
    screens: usize,
    targets: u64,
    texts: u64,
    worst: f64,
}

fn theme(tab: &Tab, theme: &str) {
    tab.eval(&format!("document.documentElement.dataset.theme = '{theme}'; 0"));
}

fn contrast(report: &mut Report, sums: &mut Sums, screen: &str, how: &str, found: &Measured) {
    report.add(screen, found.faint.iter().map(|line| format!("faint, {how}: {line}")));
    sums.texts += found.texts;
    sums.worst = sums.worst.min(found.worst);
}

/// Looks at the page that is loaded, in every size and theme.
fn look(tab: &Tab, screen: &str, report: &mut Report, sums: &mut Sums) {
    sums.screens += 1;
    tab.set_size(Reading::PHONE.size);
    with_folds_open(tab);
    let phone = measure(tab);
    sums.targets += phone.targets;
    report.add(screen, phone.small.iter().map(|line| format!("small: {line}")));
    report.add(screen, phone.wide.iter().map(|line| format!("wide, phone: {line}")));
    contrast(report, sums, screen, "light phone", &phone);
    report.add_axe(screen, axe_faults(tab, &[]));
    theme(tab, "dark");
    contrast(report, sums, screen, "dark phone", &measure(tab));
    for size in ZOOMED {
        tab.set_size(size);
        report.add(screen, measure(tab).wide.iter().map(|line| format!("wide, 200 %: {line}")));
    }
    tab.set_size(Reading::DESK.size);
    let desk = measure(tab);
    report.add(screen, desk.wide.iter().map(|line| format!("wide, desk: {line}")));
    contrast(report, sums, screen, "dark desk", &desk);
    report.add_axe(screen, axe_faults(tab, &[]));
    theme(tab, "light");
    contrast(report, sums, screen, "light desk", &measure(tab));
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
    let (mut report, mut sums) = (Report::default(), Sums { screens: 0, targets: 0, texts: 0, worst: 21.0 });
    let pages = crawl(&tab, &server, &starts(&site), |_| false, |tab, screen| {
        look(tab, screen, &mut report, &mut sums);
        tab.set_size(reading.size);
    });
    assert!(pages.len() >= AT_LEAST, "only {}: {:?}", pages.len(), pages.keys());
    println!(
        "{} screens in {}, {} things to tap, {} texts, least contrast {:.2}:1",
        sums.screens, reading.lang, sums.targets, sums.texts, sums.worst
    );
    assert!(report.0.is_empty(), "{} faults in {}:\n{}", report.0.len(), reading.lang, report.text());
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
    let (mut report, mut sums) = (Report::default(), Sums { screens: 0, targets: 0, texts: 0, worst: 21.0 });
    for (reading, told) in [(Reading::PHONE, "script"), (Reading::PHONE.spanish().without_script(), "server")] {
        let tab = Visit::within(60).tab(reading);
        tab.read_as(&server, reading);
        for kind in ["air_reading", "incident", "emission_dish"] {
            tab.go(&server, &format!("/slab/{slab}/add/{kind}"));
            match reading.script {
                true => {
                    tab.tap(".send button");
                    tab.until_true("document.querySelector('[data-mistakes]:not([hidden])') !== null");
                }
                false => tab.tap_to(".send button"),
            }
            look(&tab, &format!("{kind}, mistakes told by the {told}"), &mut report, &mut sums);
            tab.set_size(reading.size);
        }
    }
    assert!(report.0.is_empty(), "{} faults:\n{}", report.0.len(), report.text());
}
