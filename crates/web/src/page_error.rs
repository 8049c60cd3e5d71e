//! What a page answers when it can't do what was asked: what was wrong, and what to do next.

use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use jiff::Timestamp;
use jiff::tz::TimeZone;
use serde_json::json;

use crate::fault;
use crate::frame::{Frame, trouble_page};
use crate::serving::now_serving;

/// A reason not to do what was asked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum PageError {
    /// There is nothing at this address, or nothing this visitor may know of.
    NotFound,
    /// The visitor must sign in first; the path to come back to.
    SignIn(String),
    /// There is no owner yet.
    SetUp,
    /// This visitor may not do this.
    Forbidden,
    /// Filled in by somebody else, who was signed in on the same phone before.
    OtherWriter,
    /// Sent from another site.
    ForeignOrigin,
    /// Addressed to another host.
    ForeignHost,
    /// Too many tries; seconds to wait.
    Wait(u64),
    /// What was sent cannot be taken: field and sentence, for each mistake.
    FieldErrors(Vec<(String, String)>),
    /// Larger than may be sent at once.
    TooLarge,
    /// Not in a form that is read here.
    WrongType,
    /// The link's time is over, since then.
    LinkOver(Timestamp),
    /// The link was withdrawn, then.
    LinkWithdrawn(Timestamp),
    /// Something of ours failed: what was being done. Never a path or what a library said, since anyone
    /// may read it.
    Failed(String),
}

impl From<store::StoreError> for PageError {
    fn from(error: store::StoreError) -> Self {
        use store::StoreError as E;
        Self::Failed(match fault::of_the_store(error) {
            E::Disk { doing, .. } | E::Database { doing, .. } | E::Busy { doing } => doing.to_owned(),
            E::EntryDamaged { entry, .. } => format!("entry {entry}"),
            E::NoPhotograph(hash) | E::PhotographDamaged { hash, .. } => format!("photograph {}", hash.as_str()),
            _ => "the store".to_owned(),
        })
    }
}

impl PageError {
    /// One mistake in one field.
    pub(crate) fn mistake(field: &str, said: impl Into<String>) -> Self {
        Self::FieldErrors(vec![(field.to_owned(), said.into())])
    }

    /// A failure of ours by an error that quotes nothing of what was sent. The log has its words, the page what
    /// was being done.
    pub(crate) fn failed(doing: &'static str, error: &dyn std::error::Error) -> Self {
        fault::tell(&format!("{doing}: {}", fault::chain(error)));
        Self::Failed(doing.to_owned())
    }

    /// A failure of ours by an error whose words may quote what was sent: neither log nor page has them.
    pub(crate) fn failed_without_words(doing: &'static str) -> Self {
        fault::tell(doing);
        Self::Failed(doing.to_owned())
    }

    /// Which kind of refusal it is, for the log.
    fn reason(&self) -> &'static str {
        match self {
            Self::NotFound => "not found",
            Self::SignIn(_) => "not signed in",
            Self::SetUp => "no owner yet",
            Self::Forbidden => "no right to it",
            Self::OtherWriter => "written by somebody else",
            Self::ForeignOrigin => "sent from another site",
            Self::ForeignHost => "addressed to another host",
            Self::Wait(_) => "too many tries",
            Self::FieldErrors(_) => "mistakes in fields",
            Self::TooLarge => "too large",
            Self::WrongType => "not a form that is read here",
            Self::LinkOver(_) => "the link is over",
            Self::LinkWithdrawn(_) => "the link was withdrawn",
            Self::Failed(_) => "a fault",
        }
    }

    pub(crate) fn status(&self) -> StatusCode {
        match self {
            Self::NotFound => StatusCode::NOT_FOUND,
            Self::SignIn(_) | Self::SetUp => StatusCode::UNAUTHORIZED,
            Self::Forbidden | Self::ForeignOrigin => StatusCode::FORBIDDEN,
            Self::OtherWriter => StatusCode::CONFLICT,
            Self::ForeignHost => StatusCode::MISDIRECTED_REQUEST,
            Self::Wait(_) => StatusCode::TOO_MANY_REQUESTS,
            Self::FieldErrors(_) => StatusCode::UNPROCESSABLE_ENTITY,
            Self::TooLarge => StatusCode::PAYLOAD_TOO_LARGE,
            Self::WrongType => StatusCode::UNSUPPORTED_MEDIA_TYPE,
            Self::LinkOver(_) | Self::LinkWithdrawn(_) => StatusCode::GONE,
            Self::Failed(_) => StatusCode::INTERNAL_SERVER_ERROR,
        }
    }

    /// Keys of the sentences that say what was wrong and what to do next.
    fn keys(&self) -> (&'static str, &'static str) {
        match self {
            Self::NotFound => ("trouble-not-found", "trouble-not-found-next"),
            Self::SignIn(_) | Self::SetUp => ("trouble-sign-in", "trouble-sign-in-next"),
            Self::Forbidden => ("trouble-forbidden", "trouble-forbidden-next"),
            Self::OtherWriter => ("trouble-other-writer", "trouble-other-writer-next"),
            Self::ForeignOrigin => ("trouble-foreign-origin", "trouble-foreign-origin-next"),
            Self::ForeignHost => ("trouble-foreign-host", "trouble-foreign-host-next"),
            Self::Wait(_) => ("trouble-wait", "trouble-wait-next"),
            Self::FieldErrors(_) => ("trouble-mistakes", "trouble-mistakes-next"),
            Self::TooLarge => ("trouble-too-large", "trouble-too-large-next"),
            Self::WrongType => ("trouble-wrong-type", "trouble-wrong-type-next"),
            Self::LinkOver(_) => ("trouble-link-over", "trouble-link-over-next"),
            Self::LinkWithdrawn(_) => ("trouble-link-withdrawn", "trouble-link-withdrawn-next"),
            Self::Failed(_) => ("trouble-failed", "trouble-failed-next"),
        }
    }

    /// The sentence in the reader's language.
    pub(crate) fn said(&self, locale: localization::Locale) -> String {
        let args = match self {
            Self::Wait(seconds) => {
                let time = locale.duration(units::Duration::seconds(*seconds as f64));
                vec![("time", time.into())]
            }
            Self::LinkOver(at) | Self::LinkWithdrawn(at) => {
                vec![("date", locale.date(at.to_zoned_datetime(TimeZone::UTC).date()).into())]
            }
            Self::Failed(what) => vec![("what", what.as_str().into())],
            _ => Vec::new(),
        };
        locale.message(self.keys().0, &args)
    }

    /// What to do next.
    pub(crate) fn next(&self, locale: localization::Locale) -> String {
        locale.message(self.keys().1, &[])
    }

    /// As an answer: JSON for the script, a page for a person.
    pub(crate) fn answer(self, frame: Frame, wants_json: bool) -> Response {
        if let Some(serving) = now_serving() {
            tracing::debug!(request_id = %serving.request, reason = self.reason(), "refused");
        }
        let locale = frame.locale;
        if wants_json {
            let mistakes: Vec<_> = match &self {
                Self::FieldErrors(all) => {
                    all.iter().map(|(field, message)| json!({ "field": field, "message": message })).collect()
                }
                _ => Vec::new(),
            };
            let said = json!({
                "ok": false,
                "message": format!("{} {}", self.said(locale), self.next(locale)),
                "mistakes": mistakes,
            });
            return (self.status(), axum::Json(said)).into_response();
        }
        match &self {
            Self::SignIn(back) => {
                let query = form_urlencoded::Serializer::new(String::new()).append_pair("next", back).finish();
                Redirect::to(&format!("/sign-in?{query}")).into_response()
            }
            Self::SetUp => Redirect::to("/set-up").into_response(),
            _ => (self.status(), trouble_page(frame, &self)).into_response(),
        }
    }
}
