//! What every request passes before a page sees it, and what every answer carries.
//!
//! A foreign page may make a browser send a form here with the visitor's cookie. Browsers say where a
//! form comes from: `Sec-Fetch-Site`, or at least `Origin`. A request that changes something is taken
//! only from our own pages. A program that is no browser sends neither, and has no cookie of somebody
//! else to misuse, so it may pass.

use std::net::IpAddr;
use std::sync::Arc;

use axum::extract::{Request, State};
use axum::http::header::{
    CACHE_CONTROL, CONTENT_SECURITY_POLICY, HOST, HeaderName, HeaderValue, ORIGIN, REFERRER_POLICY,
    STRICT_TRANSPORT_SECURITY, X_CONTENT_TYPE_OPTIONS, X_FRAME_OPTIONS,
};
use axum::http::{HeaderMap, Method, Uri};
use axum::middleware::Next;
use axum::response::Response;

use crate::app::{Access, App};
use crate::page_error::PageError;
use crate::screens;

/// Only our own files, no code or style inside the pages, no frames.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob: data:; \
    connect-src 'self'; form-action 'self'; manifest-src 'self'; worker-src 'self'; base-uri 'none'; \
    frame-ancestors 'none'";

/// Refuses what comes from elsewhere and marks every answer.
pub(crate) async fn guard(State(app): State<Arc<App>>, request: Request, next: Next) -> Response {
    let refused = refused(&app, request.method(), request.uri(), request.headers());
    let by_link = screens::is_link(request.uri().path());
    let mut response = match refused {
        Some(trouble) => crate::context::refuse(&app, request.headers(), trouble),
        None => next.run(request).await,
    };
    let headers = response.headers_mut();
    headers.insert(CONTENT_SECURITY_POLICY, HeaderValue::from_static(POLICY));
    headers.insert(X_CONTENT_TYPE_OPTIONS, HeaderValue::from_static("nosniff"));
    headers.insert(X_FRAME_OPTIONS, HeaderValue::from_static("DENY"));
    // With no referrer at all, browsers send forms with the origin "null"; that they come from us can
    // then be told by `Sec-Fetch-Site` alone, which is sent only over lines that are safe.
    let referrer =
        if by_link && (app.is_encrypted() || !app.asks_for_people()) { "no-referrer" } else { "same-origin" };
    headers.insert(REFERRER_POLICY, HeaderValue::from_static(referrer));
    if by_link {
        headers.insert(HeaderName::from_static("x-robots-tag"), HeaderValue::from_static("noindex, nofollow"));
    }
    headers.insert(HeaderName::from_static("cross-origin-opener-policy"), HeaderValue::from_static("same-origin"));
    headers.insert(HeaderName::from_static("cross-origin-resource-policy"), HeaderValue::from_static("same-origin"));
    headers.insert(
        HeaderName::from_static("permissions-policy"),
        HeaderValue::from_static("camera=(self), geolocation=(), microphone=()"),
    );
    if app.is_encrypted() {
        headers.insert(STRICT_TRANSPORT_SECURITY, HeaderValue::from_static("max-age=31536000"));
    }
    // Pages hold what only this visitor may see; files that never change say so themselves.
    headers.entry(CACHE_CONTROL).or_insert(HeaderValue::from_static("no-store"));
    response
}

fn refused(app: &App, method: &Method, uri: &Uri, headers: &HeaderMap) -> Option<PageError> {
    let host = headers.get(HOST).and_then(|h| h.to_str().ok()).or_else(|| uri.authority().map(|a| a.as_str()));
    // A foreign name that was made to point at this machine would let its pages read ours.
    if app.settings.access == Access::ThisMachine && !host.is_some_and(is_this_machine) {
        return Some(PageError::ForeignHost);
    }
    if matches!(*method, Method::GET | Method::HEAD | Method::OPTIONS) {
        return None;
    }
    if let Some(site) = headers.get("sec-fetch-site") {
        // "none" is a person at the address bar or a bookmark.
        return (site != "same-origin" && site != "none").then_some(PageError::ForeignOrigin);
    }
    let origin = headers.get(ORIGIN)?;
    let ours = match &app.settings.access {
        Access::People { public: Some(address) } => origin.as_bytes() == address.as_bytes(),
        _ => host.is_some_and(|host| {
            origin.to_str().is_ok_and(|origin| {
                origin.strip_prefix("http://").or_else(|| origin.strip_prefix("https://")) == Some(host)
            })
        }),
    };
    (!ours).then_some(PageError::ForeignOrigin)
}

/// Whether a host, with or without a port, is a name of this machine.
pub(crate) fn is_this_machine(host: &str) -> bool {
    let name = match host.strip_prefix('[') {
        Some(rest) => rest.split(']').next().unwrap_or_default(),
        None => host.rsplit_once(':').map_or(host, |(name, _)| name),
    };
    name.eq_ignore_ascii_case("localhost") || name.parse::<IpAddr>().is_ok_and(|address| address.is_loopback())
}

#[cfg(test)]
mod tests {
    use super::is_this_machine;

    #[test]
    fn only_this_machine_goes_by_its_own_names() {
        for ours in ["localhost", "localhost:8712", "127.0.0.1:8712", "[::1]:8712", "LOCALHOST"] {
            assert!(is_this_machine(ours), "{ours}");
        }
        for foreign in ["evil.example", "localhost.evil.example:8712", "10.0.0.7:8712", "127.0.0.1.evil.example", ""] {
            assert!(!is_this_machine(foreign), "{foreign}");
        }
    }
}
