//! Getting in and out: the first owner's set-up, signing in, signing out, one's own password.

use std::sync::Arc;

use askama::Template;
use axum::Router;
use axum::http::header::{HeaderName, HeaderValue, SET_COOKIE};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Redirect, Response};
use store::{NewPerson, Person, PersonId, StoreError, TokenHash};

use crate::app::{App, code_hash};
use crate::ask::{Answer, Ask, Posted, form, page};
use crate::entries::is_ours;
use crate::frame::{Frame, show};
use crate::password::{LEAST_LETTERS, MOST_LETTERS, is_fit};
use crate::screens::reading;
use crate::trouble::Trouble;
use crate::visitor::{May, SESSION, cookie, session_cookie};

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/set-up", page(May::Nothing, set_up_blank).merge(form(May::Nothing, set_up)))
        .route("/sign-in", page(May::Nothing, sign_in_blank).merge(form(May::Nothing, sign_in)))
        .route("/sign-out", form(May::Nothing, sign_out))
        .route("/password", page(May::Read, password_blank).merge(form(May::Read, password)))
}

/// Longest name of a person, in letters. A longer one is nobody's, and not worth remembering.
const NAME_LETTERS: usize = 80;

type Mistakes = Vec<(String, String)>;

/// Without accounts there is nothing to sign in to.
pub(super) fn where_people_sign_in(ask: &Ask) -> Result<(), Trouble> {
    if ask.app.asks_for_people() { Ok(()) } else { Err(Trouble::NotFound) }
}

/// A name as typed, without blanks around it.
pub(super) fn name_of(posted: &Posted) -> String {
    posted.typed.first("name").unwrap_or_default().trim().chars().take(NAME_LETTERS + 1).collect()
}

fn secret_of<'p>(posted: &'p Posted, field: &str) -> &'p str {
    posted.typed.first(field).unwrap_or_default()
}

/// A password typed twice, or what is wrong with it.
fn new_password<'p>(ask: &Ask, posted: &'p Posted, mistakes: &mut Mistakes) -> &'p str {
    let password = secret_of(posted, "password");
    if !is_fit(password) {
        mistakes.push(("password".to_owned(), too_short(ask)));
    } else if password != secret_of(posted, "again") {
        mistakes.push(("again".to_owned(), ask.voice().say("mistake-password-again", &[])));
    }
    password
}

/// What a password must be.
pub(super) fn too_short(ask: &Ask) -> String {
    ask.voice().say("mistake-password-short", &[("least", (LEAST_LETTERS as u32).into())])
}

/// A refusal of the store as a mistake in the name, where it is one.
pub(super) fn name_mistake(ask: &Ask, error: StoreError) -> Trouble {
    match error {
        StoreError::PersonNameTaken { name } => {
            Trouble::mistake("name", ask.voice().say("mistake-person-taken", &[("name", name.into())]))
        }
        StoreError::Field { field: "person name", .. } => {
            Trouble::mistake("name", ask.voice().say("mistake-person-name", &[]))
        }
        other => Trouble::from(other),
    }
}

/// Counts a try and lets it in, or says how long to wait.
fn admit(ask: &Ask, name: &str) -> Result<(), Trouble> {
    ask.app.throttle.admit(name, ask.from, ask.app.real_now()).map_err(|left| {
        let seconds = left.as_secs() + i64::from(left.subsec_nanos() > 0);
        Trouble::Wait(u64::try_from(seconds).unwrap_or(1).max(1))
    })
}

#[derive(Template)]
#[template(path = "set_up.html")]
struct SetUp {
    frame: Frame,
    code: String,
    name: String,
    least: u64,
    mistakes: Mistakes,
}

fn set_up_page(ask: &Ask, posted: Option<&Posted>, mistakes: Mistakes) -> Response {
    let code = posted.and_then(|p| p.typed.first("code")).unwrap_or_default().to_owned();
    let name = posted.map(name_of).unwrap_or_default();
    let frame = ask.frame(ask.voice().say("set-up-title", &[]));
    show(&SetUp { frame, code, name, least: LEAST_LETTERS as u64, mistakes })
}

/// Whether there is still no owner.
fn nobody_yet(ask: &Ask) -> Result<bool, Trouble> {
    where_people_sign_in(ask)?;
    Ok(ask.app.store().people()?.is_empty())
}

fn set_up_blank(ask: &Ask) -> Answer {
    if !nobody_yet(ask)? {
        return Ok(Redirect::to("/sign-in").into_response());
    }
    Ok(set_up_page(ask, None, Vec::new()))
}

fn set_up(ask: &Ask, posted: &Posted) -> Answer {
    if !nobody_yet(ask)? {
        return Ok(Redirect::to("/sign-in").into_response());
    }
    // By address alone: a name here would let anybody keep the owner out.
    admit(ask, &format!("set-up {}", ask.from))?;
    let voice = ask.voice();
    let mut mistakes = Vec::new();
    let password = new_password(ask, posted, &mut mistakes);
    let name = name_of(posted);
    if name.is_empty() {
        mistakes.push(("name".to_owned(), voice.say("mistake-person-name", &[])));
    }
    let refused = |mistakes| {
        let page = set_up_page(ask, Some(posted), mistakes);
        Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
    };
    if !mistakes.is_empty() {
        return refused(mistakes);
    }
    let phc = ask.app.hash_password(password)?;
    let id = PersonId::from_u128(ask.app.fresh_id().as_u128());
    let (lang, measure) = (voice.lang.name(), voice.measure.name());
    let person = NewPerson { id, name: &name, password_phc: &phc, lang, measure };
    let code = code_hash(secret_of(posted, "code"));
    match ask.app.store().set_up_owner(code, ask.app.real_now(), &person).map_err(|e| name_mistake(ask, e)) {
        Ok(true) => {}
        Ok(false) => return refused(vec![("code".to_owned(), voice.say("mistake-set-up-code", &[]))]),
        Err(Trouble::Mistakes(mistakes)) => return refused(mistakes),
        Err(trouble) => return Err(trouble),
    }
    let person = ask.app.store().person(id)?.ok_or(Trouble::NotFound)?;
    begin(ask, &person, "/?said=signed-in")
}

#[derive(Template)]
#[template(path = "sign_in.html")]
struct SignIn {
    frame: Frame,
    name: String,
    next: String,
    mistakes: Mistakes,
}

/// Where to go afterwards: only to a page of ours.
fn next_of(text: Option<&str>) -> String {
    text.filter(|path| is_ours(path)).unwrap_or("/").to_owned()
}

fn sign_in_page(ask: &Ask, name: String, next: String, mistakes: Mistakes) -> Response {
    show(&SignIn { frame: ask.frame(ask.voice().say("sign-in-title", &[])), name, next, mistakes })
}

fn sign_in_blank(ask: &Ask) -> Answer {
    if nobody_yet(ask)? {
        return Ok(Redirect::to("/set-up").into_response());
    }
    Ok(sign_in_page(ask, String::new(), next_of(ask.query.first("next")), Vec::new()))
}

fn sign_in(ask: &Ask, posted: &Posted) -> Answer {
    where_people_sign_in(ask)?;
    let name = name_of(posted);
    let next = next_of(posted.typed.first("next"));
    admit(ask, &name)?;
    let password = secret_of(posted, "password");
    let found = ask.app.store().person_by_name(&name)?;
    let phc = found.as_ref().map(|found| found.password_phc.as_str());
    // Nobody could choose a longer one, and hashing it would cost.
    let password = if password.chars().count() > MOST_LETTERS { "" } else { password };
    let right = ask.app.passwords.check(password, phc)?;
    match found.filter(|_| right) {
        Some(found) => {
            ask.app.throttle.forgive(&name, ask.from);
            begin(ask, &found.person, &next)
        }
        None => {
            let wrong = vec![("name".to_owned(), ask.voice().say("mistake-sign-in", &[]))];
            let page = sign_in_page(ask, name, next, wrong);
            Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
        }
    }
}

/// The session that the request's cookie opens, if it opens one.
fn token_of(headers: &HeaderMap, app: &App) -> Option<TokenHash> {
    cookie(headers, session_cookie(app)).map(|token| TokenHash::of(token.as_bytes()))
}

/// Begins a session under a token that nobody has seen before: one that was planted never becomes good.
fn begin(ask: &Ask, person: &Person, next: &str) -> Answer {
    let (store, now) = (ask.app.store(), ask.app.real_now());
    if let Some(old) = token_of(&ask.headers, &ask.app) {
        store.end_session(old)?;
    }
    store.drop_expired_sessions(now)?;
    let token = ask.app.secret();
    store.start_session(TokenHash::of(token.as_bytes()), person.id, now, now + SESSION)?;
    let mut response = Redirect::to(next).into_response();
    set_cookie(&mut response, &ask.app, &token, SESSION.as_secs());
    for (name, value) in [("lang", &person.lang), ("measure", &person.measure)] {
        reading::keep(&mut response, &ask.app, name, value);
    }
    Ok(response)
}

fn set_cookie(response: &mut Response, app: &App, token: &str, seconds: i64) {
    let secure = if app.is_encrypted() { "; Secure" } else { "" };
    let name = session_cookie(app);
    let cookie = format!("{name}={token}; Path=/; Max-Age={seconds}; HttpOnly; SameSite=Lax{secure}");
    if let Ok(value) = HeaderValue::from_str(&cookie) {
        response.headers_mut().append(SET_COOKIE, value);
    }
}

fn sign_out(ask: &Ask, _: &Posted) -> Answer {
    where_people_sign_in(ask)?;
    if let Some(token) = token_of(&ask.headers, &ask.app) {
        ask.app.store().end_session(token)?;
    }
    let mut response = Redirect::to("/sign-in").into_response();
    set_cookie(&mut response, &ask.app, "", 0);
    let clear = HeaderName::from_static("clear-site-data");
    response.headers_mut().insert(clear, HeaderValue::from_static("\"cache\""));
    Ok(response)
}

#[derive(Template)]
#[template(path = "password.html")]
struct Password {
    frame: Frame,
    least: u64,
    mistakes: Mistakes,
}

fn password_page(ask: &Ask, mistakes: Mistakes) -> Response {
    let frame = ask.frame(ask.voice().say("password-title", &[]));
    show(&Password { frame, least: LEAST_LETTERS as u64, mistakes })
}

fn password_blank(ask: &Ask) -> Answer {
    where_people_sign_in(ask)?;
    Ok(password_page(ask, Vec::new()))
}

fn password(ask: &Ask, posted: &Posted) -> Answer {
    where_people_sign_in(ask)?;
    let person = ask.visitor.person.clone().ok_or(Trouble::Forbidden)?;
    let mut mistakes = Vec::new();
    let fresh = new_password(ask, posted, &mut mistakes);
    if mistakes.is_empty() {
        // A phone left lying about must not give the account away by guessing.
        admit(ask, &person.name)?;
        let known = ask.app.store().person_by_name(&person.name)?;
        let phc = known.as_ref().map(|known| known.password_phc.as_str());
        if !ask.app.passwords.check(secret_of(posted, "now"), phc)? {
            mistakes.push(("now".to_owned(), ask.voice().say("mistake-password-now", &[])));
        }
    }
    if !mistakes.is_empty() {
        let page = password_page(ask, mistakes);
        return Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response());
    }
    ask.app.throttle.forgive(&person.name, ask.from);
    ask.app.store().set_password(person.id, &ask.app.hash_password(fresh)?)?;
    // Whoever else is in with the old one is out.
    ask.app.store().end_sessions_of(person.id)?;
    begin(ask, &person, "/password?said=saved")
}
