//! One file for each command.

mod completions;
mod demo;
mod diary;
pub(crate) mod drawing;
mod fields;
mod fix;
mod list;
mod log;
mod map;
mod missing;
mod new;
mod order;
mod papers;
pub(crate) mod photo;
mod preview;
mod recipe;
mod series;
mod serve;
mod standing;
pub(crate) mod sums;

use crate::cli::{Cli, Command};
use crate::failure::{Answer, Failure};
use crate::session::Session;

pub(crate) fn run(cli: Cli) -> Result<Answer, Failure> {
    let common = cli.common;
    match cli.command {
        Command::Demo { dir, serve, at } => demo::run(&dir, serve.then_some(&at), &common),
        Command::Serve(args) => serve::run(Session::open(&common)?, &args),
        Command::Completions { shell } => completions::run(shell),
        Command::New(new) => new::run(&Session::open(&common)?, &new),
        Command::List => list::run(&Session::open(&common)?),
        Command::Log(log) => log::run(&Session::open(&common)?, &log),
        Command::Fix(fix) => fix::run(&Session::open(&common)?, &fix),
        Command::Diary { which, kind, all } => diary::run(&Session::open(&common)?, &which, kind.as_deref(), all),
        Command::Drawing(args) => drawing::run(&args, &common),
        Command::Photo { what } => photo::run(&what, &common),
        Command::Sums { sum } => sums::run(&sum, &common),
        Command::Standing { which, html } => standing::run(&Session::open(&common)?, &which, html),
        Command::Missing { which } => missing::run(&Session::open(&common)?, &which),
        Command::Map { which, svg, png, cells } => {
            let asked = map::Asked { svg: svg.as_deref(), png: png.as_deref(), cells };
            map::run(&Session::open(&common)?, &which, &asked)
        }
        Command::Recipe { which, wish, state, seed } => {
            recipe::run(&Session::open(&common)?, &which, &recipe::Asked { wish, state, seed })
        }
        Command::Preview { which, panel, state, svg, png, seed } => {
            let asked = preview::Asked { panel: &panel, state, svg: svg.as_deref(), png: png.as_deref(), seed };
            preview::run(&Session::open(&common)?, &which, &asked)
        }
        Command::Order { which } => order::run(&Session::open(&common)?, &which),
        Command::Papers { which, kind, size, out, link, pour } => {
            papers::run(&Session::open(&common)?, &which, &papers::Wanted { kind, size, out, link, pour })
        }
    }
}
