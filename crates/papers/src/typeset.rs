//! The typesetter, kept behind one door.
//!
//! Why this module exists: the typesetting library changes its interface between releases, so
//! nothing else in the crate names it. A paper is a template, a tree of values and some pictures;
//! what comes out is the bytes of a PDF. Values reach the template as data, never as markup, so a
//! job called `#panic()` prints as such. No file is opened, no clock is read: the template world
//! holds only what is given here.
//!
//! Every document is made to PDF/UA-1 (ISO 14289-1): tagged, with title and language, fonts
//! embedded, pictures with a text in their place. The library checks what a program can check of it.

use std::collections::{BTreeMap, HashMap};
use std::sync::LazyLock;

use localization::Locale;
use serde_json::Value;
use typst::diag::{FileError, FileResult, SourceDiagnostic};
use typst::foundations::{Bytes, Datetime, Duration, Smart};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World};
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};

use crate::error::PaperError;

/// Parts that every template imports.
const COMMON: (&str, &str) = ("common.typ", include_str!("../templates/common.typ"));

/// How many makings a cached part of a layout outlives; a long-running server must not keep them all.
const CACHE_AGE: usize = 4;

static FONTS: LazyLock<Vec<Font>> = LazyLock::new(|| {
    [notosans::REGULAR_TTF, notosans::BOLD_TTF, notosans::ITALIC_TTF]
        .into_iter()
        .flat_map(|face| Font::iter(Bytes::new(face)))
        .collect()
});
static BOOK: LazyLock<LazyHash<FontBook>> = LazyLock::new(|| LazyHash::new(FontBook::from_fonts(FONTS.iter())));
static LIBRARY: LazyLock<LazyHash<Library>> = LazyLock::new(|| LazyHash::new(Library::default()));

/// What a paper is made of.
pub(crate) struct Draft {
    /// The text of the template.
    pub(crate) template: &'static str,
    /// What the template reads as `data.json`.
    pub(crate) data: Value,
    /// Pictures in SVG, by file name.
    pub(crate) pictures: BTreeMap<String, Vec<u8>>,
}

/// What a template says by itself, by key: the messages of every `say("…")` in it.
pub(crate) fn said(template: &'static str, locale: Locale) -> Value {
    let keys = template.split("say(\"").skip(1).filter_map(|rest| rest.split_once('"'));
    keys.map(|(key, _)| (key, locale.message(key, &[]))).collect()
}

/// A paper laid out on its sheets.
pub(crate) struct Laid(PagedDocument);

impl Draft {
    /// Lays the paper out.
    ///
    /// # Errors
    /// A character the typeface lacks; anything the typesetter complains of, warnings included.
    pub(crate) fn lay_out(&self) -> Result<Laid, PaperError> {
        drawable(&self.data, "")?;
        let desk = Desk::new(self);
        let made = typst::compile::<PagedDocument>(&desk);
        typst::comemo::evict(CACHE_AGE);
        if let Some(warning) = made.warnings.first() {
            return Err(complaint(warning));
        }
        match made.output {
            Ok(document) => Ok(Laid(document)),
            Err(errors) => Err(errors.first().map_or_else(|| typesetter("no reason given"), complaint)),
        }
    }
}

impl Laid {
    /// How many sheets it takes.
    pub(crate) fn sheets(&self) -> usize {
        self.0.pages().len()
    }

    /// The bytes of the PDF; the same for the same draft.
    pub(crate) fn pdf(&self) -> Result<Vec<u8>, PaperError> {
        let standards = PdfStandards::new(&[PdfStandard::Ua_1]).map_err(|no| typesetter(no.message()))?;
        let creator = Smart::Custom(Some("Underfoot".to_owned()));
        let options = PdfOptions { standards, creator, ..PdfOptions::default() };
        typst_pdf::pdf(&self.0, &options)
            .map_err(|errors| errors.first().map_or_else(|| typesetter("no reason given"), complaint))
    }

    /// Every run of printed text with its size in points, in the order it was laid.
    #[cfg(test)]
    pub(crate) fn runs(&self) -> Vec<(String, f64)> {
        self.0.pages().iter().flat_map(|page| runs(&page.frame)).collect()
    }

    /// All printed text without its spaces, so that a line break in a sentence does not matter.
    #[cfg(test)]
    pub(crate) fn text(&self) -> String {
        squeezed(&self.runs().into_iter().map(|(text, _)| text).collect::<String>())
    }
}

/// A text without spaces of any kind.
#[cfg(test)]
pub(crate) fn squeezed(text: &str) -> String {
    text.chars().filter(|c| !c.is_whitespace()).collect()
}

#[cfg(test)]
fn runs(frame: &typst::layout::Frame) -> Vec<(String, f64)> {
    use typst::layout::FrameItem;
    let mut out = Vec::new();
    for (_, item) in frame.items() {
        match item {
            FrameItem::Group(group) => out.extend(runs(&group.frame)),
            FrameItem::Text(text) => out.push((text.text.to_string(), text.size.to_pt())),
            _ => {}
        }
    }
    out
}

fn typesetter(message: impl AsRef<str>) -> PaperError {
    PaperError::Typesetter(message.as_ref().into())
}

fn complaint(of: &SourceDiagnostic) -> PaperError {
    let hints: String = of.hints.iter().map(|hint| format!("; {}", hint.v)).collect();
    typesetter(format!("{}{hints}", of.message))
}

/// Fails on the first text with a character that one of the faces cannot draw.
fn drawable(value: &Value, path: &str) -> Result<(), PaperError> {
    match value {
        Value::String(text) => {
            let lacking =
                |c: &char| !c.is_control() && FONTS.iter().any(|face| !face.info().coverage.contains(*c as u32));
            match text.chars().find(lacking) {
                Some(character) => Err(PaperError::Glyph { field: path.into(), text: text.as_str().into(), character }),
                None => Ok(()),
            }
        }
        Value::Array(list) => list.iter().enumerate().try_for_each(|(at, v)| drawable(v, &format!("{path}[{at}]"))),
        Value::Object(map) => map.iter().try_for_each(|(key, v)| {
            let dot = if path.is_empty() { "" } else { "." };
            drawable(v, &format!("{path}{dot}{key}"))
        }),
        Value::Null | Value::Bool(_) | Value::Number(_) => Ok(()),
    }
}

/// The little world the template lives in.
struct Desk {
    main: Source,
    common: Source,
    files: HashMap<FileId, Bytes>,
}

impl Desk {
    fn new(draft: &Draft) -> Self {
        let mut files: HashMap<FileId, Bytes> =
            draft.pictures.iter().map(|(name, svg)| (id(name), Bytes::new(svg.clone()))).collect();
        files.insert(id("data.json"), Bytes::from_string(draft.data.to_string()));
        Self {
            main: Source::new(id("paper.typ"), draft.template.to_owned()),
            common: Source::new(id(COMMON.0), COMMON.1.to_owned()),
            files,
        }
    }
}

fn id(name: &str) -> FileId {
    let path = VirtualPath::new(name).expect("our file names are plain words with a suffix");
    RootedPath::new(VirtualRoot::Project, path).intern()
}

fn absent(id: FileId) -> FileError {
    FileError::NotFound(id.get().vpath().get_without_slash().into())
}

impl World for Desk {
    fn library(&self) -> &LazyHash<Library> {
        &LIBRARY
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &BOOK
    }

    fn main(&self) -> FileId {
        self.main.id()
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        [&self.main, &self.common].into_iter().find(|source| source.id() == id).cloned().ok_or_else(|| absent(id))
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        self.files.get(&id).cloned().ok_or_else(|| absent(id))
    }

    fn font(&self, index: usize) -> Option<Font> {
        FONTS.get(index).cloned()
    }

    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        None
    }
}
