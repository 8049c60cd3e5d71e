//! Serve the pages.

use std::net::{TcpListener, ToSocketAddrs};
use std::sync::Arc;

use jiff::tz::TimeZone;
use slab_diary::When;
use web::{Access, App, Demo, Outside, Settings};

use super::demo;
use crate::cli::Serve;
use crate::failure::{Answer, Failure};
use crate::logging;
use crate::out::answer;
use crate::session::{Session, fresh_id, monotonic, now};

/// Letters of a one-time code: none that is taken for another when read from a screen.
const LETTERS: &[u8; 32] = b"ABCDEFGHJKLMNPQRSTUVWXYZ23456789";

pub(crate) fn run(session: Session, args: &Serve) -> Result<Answer, Failure> {
    let address = (|| args.addr.to_socket_addrs().ok()?.next())().ok_or_else(|| {
        Failure::Use(format!("--addr \"{}\": accepted: an address with its port, such as 127.0.0.1:8712", args.addr))
    })?;
    if let Some(public) = &args.public {
        check_public(public)?;
    }
    let access = if address.ip().is_loopback() && args.public.is_none() {
        Access::ThisMachine
    } else {
        Access::People { public: args.public.clone() }
    };
    let clock = match &args.clock {
        None => None,
        Some(text) => {
            let when = When::read(text, &TimeZone::UTC).map_err(|e| Failure::Use(format!("--clock: {e}")))?;
            Some(when.instant())
        }
    };
    let listener = TcpListener::bind(address)
        .map_err(|e| Failure::Use(format!("--addr \"{}\": {e}; accepted: a free port of this machine", args.addr)))?;
    let bound = listener.local_addr().map_err(Failure::data)?;
    let locale = session.locale;
    let settings = Settings {
        access: access.clone(),
        outside: Outside { now, monotonic, fresh_id, secret },
        stands_at: clock,
        author: session.author,
        demo: Some(Demo {
            fill: |store| demo::fill(store).map_err(|failure| failure.to_string()),
            as_of: demo::as_of,
            id: demo::slab_id,
        }),
        store: session.store,
    };
    logging::start(args)?;
    let shown = match &args.public {
        Some(public) => public.clone(),
        None => format!("http://{bound}"),
    };
    answer!("{}", locale.message("serve-at", &[("address", shown.as_str().into())]));
    let app = Arc::new(App::new(settings));
    if access != Access::ThisMachine {
        if args.public.is_none() {
            tracing::warn!("the pages are not encrypted on the way");
            answer!("{}", locale.message("serve-not-encrypted", &[]));
        }
        let code = code();
        if app.offer_set_up(&code).map_err(Failure::data)? {
            answer!("{}", locale.message("serve-set-up", &[("address", shown.as_str().into()), ("code", code.into())]));
        }
    }
    answer!("{}", locale.message("serve-stop", &[]));
    tracing::info!("listening");
    web::serve(listener, app).map_err(Failure::data)?;
    tracing::info!("stopped");
    Ok(Answer::Yes)
}

/// What browsers call an origin: scheme, host and port, nothing after.
fn check_public(public: &str) -> Result<(), Failure> {
    let host = public.strip_prefix("https://").unwrap_or_default();
    let plain = !host.is_empty() && !host.contains(|c: char| c == '/' || c == '?' || c == '#' || c.is_whitespace());
    if plain {
        return Ok(());
    }
    Err(Failure::Use(format!(
        "--public \"{public}\": accepted: the encrypted address without a path, such as https://slabs.example.org"
    )))
}

/// Bytes from the operating system that nobody can guess: 122 of the bits of each random id.
fn secret() -> [u8; 32] {
    let mut hasher = blake3::Hasher::new();
    for _ in 0..4 {
        hasher.update(uuid::Uuid::new_v4().as_bytes());
    }
    *hasher.finalize().as_bytes()
}

/// A code of 60 bits to read from a terminal: `ABCD-EFGH-JKLM`.
fn code() -> String {
    let letters: Vec<char> = secret()[..12].iter().map(|byte| char::from(LETTERS[usize::from(byte % 32)])).collect();
    letters.chunks(4).map(|part| part.iter().collect::<String>()).collect::<Vec<_>>().join("-")
}
