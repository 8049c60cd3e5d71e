//! The pages: made on the server, phone first, in English and Spanish, each of use without script.
//!
//! A request passes `guard`, becomes an `RequestContext`, and a handler of one screen answers it. Every screen
//! is one file in `screens/` with its routes, its templates in `templates/`, and one line in
//! `screens/mod.rs`. Nothing here computes: pages ask `slab`, `sums`, `papers` and `pictures`, and the
//! store keeps everything that must last.
//!
//! What happens is told as `tracing` events (`request_log`, `fault`; `docs/logging.md`). Whether and where they are
//! kept is the program's business: nothing here installs a subscriber or a panic hook.
//!
//! To add a screen: a file in `screens/` with `routes()`, its line in `screens::SLAB_SCREENS` or
//! `screens::OTHER_SCREENS`, its words in `locales/*/pages.ftl`.

mod air_import;
mod air_text;
mod app;
mod assets;
mod chart_section;
mod context;
mod control;
mod entries;
mod entry_text;
mod fault;
mod figures;
mod forecast;
mod frame;
mod guard;
mod icons;
mod jobs;
mod page_error;
mod password;
mod request_log;
mod screens;
mod server;
mod serving;
mod small_plan;
mod standing_cache;
mod standing_page;
mod texts;
mod throttle;
mod time_line_rows;
mod uploads;
mod view_scope;
mod visitor;

pub use app::{Access, App, Demo, Outside, Settings};
pub use fault::tell_panic;
pub use server::{router, serve};
pub use standing_page::standing_page;
