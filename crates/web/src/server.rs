//! Listening, and stopping without losing a request.

use std::net::SocketAddr;
use std::sync::Arc;

use axum::Router;
use axum::extract::{DefaultBodyLimit, Request, State};
use axum::http::header::CONTENT_TYPE;
use axum::middleware;
use axum::response::Response;
use axum::routing::get;
use tokio::net::TcpListener;
use tower_http::catch_panic::CatchPanicLayer;
use tower_http::compression::CompressionLayer;

use crate::app::App;
use crate::frame::Frame;
use crate::page_error::PageError;
use crate::{assets, context, guard, request_log, screens};

/// All pages over an application's state.
pub fn router(app: Arc<App>) -> Router {
    let routes = Router::new()
        .route("/a/{hash}/{name}", get(assets::file))
        .route("/sw.js", get(assets::worker))
        .route("/site.webmanifest", get(assets::manifest))
        .merge(screens::routes());
    around(routes, app)
}

/// What every request passes on its way to a route and back.
pub(crate) fn around(routes: Router<Arc<App>>, app: Arc<App>) -> Router {
    routes
        .fallback(nothing_here)
        .layer(DefaultBodyLimit::max(context::MAX_BYTES))
        .layer(CatchPanicLayer::custom(|_: Box<dyn std::any::Any + Send>| {
            // The thread that panicked held no lock that matters: every lock here takes a poisoned one.
            axum::http::Response::builder()
                .status(500)
                .header(CONTENT_TYPE, "text/plain; charset=utf-8")
                .body(axum::body::Body::from("Something failed here. Nothing was written. Go back and try again."))
                .expect("a fixed answer")
        }))
        .layer(CompressionLayer::new().gzip(true))
        .layer(middleware::from_fn_with_state(Arc::clone(&app), guard::guard))
        .layer(middleware::from_fn_with_state(Arc::clone(&app), request_log::request_log))
        .with_state(app)
}

async fn nothing_here(State(app): State<Arc<App>>, request: Request) -> Response {
    let frame = Frame::bare(&app, request.headers()).at(request.uri().path());
    PageError::NotFound.answer(frame, context::wants_json(request.headers()))
}

/// Serves until the program is asked to stop; requests that are being answered are answered.
///
/// # Errors
/// When the address can't be listened on any more.
pub fn serve(listener: std::net::TcpListener, app: Arc<App>) -> std::io::Result<()> {
    listener.set_nonblocking(true)?;
    let runtime = tokio::runtime::Builder::new_multi_thread().enable_all().build()?;
    runtime.block_on(async move {
        let listener = TcpListener::from_std(listener)?;
        let service = router(app).into_make_service_with_connect_info::<SocketAddr>();
        axum::serve(listener, service).with_graceful_shutdown(asked_to_stop()).await
    })
}

async fn asked_to_stop() {
    let interrupt = tokio::signal::ctrl_c();
    #[cfg(unix)]
    {
        let Ok(mut terminate) = tokio::signal::unix::signal(tokio::signal::unix::SignalKind::terminate()) else {
            let _ = interrupt.await;
            return;
        };
        tokio::select! { _ = interrupt => {}, _ = terminate.recv() => {} }
    }
    #[cfg(not(unix))]
    let _ = interrupt.await;
}
