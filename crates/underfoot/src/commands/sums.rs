//! One calculation without a slab. What is asked, answers and refusals are those of the crate `calculators`; here
//! are its fields as options of the command line, the files of this machine and the terminal.

use std::path::Path;

use calculators::{Calculator, CalculatorError, ErrorKind, calculator, calculators, usual};
use clap::{Arg, ArgAction, ArgMatches, Command, FromArgMatches, Subcommand};
use form_schema::{Field, FormData, InputKind};
use localization::Locale;
use trade_facts::Trade;

use crate::cli::Common;
use crate::failure::{Answer, Failure};
use crate::out::answer;
use crate::session;

/// A calculation as asked on the command line.
#[derive(Debug)]
pub(crate) struct SumArgs {
    calculator: &'static Calculator,
    typed: FormData,
}

impl Subcommand for SumArgs {
    fn augment_subcommands(command: Command) -> Command {
        command.subcommands(calculators().iter().map(|calculator| described(calculator))).subcommand_required(true)
    }

    fn augment_subcommands_for_update(command: Command) -> Command {
        Self::augment_subcommands(command)
    }

    fn has_subcommand(name: &str) -> bool {
        calculator(name).is_some()
    }
}

impl FromArgMatches for SumArgs {
    fn from_arg_matches(matches: &ArgMatches) -> Result<Self, clap::Error> {
        let found = matches.subcommand().and_then(|(name, given)| Some((calculator(name)?, given)));
        let (calculator, given) = found.ok_or_else(|| clap::Error::new(clap::error::ErrorKind::MissingSubcommand))?;
        let texts = |field: &'static Field| {
            let texts = given.get_many::<String>(field.name).into_iter().flatten();
            texts.map(move |text| (field.name, text.as_str()))
        };
        Ok(Self { calculator, typed: calculator.form.fields.iter().flat_map(texts).collect() })
    }

    fn update_from_arg_matches(&mut self, matches: &ArgMatches) -> Result<(), clap::Error> {
        *self = Self::from_arg_matches(matches)?;
        Ok(())
    }
}

fn described(calculator: &'static Calculator) -> Command {
    let name = calculator.id();
    let lines: String = calculator.lines.iter().map(|line| format!("\n  underfoot sums {name} {line}")).collect();
    Command::new(name)
        .about(calculator.about(Locale::default()))
        .after_help(format!("Example:{lines}"))
        .args(calculator.form.fields.iter().map(|field| option(calculator, field)))
}

fn option(calculator: &Calculator, field: &'static Field) -> Arg {
    let locale = Locale::default();
    let choices = field.choices(Trade::built_in());
    let mut help = calculators::label(field, locale);
    // The zones that are offered are few of those that are known.
    if !choices.is_empty() && field.input != InputKind::TimeZone {
        help.push_str(&format!(" [one of: {}]", choices.join(", ")));
    }
    if let Some(usual) = calculators::usual_text(field, locale.unit_system).map(str::to_owned).or(usual(field, locale))
    {
        help.push_str(&format!(" [default: {usual}]"));
    }
    let arg = Arg::new(field.name).value_name(field.name.to_uppercase()).help(help).allow_hyphen_values(true);
    if calculator.places.contains(&field.name) {
        return arg;
    }
    let action = if field.input == InputKind::Texts { ArgAction::Append } else { ArgAction::Set };
    arg.long(field.name.replace('_', "-")).action(action)
}

pub(crate) fn run(asked: &SumArgs, common: &Common) -> Result<Answer, Failure> {
    let answered = asked.calculator.calculate(&asked.typed, None, &|path: &Path| std::fs::read(path));
    let notes = answered.as_ref().map_or_else(|refused| refused.notes.as_slice(), |found| found.notes());
    for note in notes {
        anstream::eprintln!("{note}");
    }
    let found = answered?;
    let locale = session::locale(common);
    if common.json {
        answer!("{:#}", found.json(locale));
    } else {
        crate::out::print(format_args!("{}", found.text(locale)));
    }
    Ok(Answer::Yes)
}

impl From<CalculatorError> for Failure {
    fn from(error: CalculatorError) -> Self {
        match error.kind {
            ErrorKind::Use => Self::Use(error.to_string()),
            ErrorKind::Data => Self::Data(error.to_string()),
        }
    }
}
