//! How a person reads: language, units, light or dark. Kept by the browser, and with the account where
//! there is one.

use std::sync::Arc;

use axum::Router;
use axum::http::header::{HeaderValue, SET_COOKIE};
use axum::response::{IntoResponse, Redirect, Response};
use localization::{Lang, UnitSystem};

use crate::app::App;
use crate::context::{Answer, Posted, RequestContext, form};
use crate::entries::is_ours;
use crate::visitor::{Permission, Theme};

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new().route("/reading", form(Permission::Nothing, set))
}

/// Changes what was sent and leaves the rest as it is.
fn set(context: &RequestContext, posted: &Posted) -> Answer {
    let sent = |name: &str| posted.typed.first(name).map(str::to_owned);
    let mut chosen = Vec::new();
    if let Some(lang) = sent("lang").and_then(|text| text.parse::<Lang>().ok()) {
        chosen.push(("lang", lang.name()));
    }
    if let Some(unit_system) = sent("measure").and_then(|text| text.parse::<UnitSystem>().ok()) {
        chosen.push(("measure", unit_system.name()));
    }
    if let Some(theme) = sent("theme").and_then(|name| Theme::named(&name)) {
        chosen.push(("theme", theme.name()));
    }
    if let Some(person) = &context.visitor.person {
        let now = |name: &str, known: &str| {
            chosen.iter().find(|(n, _)| *n == name).map_or_else(|| known.to_owned(), |(_, v)| (*v).to_owned())
        };
        let (lang, unit_system) =
            (now("lang", context.locale().lang.name()), now("measure", context.locale().unit_system.name()));
        context.app.store().set_reading(person.id, &lang, &unit_system)?;
    }
    let back = sent("back").filter(|path| is_ours(path)).unwrap_or_else(|| "/".to_owned());
    let mut response = Redirect::to(&back).into_response();
    for (name, value) in chosen {
        keep(&mut response, &context.app, name, value);
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
