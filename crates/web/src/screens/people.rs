//! The people who may sign in: adding, what they may do, new passwords, closing. For owners only.

use std::sync::Arc;

use askama::Template;
use axum::Router;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use jiff::tz::TimeZone;
use store::{NewPerson, Person, PersonId, Role, StoreError};
use words::Voice;

use super::sign_in::{name_mistake, name_of, too_short, where_people_sign_in};
use crate::app::App;
use crate::ask::{Answer, Ask, Posted, form, page};
use crate::control::Choice;
use crate::frame::{Frame, show};
use crate::password::{LEAST_LETTERS, is_fit};
use crate::trouble::Trouble;
use crate::visitor::May;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/people", page(May::Own, list).merge(form(May::Own, add)))
        .route("/people/{person}/role", form(May::Own, role))
        .route("/people/{person}/password", form(May::Own, password))
        .route("/people/{person}/close", form(May::Own, close))
}

struct Row {
    id: String,
    name: String,
    role: String,
    roles: Vec<Choice>,
    since: String,
    closed: Option<String>,
    me: bool,
}

/// A password that was just made, to be read to its person now.
struct Made {
    name: String,
    password: String,
}

#[derive(Template)]
#[template(path = "people.html")]
struct People {
    frame: Frame,
    open: u64,
    rows: Vec<Row>,
    roles: Vec<Choice>,
    name: String,
    least: u64,
    made: Option<Made>,
    mistakes: Vec<(String, String)>,
}

fn role_said(role: Role, voice: Voice) -> String {
    match role {
        Role::Owner => voice.say("role-owner", &[]),
        Role::Crew => voice.say("role-crew", &[]),
        Role::Guest => voice.say("role-guest", &[]),
    }
}

fn role_may(role: Role, voice: Voice) -> String {
    match role {
        Role::Owner => voice.say("role-owner-may", &[]),
        Role::Crew => voice.say("role-crew-may", &[]),
        Role::Guest => voice.say("role-guest-may", &[]),
    }
}

/// The roles to choose from, each with what it may do where there is room for it.
fn roles(chosen: Role, voice: Voice, label: fn(Role, Voice) -> String) -> Vec<Choice> {
    let choice =
        |role: Role| Choice { value: role.name().to_owned(), label: label(role, voice), chosen: role == chosen };
    Role::ALL.into_iter().map(choice).collect()
}

fn row(ask: &Ask, person: &Person) -> Row {
    let voice = ask.voice();
    let day = |at: jiff::Timestamp| voice.date(at.to_zoned_datetime(TimeZone::UTC).date());
    Row {
        id: person.id.to_string(),
        name: person.name.clone(),
        role: role_said(person.role, voice),
        roles: roles(person.role, voice, role_said),
        since: day(person.made),
        closed: person.closed.map(day),
        me: ask.visitor.person.as_ref().is_some_and(|me| me.id == person.id),
    }
}

fn shown(ask: &Ask, typed: Option<&Posted>, made: Option<Made>, mistakes: Vec<(String, String)>) -> Answer {
    let voice = ask.voice();
    let people = ask.app.store().people()?;
    let chosen = typed.and_then(|posted| posted.typed.first("role")).and_then(|text| text.parse().ok());
    Ok(show(&People {
        frame: ask.frame(voice.say("way-people", &[])),
        open: people.iter().filter(|person| person.closed.is_none()).count() as u64,
        rows: people.iter().map(|person| row(ask, person)).collect(),
        roles: roles(chosen.unwrap_or(Role::Crew), voice, role_may),
        name: typed.map(name_of).unwrap_or_default(),
        least: LEAST_LETTERS as u64,
        made,
        mistakes,
    }))
}

fn refused(page: Answer) -> Answer {
    page.map(|page: Response| (StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
}

fn list(ask: &Ask) -> Answer {
    where_people_sign_in(ask)?;
    shown(ask, None, None, Vec::new())
}

/// The password that was typed for somebody else, or one made here.
fn first_password(ask: &Ask, posted: &Posted) -> Result<String, Trouble> {
    match posted.typed.first("password").filter(|typed| !typed.is_empty()) {
        None => Ok(ask.app.starting_password()),
        Some(typed) if is_fit(typed) => Ok(typed.to_owned()),
        Some(_) => Err(Trouble::mistake("password", too_short(ask))),
    }
}

fn add(ask: &Ask, posted: &Posted) -> Answer {
    where_people_sign_in(ask)?;
    match added(ask, posted) {
        Ok(made) => shown(ask, None, Some(made), Vec::new()),
        Err(Trouble::Mistakes(mistakes)) => refused(shown(ask, Some(posted), None, mistakes)),
        Err(trouble) => Err(trouble),
    }
}

fn added(ask: &Ask, posted: &Posted) -> Result<Made, Trouble> {
    let voice = ask.voice();
    let role: Role = posted
        .typed
        .first("role")
        .and_then(|text| text.parse().ok())
        .ok_or_else(|| Trouble::mistake("role", voice.say("mistake-role", &[])))?;
    let name = name_of(posted);
    if name.is_empty() {
        return Err(Trouble::mistake("name", voice.say("mistake-person-name", &[])));
    }
    let password = first_password(ask, posted)?;
    let phc = ask.app.hash_password(&password)?;
    let id = PersonId::from_u128(ask.app.fresh_id().as_u128());
    let (lang, measure) = (voice.lang.name(), voice.measure.name());
    let person = NewPerson { id, name: &name, password_phc: &phc, lang, measure };
    let person =
        ask.app.store().add_person(&person, role, ask.app.real_now()).map_err(|error| name_mistake(ask, error))?;
    Ok(Made { name: person.name, password })
}

/// The person that the path names.
fn named(ask: &Ask) -> Result<Person, Trouble> {
    where_people_sign_in(ask)?;
    let id: PersonId = ask.part("person").parse().map_err(|_| Trouble::NotFound)?;
    ask.app.store().person(id)?.ok_or(Trouble::NotFound)
}

/// What became of a change, back on the list.
fn changed(ask: &Ask, change: Result<(), StoreError>) -> Answer {
    let voice = ask.voice();
    let mistake = |said: String| refused(shown(ask, None, None, vec![("people".to_owned(), said)]));
    match change {
        Ok(()) => Ok(Redirect::to("/people?said=saved").into_response()),
        Err(StoreError::LastOwner { name }) => mistake(voice.say("mistake-last-owner", &[("name", name.into())])),
        Err(StoreError::PersonClosed { name, .. }) => {
            mistake(voice.say("mistake-person-closed", &[("name", name.into())]))
        }
        Err(other) => Err(other.into()),
    }
}

fn role(ask: &Ask, posted: &Posted) -> Answer {
    let person = named(ask)?;
    let role: Option<Role> = posted.typed.first("role").and_then(|text| text.parse().ok());
    match role {
        Some(role) => changed(ask, ask.app.store().set_role(person.id, role)),
        None => refused(shown(ask, None, None, vec![("people".to_owned(), ask.voice().say("mistake-role", &[]))])),
    }
}

fn password(ask: &Ask, _: &Posted) -> Answer {
    let person = named(ask)?;
    let password = ask.app.starting_password();
    let phc = ask.app.hash_password(&password)?;
    match ask.app.store().set_password(person.id, &phc) {
        Ok(()) => {
            ask.app.store().end_sessions_of(person.id)?;
            shown(ask, None, Some(Made { name: person.name, password }), Vec::new())
        }
        refused => changed(ask, refused),
    }
}

fn close(ask: &Ask, _: &Posted) -> Answer {
    let person = named(ask)?;
    changed(ask, ask.app.store().close_person(person.id, ask.app.real_now()).map(drop))
}
