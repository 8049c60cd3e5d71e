//! How a person reads: language, units, light or dark. Kept by the browser, and with the account where
//! there is one.

use std::sync::Arc;

use axum::Router;
use axum::http::header::{HeaderValue, SET_COOKIE};
use axum::response::{IntoResponse, Redirect, Response};
use words::{Lang, Measure};

use crate::app::App;
use crate::ask::{Answer, Ask, Posted, form};
use crate::entries::is_ours;
use crate::visitor::May;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new().route("/reading", form(May::Nothing, set))
}

/// Changes what was sent and leaves the rest as it is.
fn set(ask: &Ask, posted: &Posted) -> Answer {
    let sent = |name: &str| posted.typed.first(name).map(str::to_owned);
    let mut chosen = Vec::new();
    if let Some(lang) = sent("lang").and_then(|text| text.parse::<Lang>().ok()) {
        chosen.push(("lang", lang.name()));
    }
    if let Some(measure) = sent("measure").and_then(|text| text.parse::<Measure>().ok()) {
        chosen.push(("measure", measure.name()));
    }
    match sent("theme").as_deref() {
        Some("dark") => chosen.push(("theme", "dark")),
        Some("light") => chosen.push(("theme", "light")),
        _ => {}
    }
    if let Some(person) = &ask.visitor.person {
        let now = |name: &str, known: &str| {
            chosen.iter().find(|(n, _)| *n == name).map_or_else(|| known.to_owned(), |(_, v)| (*v).to_owned())
        };
        let (lang, measure) = (now("lang", ask.voice().lang.name()), now("measure", ask.voice().measure.name()));
        ask.app.store().set_reading(person.id, &lang, &measure)?;
    }
    let back = sent("back").filter(|path| is_ours(path)).unwrap_or_else(|| "/".to_owned());
    let mut response = Redirect::to(&back).into_response();
    for (name, value) in chosen {
        keep(&mut response, &ask.app, name, value);
    }
    Ok(response)
}

/// Lets the browser keep how its person reads.
pub(super) fn keep(response: &mut Response, app: &App, name: &str, value: &str) {
    let secure = if app.is_encrypted() { "; Secure" } else { "" };
    let cookie = format!("{name}={value}; Path=/; Max-Age=31536000; SameSite=Lax; HttpOnly{secure}");
    if let Ok(value) = HeaderValue::from_str(&cookie) {
        response.headers_mut().append(SET_COOKIE, value);
    }
}
