//! The people who may sign in: adding, what they may do, new passwords, closing. For owners only.

use std::sync::Arc;

use askama::Template;
use axum::Router;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use jiff::tz::TimeZone;
use localization::Locale;
use store::{NewPerson, Person, PersonId, Role, StoreError};

use super::sign_in::{name_mistake, name_of, too_short, where_people_sign_in};
use crate::app::App;
use crate::context::{Answer, Posted, RequestContext, form, page};
use crate::control::Choice;
use crate::frame::{Frame, show};
use crate::page_error::PageError;
use crate::password::{MIN_LETTERS, is_fit};
use crate::visitor::Permission;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/people", page(Permission::Own, list).merge(form(Permission::Own, add)))
        .route("/people/{person}/role", form(Permission::Own, role))
        .route("/people/{person}/password", form(Permission::Own, password))
        .route("/people/{person}/close", form(Permission::Own, close))
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

fn role_said(role: Role, locale: Locale) -> String {
    match role {
        Role::Owner => locale.message("role-owner", &[]),
        Role::Crew => locale.message("role-crew", &[]),
        Role::Guest => locale.message("role-guest", &[]),
    }
}

fn role_may(role: Role, locale: Locale) -> String {
    match role {
        Role::Owner => locale.message("role-owner-may", &[]),
        Role::Crew => locale.message("role-crew-may", &[]),
        Role::Guest => locale.message("role-guest-may", &[]),
    }
}

/// The roles to choose from, each with what it may do where there is room for it.
fn roles(chosen: Role, locale: Locale, label: fn(Role, Locale) -> String) -> Vec<Choice> {
    let choice =
        |role: Role| Choice { value: role.name().to_owned(), label: label(role, locale), chosen: role == chosen };
    Role::ALL.into_iter().map(choice).collect()
}

fn row(context: &RequestContext, person: &Person) -> Row {
    let locale = context.locale();
    let day = |at: jiff::Timestamp| locale.date(at.to_zoned_datetime(TimeZone::UTC).date());
    Row {
        id: person.id.to_string(),
        name: person.name.clone(),
        role: role_said(person.role, locale),
        roles: roles(person.role, locale, role_said),
        since: day(person.made),
        closed: person.closed.map(day),
        me: context.visitor.person.as_ref().is_some_and(|me| me.id == person.id),
    }
}

fn shown(
    context: &RequestContext,
    typed: Option<&Posted>,
    made: Option<Made>,
    mistakes: Vec<(String, String)>,
) -> Answer {
    let locale = context.locale();
    let people = context.app.store().people()?;
    let chosen = typed.and_then(|posted| posted.typed.first("role")).and_then(|text| text.parse().ok());
    Ok(show(&People {
        frame: context.frame(locale.message("way-people", &[])),
        open: people.iter().filter(|person| person.closed.is_none()).count() as u64,
        rows: people.iter().map(|person| row(context, person)).collect(),
        roles: roles(chosen.unwrap_or(Role::Crew), locale, role_may),
        name: typed.map(name_of).unwrap_or_default(),
        least: MIN_LETTERS as u64,
        made,
        mistakes,
    }))
}

fn refused(page: Answer) -> Answer {
    page.map(|page: Response| (StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
}

fn list(context: &RequestContext) -> Answer {
    where_people_sign_in(context)?;
    shown(context, None, None, Vec::new())
}

/// The password that was typed for somebody else, or one made here.
fn first_password(context: &RequestContext, posted: &Posted) -> Result<String, PageError> {
    match posted.typed.first("password").filter(|typed| !typed.is_empty()) {
        None => Ok(context.app.starting_password()),
        Some(typed) if is_fit(typed) => Ok(typed.to_owned()),
        Some(_) => Err(PageError::mistake("password", too_short(context))),
    }
}

fn add(context: &RequestContext, posted: &Posted) -> Answer {
    where_people_sign_in(context)?;
    match added(context, posted) {
        Ok(made) => shown(context, None, Some(made), Vec::new()),
        Err(PageError::FieldErrors(mistakes)) => refused(shown(context, Some(posted), None, mistakes)),
        Err(trouble) => Err(trouble),
    }
}

fn added(context: &RequestContext, posted: &Posted) -> Result<Made, PageError> {
    let locale = context.locale();
    let role: Role = posted
        .typed
        .first("role")
        .and_then(|text| text.parse().ok())
        .ok_or_else(|| PageError::mistake("role", locale.message("mistake-role", &[])))?;
    let name = name_of(posted);
    if name.is_empty() {
        return Err(PageError::mistake("name", locale.message("mistake-person-name", &[])));
    }
    let password = first_password(context, posted)?;
    let phc = context.app.hash_password(&password)?;
    let id = PersonId::from_u128(context.app.fresh_id().as_u128());
    let (lang, unit_system) = (locale.lang.name(), locale.unit_system.name());
    let person = NewPerson { id, name: &name, password_phc: &phc, lang, unit_system };
    let person = context
        .app
        .store()
        .add_person(&person, role, context.app.real_now())
        .map_err(|error| name_mistake(context, error))?;
    Ok(Made { name: person.name, password })
}

/// The person that the path names.
fn named(context: &RequestContext) -> Result<Person, PageError> {
    where_people_sign_in(context)?;
    let id: PersonId = context.part("person").parse().map_err(|_| PageError::NotFound)?;
    context.app.store().person(id)?.ok_or(PageError::NotFound)
}

/// What became of a change, back on the list.
fn changed(context: &RequestContext, change: Result<(), StoreError>) -> Answer {
    let locale = context.locale();
    let mistake = |said: String| refused(shown(context, None, None, vec![("people".to_owned(), said)]));
    match change {
        Ok(()) => Ok(Redirect::to("/people?said=saved").into_response()),
        Err(StoreError::LastOwner { name }) => mistake(locale.message("mistake-last-owner", &[("name", name.into())])),
        Err(StoreError::PersonClosed { name, .. }) => {
            mistake(locale.message("mistake-person-closed", &[("name", name.into())]))
        }
        Err(other) => Err(other.into()),
    }
}

fn role(context: &RequestContext, posted: &Posted) -> Answer {
    let person = named(context)?;
    let role: Option<Role> = posted.typed.first("role").and_then(|text| text.parse().ok());
    match role {
        Some(role) => changed(context, context.app.store().set_role(person.id, role)),
        None => refused(shown(
            context,
            None,
            None,
            vec![("people".to_owned(), context.locale().message("mistake-role", &[]))],
        )),
    }
}

fn password(context: &RequestContext, _: &Posted) -> Answer {
    let person = named(context)?;
    let password = context.app.starting_password();
    let phc = context.app.hash_password(&password)?;
    match context.app.store().set_password(person.id, &phc) {
        Ok(()) => {
            context.app.store().end_sessions_of(person.id)?;
            shown(context, None, Some(Made { name: person.name, password }), Vec::new())
        }
        refused => changed(context, refused),
    }
}

fn close(context: &RequestContext, _: &Posted) -> Answer {
    let person = named(context)?;
    changed(context, context.app.store().close_person(person.id, context.app.real_now()).map(drop))
}
