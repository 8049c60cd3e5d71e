//! The pages: made on the server, phone first, in English and Spanish, each of use without script.
//!
//! A request passes `guard`, becomes an `Ask`, and a handler of one screen answers it. Every screen
//! is one file in `screens/` with its routes, its templates in `templates/`, and one line in
//! `screens/mod.rs`. Nothing here computes: pages ask `slab`, `sums`, `papers` and `pictures`, and the
//! store keeps everything that must last.
//!
//! To add a screen: a file in `screens/` with `routes()`, its line in `screens::SLAB_SCREENS` or
//! `screens::OTHER_SCREENS`, its words in `locales/*/pages.ftl`.

mod air_look;
mod air_said;
mod app;
mod ask;
mod assets;
mod charted;
mod control;
mod drawn;
mod entries;
mod figures;
mod forecast;
mod frame;
mod guard;
mod happened;
mod judged;
mod measured;
mod password;
mod screens;
mod server;
mod sight;
mod standing_page;
mod texts;
mod throttle;
mod told;
mod trouble;
mod uploads;
mod visitor;
mod work;

pub use app::{Access, App, Demo, Outside, Settings};
pub use server::{router, serve};
pub use standing_page::standing_page;
