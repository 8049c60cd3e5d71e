//! From a request to a handler and back.
//!
//! A handler is a plain function from what was asked to an answer. It may read the disk, so it runs on
//! a thread where that holds nobody up.

use std::net::{IpAddr, Ipv4Addr, SocketAddr};
use std::sync::Arc;

use axum::body::Bytes;
use axum::extract::{ConnectInfo, FromRequest, FromRequestParts, Multipart, RawPathParams, Request, State};
use axum::http::header::{ACCEPT, CONTENT_TYPE};
use axum::http::request::Parts;
use axum::http::{HeaderMap, HeaderName, HeaderValue, Uri};
use axum::response::Response;
use axum::routing::{MethodRouter, get, post};
use form_schema::FormData;
use jiff::Timestamp;
use slab_diary::SlabId;
use store::SlabRecord;

use crate::app::App;
use crate::frame::Frame;
use crate::page_error::PageError;
use crate::serving::on_a_thread;
use crate::visitor::{Permission, Visitor};

/// Most files taken at once.
const MAX_FILES: usize = 12;
/// Most bytes of one form, its photographs included.
pub(crate) const MAX_BYTES: usize = 120 * 1024 * 1024;
/// Most bytes of a form without files, and of one text in any form.
const MAX_TEXT: usize = 2 * 1024 * 1024;

/// What is asked, and by whom.
#[derive(Debug, Clone)]
pub(crate) struct RequestContext {
    pub(crate) app: Arc<App>,
    pub(crate) visitor: Visitor,
    pub(crate) headers: HeaderMap,
    pub(crate) from: IpAddr,
    path: Vec<(String, String)>,
    pub(crate) query: FormData,
    /// Path and query, to come back to.
    pub(crate) here: String,
}

/// A file that came with a form.
#[derive(Debug)]
pub(crate) struct Upload {
    pub(crate) field: String,
    /// The name its sender gave it: shown, never used as a path.
    pub(crate) name: String,
    pub(crate) bytes: Bytes,
}

/// What a form brought.
#[derive(Debug, Default)]
pub(crate) struct Posted {
    pub(crate) typed: FormData,
    pub(crate) files: Vec<Upload>,
}

pub(crate) type Answer = Result<Response, PageError>;

fn pairs(text: &[u8]) -> FormData {
    form_urlencoded::parse(text).map(|(name, value)| (name.into_owned(), value.into_owned())).collect()
}

pub(crate) fn wants_json(headers: &HeaderMap) -> bool {
    headers.get(ACCEPT).and_then(|v| v.to_str().ok()).is_some_and(|v| v.contains("application/json"))
}

impl RequestContext {
    async fn of(app: Arc<App>, parts: &mut Parts) -> Result<Self, PageError> {
        let path = match RawPathParams::from_request_parts(parts, &()).await {
            Ok(params) => params.iter().map(|(name, value)| (name.to_owned(), value.to_owned())).collect(),
            Err(_) => return Err(PageError::NotFound),
        };
        let from = parts
            .extensions
            .get::<ConnectInfo<SocketAddr>>()
            .map_or(IpAddr::V4(Ipv4Addr::LOCALHOST), |info| sender(&app, &parts.headers, info.0.ip()));
        let headers = parts.headers.clone();
        let visitor = {
            let (app, headers) = (Arc::clone(&app), headers.clone());
            on_a_thread(move || Visitor::of(&app, &headers)).await.map_err(|_| broke())??
        };
        Ok(Self {
            visitor,
            headers,
            from,
            path,
            query: pairs(parts.uri.query().unwrap_or_default().as_bytes()),
            here: here(&parts.uri),
            app,
        })
    }

    /// A part of the path.
    pub(crate) fn part(&self, name: &str) -> &str {
        self.path.iter().find(|(known, _)| known == name).map_or("", |(_, value)| value)
    }

    /// The slab that the path names.
    pub(crate) fn slab(&self) -> Result<SlabRecord, PageError> {
        let id: SlabId = self.part("slab").parse().map_err(|_| PageError::NotFound)?;
        self.app.store().slab_record(id)?.ok_or(PageError::NotFound)
    }

    pub(crate) fn now(&self) -> Timestamp {
        self.app.now()
    }

    pub(crate) fn wants_json(&self) -> bool {
        wants_json(&self.headers)
    }

    pub(crate) fn locale(&self) -> localization::Locale {
        self.visitor.locale
    }

    /// The frame of a page about no slab in particular.
    pub(crate) fn frame(&self, title: String) -> Frame {
        Frame::new(self, title)
    }

    fn must(&self, need: Permission) -> Result<(), PageError> {
        if self.visitor.permission >= need {
            return Ok(());
        }
        if self.visitor.permission != Permission::Nothing {
            return Err(PageError::Forbidden);
        }
        match self.app.store().people()?.is_empty() {
            true => Err(PageError::SetUp),
            false => Err(PageError::SignIn(self.here.clone())),
        }
    }
}

fn here(uri: &Uri) -> String {
    uri.path_and_query().map_or_else(|| "/".to_owned(), ToString::to_string)
}

/// The address a request comes from. Behind the server that does the encrypting, all come from there,
/// so its note of the sender is read; only the last address is its own word, the rest is hearsay.
fn sender(app: &App, headers: &HeaderMap, peer: IpAddr) -> IpAddr {
    if !app.is_encrypted() {
        return peer;
    }
    headers
        .get("x-forwarded-for")
        .and_then(|value| value.to_str().ok())
        .and_then(|list| list.rsplit(',').next())
        .and_then(|text| text.trim().parse().ok())
        .unwrap_or(peer)
}

/// A page that panicked; where it did is in the log of whoever runs the server.
fn broke() -> PageError {
    PageError::Failed("a page of this program".to_owned())
}

/// A refusal before any handler.
pub(crate) fn refuse(app: &Arc<App>, headers: &HeaderMap, trouble: PageError) -> Response {
    let frame = Frame::bare(app, headers);
    trouble.answer(frame, wants_json(headers))
}

async fn run(
    context: RequestContext,
    need: Permission,
    work: impl FnOnce(&RequestContext) -> Answer + Send + 'static,
) -> Response {
    let (app, headers) = (Arc::clone(&context.app), context.headers.clone());
    let writer = context.visitor.writer();
    let done = on_a_thread(move || {
        let json = context.wants_json();
        let mut response = context
            .must(need)
            .and_then(|()| work(&context))
            .unwrap_or_else(|trouble| trouble.answer(context.frame(String::new()), json));
        // A phone keeps for nobody else what was made for this visitor.
        if let Ok(writer) = HeaderValue::from_str(&writer) {
            response.headers_mut().insert(HeaderName::from_static("x-writer"), writer);
        }
        response
    });
    match done.await {
        Ok(response) => response,
        Err(_) => refuse(&app, &headers, broke()),
    }
}

/// A page for visitors who may at least `need`.
pub(crate) fn page(need: Permission, handler: fn(&RequestContext) -> Answer) -> MethodRouter<Arc<App>> {
    get(async move |State(app): State<Arc<App>>, request: Request| {
        let (mut parts, _) = request.into_parts();
        match RequestContext::of(Arc::clone(&app), &mut parts).await {
            Ok(context) => run(context, need, handler).await,
            Err(trouble) => refuse(&app, &parts.headers, trouble),
        }
    })
}

/// A form for visitors who may at least `need`.
pub(crate) fn form(need: Permission, handler: fn(&RequestContext, &Posted) -> Answer) -> MethodRouter<Arc<App>> {
    post(async move |State(app): State<Arc<App>>, request: Request| {
        let (mut parts, body) = request.into_parts();
        let context = match RequestContext::of(Arc::clone(&app), &mut parts).await {
            Ok(context) => context,
            Err(trouble) => return refuse(&app, &parts.headers, trouble),
        };
        // Nobody without the right makes us read a hundred megabytes.
        let allowed = {
            let app = Arc::clone(&app);
            on_a_thread(move || (context.must(need), context)).await.map_err(|_| app)
        };
        let context = match allowed {
            Ok((Ok(()), context)) => context,
            Ok((Err(trouble), context)) => return trouble.answer(context.frame(String::new()), context.wants_json()),
            Err(app) => return refuse(&app, &parts.headers, broke()),
        };
        match posted(Request::from_parts(parts, body)).await {
            Ok(posted) => run(context, need, move |context| handler(context, &posted)).await,
            Err(trouble) => trouble.answer(context.frame(String::new()), context.wants_json()),
        }
    })
}

async fn posted(request: Request) -> Result<Posted, PageError> {
    let kind = request.headers().get(CONTENT_TYPE).and_then(|v| v.to_str().ok()).unwrap_or_default().to_owned();
    let large = |error: axum::extract::multipart::MultipartError| match error.status() {
        axum::http::StatusCode::PAYLOAD_TOO_LARGE => PageError::TooLarge,
        _ => PageError::WrongType,
    };
    if kind.starts_with("multipart/form-data") {
        let mut parts = Multipart::from_request(request, &()).await.map_err(|_| PageError::WrongType)?;
        let (mut typed, mut files) = (Vec::new(), Vec::new());
        while let Some(part) = parts.next_field().await.map_err(large)? {
            let field = part.name().unwrap_or_default().to_owned();
            let name = part.file_name().map(str::to_owned);
            let bytes = part.bytes().await.map_err(large)?;
            match name {
                // A file input that was left empty comes as a file without name and bytes.
                Some(name) if name.is_empty() && bytes.is_empty() => {}
                Some(name) if files.len() < MAX_FILES => files.push(Upload { field, name, bytes }),
                Some(_) => return Err(PageError::TooLarge),
                None if bytes.len() > MAX_TEXT => return Err(PageError::TooLarge),
                None => typed.push((field, String::from_utf8(bytes.to_vec()).map_err(|_| PageError::WrongType)?)),
            }
        }
        return Ok(Posted { typed: typed.into_iter().collect(), files });
    }
    if kind.is_empty() || kind.starts_with("application/x-www-form-urlencoded") {
        let bytes = axum::body::to_bytes(request.into_body(), MAX_TEXT).await.map_err(|_| PageError::TooLarge)?;
        return Ok(Posted { typed: pairs(&bytes), files: Vec::new() });
    }
    Err(PageError::WrongType)
}
