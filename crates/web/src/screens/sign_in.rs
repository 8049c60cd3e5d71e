//! Getting in and out: the first owner's set-up, signing in, signing out, one's own password.

use std::sync::Arc;

use askama::Template;
use axum::Router;
use axum::http::header::{HeaderName, HeaderValue, SET_COOKIE};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Redirect, Response};
use store::{NewPerson, Person, PersonId, StoreError, TokenHash};

use crate::app::{App, code_hash};
use crate::context::{Answer, Posted, RequestContext, form, page};
use crate::entries::is_ours;
use crate::frame::{Frame, show};
use crate::page_error::PageError;
use crate::password::{MAX_LETTERS, MIN_LETTERS, is_fit};
use crate::screens::reading;
use crate::visitor::{Permission, SESSION, cookie, session_cookie};

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/set-up", page(Permission::Nothing, set_up_blank).merge(form(Permission::Nothing, set_up)))
        .route("/sign-in", page(Permission::Nothing, sign_in_blank).merge(form(Permission::Nothing, sign_in)))
        .route("/sign-out", form(Permission::Nothing, sign_out))
        .route("/password", page(Permission::Read, password_blank).merge(form(Permission::Read, password)))
}

/// Longest name of a person, in letters. A longer one is nobody's, and not worth remembering.
const NAME_LETTERS: usize = 80;

type FieldErrors = Vec<(String, String)>;

/// Without accounts there is nothing to sign in to.
pub(super) fn where_people_sign_in(context: &RequestContext) -> Result<(), PageError> {
    if context.app.asks_for_people() { Ok(()) } else { Err(PageError::NotFound) }
}

/// A name as typed, without blanks around it.
pub(super) fn name_of(posted: &Posted) -> String {
    posted.typed.first("name").unwrap_or_default().trim().chars().take(NAME_LETTERS + 1).collect()
}

fn secret_of<'p>(posted: &'p Posted, field: &str) -> &'p str {
    posted.typed.first(field).unwrap_or_default()
}

/// A password typed twice, or what is wrong with it.
fn new_password<'p>(context: &RequestContext, posted: &'p Posted, mistakes: &mut FieldErrors) -> &'p str {
    let password = secret_of(posted, "password");
    if !is_fit(password) {
        mistakes.push(("password".to_owned(), too_short(context)));
    } else if password != secret_of(posted, "again") {
        mistakes.push(("again".to_owned(), context.locale().message("mistake-password-again", &[])));
    }
    password
}

/// What a password must be.
pub(super) fn too_short(context: &RequestContext) -> String {
    context.locale().message("mistake-password-short", &[("least", (MIN_LETTERS as u32).into())])
}

/// A refusal of the store as a mistake in the name, where it is one.
pub(super) fn name_mistake(context: &RequestContext, error: StoreError) -> PageError {
    match error {
        StoreError::PersonNameTaken { name } => {
            PageError::mistake("name", context.locale().message("mistake-person-taken", &[("name", name.into())]))
        }
        StoreError::Field { field: "person name", .. } => {
            PageError::mistake("name", context.locale().message("mistake-person-name", &[]))
        }
        other => PageError::from(other),
    }
}

/// Counts a try and lets it in, or says how long to wait.
fn admit(context: &RequestContext, name: &str) -> Result<(), PageError> {
    context.app.throttle.admit(name, context.from, context.app.real_now()).map_err(|left| {
        let seconds = left.as_secs() + i64::from(left.subsec_nanos() > 0);
        PageError::Wait(u64::try_from(seconds).unwrap_or(1).max(1))
    })
}

#[derive(Template)]
#[template(path = "set_up.html")]
struct SetUp {
    frame: Frame,
    code: String,
    name: String,
    least: u64,
    mistakes: FieldErrors,
}

fn set_up_page(context: &RequestContext, posted: Option<&Posted>, mistakes: FieldErrors) -> Response {
    let code = posted.and_then(|p| p.typed.first("code")).unwrap_or_default().to_owned();
    let name = posted.map(name_of).unwrap_or_default();
    let frame = context.frame(context.locale().message("set-up-title", &[]));
    show(&SetUp { frame, code, name, least: MIN_LETTERS as u64, mistakes })
}

/// Whether there is still no owner.
fn nobody_yet(context: &RequestContext) -> Result<bool, PageError> {
    where_people_sign_in(context)?;
    Ok(context.app.store().people()?.is_empty())
}

fn set_up_blank(context: &RequestContext) -> Answer {
    if !nobody_yet(context)? {
        return Ok(Redirect::to("/sign-in").into_response());
    }
    Ok(set_up_page(context, None, Vec::new()))
}

fn set_up(context: &RequestContext, posted: &Posted) -> Answer {
    if !nobody_yet(context)? {
        return Ok(Redirect::to("/sign-in").into_response());
    }
    // By address alone: a name here would let anybody keep the owner out.
    admit(context, &format!("set-up {}", context.from))?;
    let locale = context.locale();
    let mut mistakes = Vec::new();
    let password = new_password(context, posted, &mut mistakes);
    let name = name_of(posted);
    if name.is_empty() {
        mistakes.push(("name".to_owned(), locale.message("mistake-person-name", &[])));
    }
    let refused = |mistakes| {
        let page = set_up_page(context, Some(posted), mistakes);
        Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
    };
    if !mistakes.is_empty() {
        return refused(mistakes);
    }
    let phc = context.app.hash_password(password)?;
    let id = PersonId::from_u128(context.app.fresh_id().as_u128());
    let (lang, unit_system) = (locale.lang.name(), locale.unit_system.name());
    let person = NewPerson { id, name: &name, password_phc: &phc, lang, unit_system };
    let code = code_hash(secret_of(posted, "code"));
    match context.app.store().set_up_owner(code, context.app.real_now(), &person).map_err(|e| name_mistake(context, e))
    {
        Ok(true) => {}
        Ok(false) => return refused(vec![("code".to_owned(), locale.message("mistake-set-up-code", &[]))]),
        Err(PageError::FieldErrors(mistakes)) => return refused(mistakes),
        Err(trouble) => return Err(trouble),
    }
    let person = context.app.store().person(id)?.ok_or(PageError::NotFound)?;
    begin(context, &person, "/?said=signed-in")
}

#[derive(Template)]
#[template(path = "sign_in.html")]
struct SignIn {
    frame: Frame,
    name: String,
    next: String,
    mistakes: FieldErrors,
}

/// Where to go afterwards: only to a page of ours.
fn next_of(text: Option<&str>) -> String {
    text.filter(|path| is_ours(path)).unwrap_or("/").to_owned()
}

fn sign_in_page(context: &RequestContext, name: String, next: String, mistakes: FieldErrors) -> Response {
    show(&SignIn { frame: context.frame(context.locale().message("sign-in-title", &[])), name, next, mistakes })
}

fn sign_in_blank(context: &RequestContext) -> Answer {
    if nobody_yet(context)? {
        return Ok(Redirect::to("/set-up").into_response());
    }
    Ok(sign_in_page(context, String::new(), next_of(context.query.first("next")), Vec::new()))
}

fn sign_in(context: &RequestContext, posted: &Posted) -> Answer {
    where_people_sign_in(context)?;
    let name = name_of(posted);
    let next = next_of(posted.typed.first("next"));
    // Whoever signs in is not the one before, whether the password is right or not: on a shared phone that
    // one's session may have been left open.
    if let Some(old) = token_of(&context.headers, &context.app) {
        context.app.store().end_session(old)?;
    }
    admit(context, &name)?;
    let password = secret_of(posted, "password");
    let found = context.app.store().person_by_name(&name)?;
    let phc = found.as_ref().map(|found| found.password_phc.as_str());
    // Nobody could choose a longer one, and hashing it would cost.
    let password = if password.chars().count() > MAX_LETTERS { "" } else { password };
    let right = context.app.passwords.check(password, phc)?;
    match found.filter(|_| right) {
        Some(found) => {
            context.app.throttle.forgive(&name, context.from);
            begin(context, &found.person, &next)
        }
        None => {
            let wrong = vec![("name".to_owned(), context.locale().message("mistake-sign-in", &[]))];
            let page = sign_in_page(context, name, next, wrong);
            Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
        }
    }
}

/// The session that the request's cookie opens, if it opens one.
fn token_of(headers: &HeaderMap, app: &App) -> Option<TokenHash> {
    cookie(headers, session_cookie(app)).map(|token| TokenHash::of(token.as_bytes()))
}

/// Begins a session under a token that nobody has seen before: one that was planted never becomes good.
fn begin(context: &RequestContext, person: &Person, next: &str) -> Answer {
    let (store, now) = (context.app.store(), context.app.real_now());
    if let Some(old) = token_of(&context.headers, &context.app) {
        store.end_session(old)?;
    }
    store.drop_expired_sessions(now)?;
    let token = context.app.secret();
    store.start_session(TokenHash::of(token.as_bytes()), person.id, now, now + SESSION)?;
    let mut response = Redirect::to(next).into_response();
    set_cookie(&mut response, &context.app, &token, SESSION.as_secs());
    for (name, value) in [("lang", &person.lang), ("measure", &person.unit_system)] {
        reading::keep(&mut response, &context.app, name, value);
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

fn sign_out(context: &RequestContext, _: &Posted) -> Answer {
    where_people_sign_in(context)?;
    if let Some(token) = token_of(&context.headers, &context.app) {
        context.app.store().end_session(token)?;
    }
    let mut response = match context.wants_json() {
        true => axum::Json(serde_json::json!({ "ok": true })).into_response(),
        false => Redirect::to("/sign-in").into_response(),
    };
    set_cookie(&mut response, &context.app, "", 0);
    let clear = HeaderName::from_static("clear-site-data");
    response.headers_mut().insert(clear, HeaderValue::from_static("\"cache\""));
    Ok(response)
}

#[derive(Template)]
#[template(path = "password.html")]
struct Password {
    frame: Frame,
    least: u64,
    mistakes: FieldErrors,
}

fn password_page(context: &RequestContext, mistakes: FieldErrors) -> Response {
    let frame = context.frame(context.locale().message("password-title", &[]));
    show(&Password { frame, least: MIN_LETTERS as u64, mistakes })
}

fn password_blank(context: &RequestContext) -> Answer {
    where_people_sign_in(context)?;
    Ok(password_page(context, Vec::new()))
}

fn password(context: &RequestContext, posted: &Posted) -> Answer {
    where_people_sign_in(context)?;
    let person = context.visitor.person.clone().ok_or(PageError::Forbidden)?;
    let mut mistakes = Vec::new();
    let fresh = new_password(context, posted, &mut mistakes);
    if mistakes.is_empty() {
        // A phone left lying about must not give the account away by guessing.
        admit(context, &person.name)?;
        let known = context.app.store().person_by_name(&person.name)?;
        let phc = known.as_ref().map(|known| known.password_phc.as_str());
        if !context.app.passwords.check(secret_of(posted, "now"), phc)? {
            mistakes.push(("now".to_owned(), context.locale().message("mistake-password-now", &[])));
        }
    }
    if !mistakes.is_empty() {
        let page = password_page(context, mistakes);
        return Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response());
    }
    context.app.throttle.forgive(&person.name, context.from);
    context.app.store().set_password(person.id, &context.app.hash_password(fresh)?)?;
    // Whoever else is in with the old one is out.
    context.app.store().end_sessions_of(person.id)?;
    begin(context, &person, "/password?said=saved")
}
