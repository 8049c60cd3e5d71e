//! What can be typed.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};

/// Is this slab ready for reactive stain, what proves it, what comes next.
#[derive(Debug, Parser)]
#[command(
    name = "underfoot",
    version,
    after_help = "Exit codes: 0 fine, 1 answered \"no\" or \"held\", 2 bad use, 3 bad data.\n\
                  Start with: underfoot demo"
)]
pub(crate) struct Cli {
    #[command(flatten)]
    pub(crate) common: Common,
    #[command(subcommand)]
    pub(crate) command: Command,
}

/// The heading of the options that every command takes.
const EVERYWHERE: &str = "In every command";

/// What every command takes.
#[derive(Debug, Clone, Args)]
pub(crate) struct Common {
    /// Folder of the diaries [default: $UNDERFOOT_DATA, else the user's data folder]
    #[arg(long, global = true, help_heading = EVERYWHERE, value_name = "DIR")]
    pub(crate) data: Option<PathBuf>,
    /// Language of the answers
    #[arg(long, global = true, help_heading = EVERYWHERE, value_enum, default_value = "en")]
    pub(crate) lang: LangArg,
    /// Units of the answers
    #[arg(long, global = true, help_heading = EVERYWHERE, value_enum, default_value = "imperial")]
    pub(crate) units: UnitsArg,
    /// Answer as JSON (documented in docs/json.md)
    #[arg(long, global = true, help_heading = EVERYWHERE)]
    pub(crate) json: bool,
    /// Who writes [default: the user's name on this machine]
    #[arg(long, global = true, help_heading = EVERYWHERE, value_name = "NAME")]
    pub(crate) author: Option<String>,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum LangArg {
    En,
    Es,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum UnitsArg {
    Imperial,
    Metric,
}

/// Which slab, at which moment.
#[derive(Debug, Clone, Args)]
pub(crate) struct Which {
    /// The slab: its name, the start of its name, or its id; may be left out when there is one
    pub(crate) slab: Option<String>,
    /// The same, by name
    #[arg(long = "slab", value_name = "SLAB", conflicts_with = "slab")]
    pub(crate) slab_option: Option<String>,
    /// As of this moment: 2026-05-03T09:00, or 2026-05-03 for the end of that day [default: now]
    #[arg(long, value_name = "MOMENT")]
    pub(crate) at: Option<String>,
    /// What counts as known: noted by then, or happened by then even if noted later
    #[arg(long, value_enum, default_value = "noted")]
    pub(crate) known: KnownArg,
}

impl Which {
    pub(crate) fn slab(&self) -> Option<&str> {
        self.slab.as_deref().or(self.slab_option.as_deref())
    }
}

/// Where and how to serve the pages.
#[derive(Debug, Clone, Args)]
pub(crate) struct Serve {
    /// Address and port to listen at
    #[arg(long, default_value = "127.0.0.1:8712", value_name = "ADDRESS")]
    pub(crate) addr: String,
    /// The address people type, when a server in front of this one encrypts, such as `https://slabs.example.org`
    #[arg(long, value_name = "URL")]
    pub(crate) public: Option<String>,
    /// Let the clock of the pages stand at this moment, to look back or to try things out
    #[arg(long, value_name = "MOMENT")]
    pub(crate) clock: Option<String>,
    /// What the log on standard error holds: each level adds to the one before it (docs/logging.md)
    #[arg(long, value_enum, default_value = "info", value_name = "LEVEL")]
    pub(crate) log_level: LogLevelArg,
    /// How a line of the log looks
    #[arg(long, value_enum, default_value = "text", value_name = "FORMAT")]
    pub(crate) log_format: LogFormatArg,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum LogLevelArg {
    Off,
    Error,
    Warn,
    Info,
    Debug,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum LogFormatArg {
    Text,
    Json,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum KnownArg {
    Noted,
    Happened,
}

/// State of a panel.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum StateArg {
    Bare,
    Stained,
    Sealed,
}

impl From<StateArg> for slab_diary::body::PanelState {
    fn from(state: StateArg) -> Self {
        match state {
            StateArg::Bare => Self::Bare,
            StateArg::Stained => Self::Stained,
            StateArg::Sealed => Self::Sealed,
        }
    }
}

#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Build the demo slab from its files and show the main job
    #[command(after_help = "Example:\n  underfoot demo --dir ./underfoot-demo")]
    Demo {
        /// Folder for the demo's diary and papers
        #[arg(long, default_value = "underfoot-demo", value_name = "DIR")]
        dir: PathBuf,
        /// Then serve the pages over it
        #[arg(long)]
        serve: bool,
        #[command(flatten)]
        at: Serve,
    },
    /// Serve the pages: on this machine without sign-in, elsewhere with people and passwords
    #[command(after_help = "Examples:\n  underfoot serve\n  \
                      underfoot serve --addr 0.0.0.0:8712 --public https://slabs.example.org\n  \
                      underfoot serve --log-format json 2>> underfoot.log")]
    Serve(Serve),
    /// Start a slab
    #[command(after_help = "Example:\n  underfoot new \"Creek Road shop\" --time-zone America/Chicago")]
    New(New),
    /// List the slabs
    #[command(after_help = "Example:\n  underfoot list --json")]
    List,
    /// Write entries into a slab's diary: one by its kind, or many from a file
    #[command(after_help = "Examples:\n  underfoot log --slab creek water-drop --zone A soaked_in=\"45 s\"\n  \
                      underfoot log --slab creek incident --point \"12 ft,3 ft\" --radius \"2 ft\" what=cutting-oil trade=plumber\n  \
                      underfoot log --slab creek air-series logger.csv --column time=Date --column air=\"T1\" --column air_unit=F\n  \
                      underfoot log --slab creek --from diary.jsonl     (or --from - for standard input)\n\
                      Kinds and fields: docs/diary.md")]
    Log(Log),
    /// Correct an entry: a new entry replaces it, the old one stays readable
    #[command(after_help = "Example:\n  underfoot fix 0190a8f0-7c1e-7b3a-9c51-0d6e3b9a7f10 soaked_in=\"90 s\"")]
    Fix(Fix),
    /// Read a slab's diary
    #[command(after_help = "Example:\n  underfoot diary creek --kind water-drop")]
    Diary {
        #[command(flatten)]
        which: Which,
        /// Only this kind
        #[arg(long, value_name = "KIND")]
        kind: Option<String>,
        /// Entries that were corrected too
        #[arg(long)]
        all: bool,
    },
    /// Is it ready, what proves it, what comes next
    #[command(
        name = "ready",
        alias = "standing",
        after_help = "Example:\n  underfoot ready creek --at 2026-05-03 --json\n  \
                          underfoot ready creek --html > ready.html"
    )]
    Standing {
        #[command(flatten)]
        which: Which,
        /// Answer as a page to save, send or print
        #[arg(long, conflicts_with = "json")]
        html: bool,
    },
    /// What is missing before it is ready: every deed, in order, with its time
    #[command(after_help = "Example:\n  underfoot missing creek --json")]
    Missing {
        #[command(flatten)]
        which: Which,
    },
    /// Read a slab's outline out of an architect's drawing (DXF): its layers, or the plan they make
    #[command(after_help = "Examples:\n  underfoot drawing floor.dxf\n  \
                      underfoot drawing floor.dxf --outline SLAB --cut-out PITS --zone ROOMS --joint JOINTS\n  \
                      underfoot drawing floor.dxf --outline SLAB --drawn-in mm --json > plan.json")]
    Drawing(crate::commands::drawing::DrawingArgs),
    /// Measure photographs: is the slab one color, what color is a panel
    #[command(after_help = "Examples:\n  underfoot photo evenness slab.jpg --card 964,359,221,165\n  \
                      underfoot photo color panel.jpg --card 60,40,220,160")]
    Photo {
        #[command(subcommand)]
        what: crate::commands::photo::PhotoCommand,
    },
    /// What every place of the slab is: how it drinks, what happened, where to test next
    #[command(after_help = "Examples:\n  underfoot map creek\n  underfoot map creek --png map.png --svg map.svg\n  \
                      underfoot map creek --cells --json")]
    Map {
        #[command(flatten)]
        which: Which,
        /// Drawing to write
        #[arg(long, value_name = "FILE")]
        svg: Option<PathBuf>,
        /// Picture to write
        #[arg(long, value_name = "FILE")]
        png: Option<PathBuf>,
        /// Every cell of the map too (with --json)
        #[arg(long, requires = "json")]
        cells: bool,
    },
    /// Which recipe of stain gives a color, worked out from this slab's own panels
    #[command(after_help = "Examples:\n  underfoot recipe creek\n  \
                      underfoot recipe creek --wish \"#7a563a\" --json\n  \
                      underfoot recipe creek --wish P2 --state sealed")]
    Recipe {
        #[command(flatten)]
        which: Which,
        /// The target color: a screen color #rrggbb, L, a and b, or the name of a panel
        #[arg(long, value_name = "COLOR")]
        wish: Option<String>,
        /// Only panels seen in this state [default: whichever tells most, sealed before stained]
        #[arg(long, value_enum)]
        state: Option<StateArg>,
        /// The number that the draws of the radius begin with
        #[arg(long, default_value_t = 1, value_name = "NUMBER")]
        seed: u64,
    },
    /// Illustrate the floor with the color and mottling of a panel
    #[command(after_help = "Example:\n  underfoot preview creek --panel P1 --png floor.png --svg floor.svg")]
    Preview {
        #[command(flatten)]
        which: Which,
        /// The panel
        #[arg(long, value_name = "PANEL")]
        panel: String,
        /// Its photograph in this state [default: sealed, else stained, else bare]
        #[arg(long, value_enum)]
        state: Option<StateArg>,
        /// Drawing to write
        #[arg(long, value_name = "FILE")]
        svg: Option<PathBuf>,
        /// Picture to write
        #[arg(long, value_name = "FILE")]
        png: Option<PathBuf>,
        /// The number that the mottling begins with: the same number, the same picture
        #[arg(long, default_value_t = 1, value_name = "NUMBER")]
        seed: u64,
    },
    /// What to buy
    #[command(after_help = "Example:\n  underfoot order creek")]
    Order {
        #[command(flatten)]
        which: Which,
    },
    /// Typeset papers
    #[command(after_help = "Example:\n  underfoot papers creek --kind pour-sheet --lang es --size a4 --out pour.pdf")]
    Papers {
        #[command(flatten)]
        which: Which,
        /// Which paper
        #[arg(long, value_enum)]
        kind: PaperArg,
        /// Paper size
        #[arg(long, value_enum, default_value = "letter")]
        size: SizeArg,
        /// File to write [default: named after slab, paper and language, in this folder]
        #[arg(long, value_name = "FILE")]
        out: Option<PathBuf>,
        /// Web address printed as a code (site notice): whoever reads the notice can open it
        #[arg(long, value_name = "URL")]
        link: Option<String>,
        #[command(flatten)]
        pour: PourArgs,
    },
    /// One calculation without a slab: dew point, evaporation, drying, dilution and others
    #[command(after_help = "Example:\n  underfoot sums dew-point --air \"75 °F\" --rh \"60 %\"\n\
                      Each calculation has its own --help with examples.")]
    Sums {
        #[command(subcommand)]
        sum: crate::commands::sums::SumArgs,
    },
    /// Print completions for a shell
    #[command(after_help = "Example:\n  underfoot completions bash > /etc/bash_completion.d/underfoot")]
    Completions {
        /// The shell
        shell: clap_complete::Shell,
    },
}

/// What a pour sheet asks for and the diary may not hold yet.
#[derive(Debug, Clone, Args)]
pub(crate) struct PourArgs {
    /// Thickness of the slab (pour sheet) [default: from the diary]
    #[arg(long, value_name = "LENGTH")]
    pub(crate) thickness: Option<String>,
    /// Day of the pour (pour sheet) [default: from the diary]
    #[arg(long, value_name = "DATE")]
    pub(crate) pour_day: Option<String>,
    /// Finish of a zone, as zone=finish (pour sheet) [default: from the diary]
    #[arg(long, value_name = "ZONE=FINISH")]
    pub(crate) finish: Vec<String>,
    /// Sample panels for each finish (pour sheet)
    #[arg(long, default_value_t = 3, value_name = "COUNT")]
    pub(crate) panels: u32,
    /// Concrete added for waste (pour sheet)
    #[arg(long, default_value = "5 %", value_name = "SHARE")]
    pub(crate) waste: String,
}

#[derive(Debug, Args)]
pub(crate) struct New {
    /// What the crew calls the slab
    pub(crate) name: String,
    /// Where it is
    #[arg(long)]
    pub(crate) site: Option<String>,
    /// Time zone by its name [default: UTC]
    #[arg(long, value_name = "ZONE")]
    pub(crate) time_zone: Option<String>,
    /// In the weather
    #[arg(long)]
    pub(crate) exterior: bool,
    /// An old floor, not poured for this job
    #[arg(long)]
    pub(crate) existing: bool,
}

#[derive(Debug, Args)]
pub(crate) struct Log {
    /// The slab [default: the only one]
    #[arg(long, value_name = "SLAB")]
    pub(crate) slab: Option<String>,
    /// Read entries as JSON Lines from a file, or from standard input with "-"
    #[arg(long, value_name = "FILE", conflicts_with_all = ["kind", "happened", "photo"])]
    pub(crate) from: Option<PathBuf>,
    /// Kind of entry, such as water-drop
    #[arg(required_unless_present = "from")]
    pub(crate) kind: Option<String>,
    /// Its fields as field=value, or the file of an air-series
    #[arg(value_name = "FIELD=VALUE")]
    pub(crate) fields: Vec<String>,
    /// When it happened [default: now]
    #[arg(long, value_name = "MOMENT")]
    pub(crate) happened: Option<String>,
    #[command(flatten)]
    pub(crate) place: PlaceArgs,
    /// A photograph that belongs to it
    #[arg(long, value_name = "FILE")]
    pub(crate) photo: Vec<PathBuf>,
    /// Column of a plain CSV, as quantity=column (air-series)
    #[arg(long, value_name = "QUANTITY=COLUMN")]
    pub(crate) column: Vec<String>,
    /// Lay a typical weather year on this year (air-series)
    #[arg(long, value_name = "YEAR")]
    pub(crate) year: Option<i16>,
}

#[derive(Debug, Clone, Default, Args)]
pub(crate) struct PlaceArgs {
    /// Zone of the plan
    #[arg(long, value_name = "ZONE")]
    pub(crate) zone: Option<String>,
    /// Point on the plan, as "X,Y"
    #[arg(long, value_name = "X,Y", allow_hyphen_values = true)]
    pub(crate) point: Option<String>,
    /// How far around the point
    #[arg(long, value_name = "LENGTH", requires = "point", allow_hyphen_values = true)]
    pub(crate) radius: Option<String>,
}

#[derive(Debug, Args)]
pub(crate) struct Fix {
    /// Id of the entry, or enough of its end to tell it apart
    pub(crate) entry: String,
    /// The slab [default: the only one]
    #[arg(long, value_name = "SLAB")]
    pub(crate) slab: Option<String>,
    /// The fields that change
    #[arg(value_name = "FIELD=VALUE")]
    pub(crate) fields: Vec<String>,
    /// When it really happened
    #[arg(long, value_name = "MOMENT")]
    pub(crate) happened: Option<String>,
    #[command(flatten)]
    pub(crate) place: PlaceArgs,
    /// It never happened: strike the entry out; reason="…" may say what went wrong
    #[arg(long, conflicts_with_all = ["happened", "zone", "point", "radius"])]
    pub(crate) never_happened: bool,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum PaperArg {
    PourSheet,
    SiteNotice,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum SizeArg {
    Letter,
    A4,
}
