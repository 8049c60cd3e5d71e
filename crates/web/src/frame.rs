//! What stands around every page: its head, the ways to other pages, the words the script needs.

use std::sync::{Arc, LazyLock};

use askama::Template;
use axum::http::HeaderMap;
use axum::response::{Html, IntoResponse, Response};
use jiff::Timestamp;
use jiff::tz::TimeZone;
use localization::{Arg, FILES, Lang, Locale};
use store::SlabRecord;

use crate::app::{Access, App};
use crate::assets;
use crate::context::RequestContext;
use crate::entry_text;
use crate::fault;
use crate::icons;
use crate::page_error::PageError;
use crate::screens;
use crate::visitor::{Permission, Theme, Visitor};

/// The slab a page is about.
#[derive(Debug, Clone)]
pub(crate) struct Head {
    pub(crate) id: String,
    pub(crate) name: String,
    pub(crate) demo: bool,
    /// What the addresses of its pages begin with.
    pub(crate) base: String,
}

/// A way to another page.
#[derive(Debug, Clone)]
pub(crate) struct NavLink {
    pub(crate) href: String,
    pub(crate) label: String,
    pub(crate) here: bool,
}

/// Everything around the middle of a page.
#[derive(Debug, Clone)]
pub(crate) struct Frame {
    pub(crate) locale: Locale,
    pub(crate) theme: Theme,
    pub(crate) title: String,
    pub(crate) slab: Option<Head>,
    /// The few ways at the foot of a phone.
    pub(crate) bar: Vec<NavLink>,
    /// All other ways of this slab, or of the link that shows it.
    pub(crate) more: Vec<NavLink>,
    /// The ways that every page has.
    pub(crate) everywhere: Vec<NavLink>,
    /// The moment that the page speaks of, for its print.
    pub(crate) as_of: Option<String>,
    pub(crate) made: String,
    /// The moment at which the clock of the page stands, if it does.
    pub(crate) stands_at: Option<String>,
    /// The same for a person.
    pub(crate) stands_said: Option<String>,
    pub(crate) encrypted: bool,
    /// What a phone keeps for reading offline, as JSON.
    pub(crate) keep: String,
    /// Changes when the kept forms of the slab do.
    pub(crate) version: i64,
    pub(crate) visitor: String,
    /// See [`Visitor::writer`]; none on a page for whoever holds the phone.
    pub(crate) writer: Option<String>,
    pub(crate) permission: Permission,
    pub(crate) people: bool,
    /// One quiet sentence about what was just done.
    pub(crate) said: Option<String>,
    /// Where what was just done is taken back.
    pub(crate) undo: Option<String>,
    pub(crate) here: String,
    pub(crate) script_words: &'static [(String, String)],
    /// No ways and no script: what a person with a link sees.
    pub(crate) plain: bool,
}

/// What an address may ask a page to say was just done, by the word after `said-`.
const SAID: [&str; 12] = [
    "said-written",
    "said-corrected",
    "said-taken-back",
    "said-opened",
    "said-put-away",
    "said-brought-back",
    "said-signed-in",
    "said-saved",
    "said-plan-written",
    "said-link-made",
    "said-link-withdrawn",
    "said-approved",
];

impl NavLink {
    /// The symbol that stands beside its words.
    pub(crate) fn icon(&self) -> &'static str {
        icons::of_way(&self.href)
    }
}

impl Frame {
    pub(crate) fn new(context: &RequestContext, title: String) -> Self {
        let mut frame = Self::of(&context.app, &context.visitor, title).at(&context.here);
        frame.said = context.query.first("said").and_then(|done| {
            let key = SAID.into_iter().find(|key| key.strip_prefix("said-") == Some(done))?;
            Some(frame.locale.message(key, &[]))
        });
        frame
    }

    /// Makes it the frame of a page for whoever holds the phone.
    pub(crate) fn for_anybody(mut self, app: &App) -> Self {
        self.visitor = String::new();
        self.writer = None;
        self.keep = "[]".to_owned();
        self.more = screens::everywhere(self.locale, Permission::Nothing, app.asks_for_people());
        self
    }

    /// The frame at an address. Below a link everybody is a stranger, the owner too, and so is what
    /// they see when it fails.
    pub(crate) fn at(mut self, here: &str) -> Self {
        here.clone_into(&mut self.here);
        if screens::is_link(here) {
            self.plain = true;
            self.permission = Permission::Nothing;
            self.visitor = String::new();
            self.writer = None;
            self.everywhere = Vec::new();
        }
        self
    }

    /// For an answer that no handler made.
    pub(crate) fn bare(app: &Arc<App>, headers: &HeaderMap) -> Self {
        let nobody = Visitor {
            permission: Permission::Nothing,
            name: String::new(),
            person: None,
            locale: Visitor::voice_of(headers),
            theme: Theme::default(),
        };
        Self { writer: None, ..Self::of(app, &nobody, String::new()) }
    }

    fn of(app: &App, visitor: &Visitor, title: String) -> Self {
        let locale = visitor.locale;
        let stands_at = app.settings.stands_at;
        Self {
            locale,
            theme: visitor.theme,
            title,
            slab: None,
            bar: Vec::new(),
            more: Vec::new(),
            everywhere: screens::everywhere(locale, visitor.permission, app.asks_for_people()),
            as_of: None,
            made: app.real_now().to_string(),
            stands_at: stands_at.map(|at| at.to_string()),
            stands_said: None,
            encrypted: app.is_encrypted() || app.settings.access == Access::ThisMachine,
            keep: screens::keep(locale, visitor.permission),
            version: 0,
            visitor: visitor.name.clone(),
            writer: Some(visitor.writer()),
            permission: visitor.permission,
            people: app.asks_for_people(),
            said: None,
            undo: None,
            here: "/".to_owned(),
            script_words: script_words(locale.lang),
            plain: false,
        }
    }

    /// Makes it the frame of a page about a slab. `zone` is the slab's.
    pub(crate) fn about(mut self, context: &RequestContext, record: &SlabRecord, zone: &TimeZone) -> Self {
        let id = record.id.to_string();
        self.bar = screens::bar(self.locale, &id, &context.here, self.permission);
        self.more = screens::more(self.locale, &id, &context.here, self.permission);
        self.keep = screens::keep_slab(self.locale, &id, self.permission);
        self.version = record.version;
        self.say_entry(context, record);
        let base = format!("/slab/{id}");
        self.headed(context, record, zone, id, base)
    }

    /// Says what was just written and where, and offers to take it back.
    fn say_entry(&mut self, context: &RequestContext, record: &SlabRecord) {
        let id = context.query.first("entry").and_then(|text| text.parse().ok());
        let Some(entry) = id.and_then(|id| context.app.store().entry(record.id, id).ok().flatten()) else { return };
        let done = context.query.first("said");
        match done {
            Some("written") => self.said = Some(entry_text::written(&entry, self.locale)),
            Some("corrected") => self.said = Some(entry_text::corrected(&entry, self.locale)),
            _ => {}
        }
        // A correction is corrected again; taking it back would strike out what it corrects as well.
        if matches!(done, Some("written" | "plan-written")) && self.writes() {
            self.undo = Some(format!("/slab/{}/undo/{}", record.id, entry.id));
        }
    }

    /// Makes it the frame of a page that a link shows, with the ways to the link's other pages.
    pub(crate) fn by_link(
        mut self,
        context: &RequestContext,
        record: &SlabRecord,
        zone: &TimeZone,
        base: String,
        ways: Vec<NavLink>,
    ) -> Self {
        self.more = ways;
        // Which slab it is by its id is nobody's business here.
        self.headed(context, record, zone, String::new(), base)
    }

    fn headed(
        mut self,
        context: &RequestContext,
        record: &SlabRecord,
        zone: &TimeZone,
        id: String,
        base: String,
    ) -> Self {
        let demo = context.app.is_demo(record.id);
        let asked = context.app.asked_at(record.id);
        if demo || context.app.settings.stands_at.is_some() {
            let local = asked.to_zoned_datetime(zone.clone());
            self.stands_at = Some(asked.display_with_offset(local.offset()).to_string());
            self.stands_said = Some(self.moment(asked, zone));
        }
        self.as_of = Some(self.moment(asked, zone));
        self.slab = Some(Head { id, name: record.name.clone(), demo, base });
        self
    }

    /// The writer as a form sends it along.
    pub(crate) fn writer(&self) -> &str {
        self.writer.as_deref().unwrap_or_default()
    }

    /// A sentence without holes.
    pub(crate) fn message(&self, key: &'static str) -> String {
        self.locale.message(key, &[])
    }

    /// A sentence with one hole.
    pub(crate) fn say1(&self, key: &'static str, name: &str, value: &str) -> String {
        self.locale.message(key, &[(name, value.into())])
    }

    /// A sentence about a number of things.
    pub(crate) fn count(&self, key: &'static str, count: &u64) -> String {
        self.locale.message(key, &[("count", Arg::Number(*count as f64))])
    }

    /// A moment in the slab's own clock.
    pub(crate) fn moment(&self, at: Timestamp, zone: &TimeZone) -> String {
        self.locale.moment(at, zone)
    }

    pub(crate) fn lang(&self) -> &'static str {
        self.locale.lang.tag()
    }

    pub(crate) fn is_spanish(&self) -> bool {
        self.locale.lang == Lang::Es
    }

    pub(crate) fn is_metric(&self) -> bool {
        self.locale.unit_system == localization::UnitSystem::Metric
    }

    /// The themes that are not in use, with what the button for each says.
    pub(crate) fn other_themes(&self) -> Vec<(&'static str, String)> {
        let named = |theme: Theme| match theme {
            Theme::Device => self.message("to-device"),
            Theme::Light => self.message("to-light"),
            Theme::Dark => self.message("to-dark"),
        };
        Theme::ALL.into_iter().filter(|theme| *theme != self.theme).map(|theme| (theme.name(), named(theme))).collect()
    }

    pub(crate) fn writes(&self) -> bool {
        self.permission >= Permission::Write
    }

    pub(crate) fn asset(&self, name: &str) -> String {
        assets::address(name)
    }
}

/// Renders a page.
pub(crate) fn show(page: &impl Template) -> Response {
    match page.render() {
        Ok(html) => Html(html).into_response(),
        // A template joins texts; only a bug can fail it, and then a bare line is better than nothing.
        Err(error) => {
            fault::tell(&format!("drawing a page: {}", fault::chain(&error)));
            (axum::http::StatusCode::INTERNAL_SERVER_ERROR, error.to_string()).into_response()
        }
    }
}

#[derive(Template)]
#[template(path = "trouble.html")]
struct TroublePage {
    frame: Frame,
    said: String,
    next: String,
    mistakes: Vec<String>,
}

/// The page that says what was wrong.
pub(crate) fn trouble_page(mut frame: Frame, trouble: &PageError) -> Response {
    frame.title = frame.message("trouble-title");
    let mistakes = match trouble {
        PageError::FieldErrors(all) => all.iter().map(|(_, said)| said.clone()).collect(),
        _ => Vec::new(),
    };
    let next = match trouble {
        PageError::NotFound if frame.plain => frame.message("trouble-link-not-found-next"),
        _ => trouble.next(frame.locale),
    };
    show(&TroublePage { said: trouble.said(frame.locale), next, mistakes, frame })
}

/// The words of the script in one language: key and text, with `{name}` for what the script fills in.
fn script_words(lang: Lang) -> &'static [(String, String)] {
    static ENGLISH: LazyLock<Vec<(String, String)>> = LazyLock::new(|| read_script_words(Lang::En));
    static SPANISH: LazyLock<Vec<(String, String)>> = LazyLock::new(|| read_script_words(Lang::Es));
    match lang {
        Lang::En => &ENGLISH,
        Lang::Es => &SPANISH,
    }
}

fn read_script_words(lang: Lang) -> Vec<(String, String)> {
    let locale = Locale::new(lang, localization::UnitSystem::Imperial);
    let text =
        FILES.iter().filter(|(l, name, _)| *l == lang && name.ends_with("/script.ftl")).map(|(_, _, text)| *text);
    text.flat_map(str::lines)
        .filter_map(|line| {
            let (key, said) = line.split_once(" = ").filter(|(key, _)| key.starts_with("script-"))?;
            let holes: Vec<String> =
                said.split("{ $").skip(1).filter_map(|rest| rest.split([' ', '}']).next()).map(str::to_owned).collect();
            let args: Vec<(&str, Arg<'_>)> =
                holes.iter().map(|name| (name.as_str(), format!("{{{name}}}").into())).collect();
            Some((key.to_owned(), locale.message(key, &args)))
        })
        .collect()
}
