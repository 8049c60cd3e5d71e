//! Writing SVG: elements, escaping, the few inks and hatches.

use std::fmt::{Arguments, Write as _};

use crate::boxes::{Box2, Xy};
pub(crate) use crate::hatch::Hatch;

/// Lettering and strong strokes: 15:1 on the paper.
pub(crate) const INK: &str = "#1f1d1a";
/// The ground, lime.
pub(crate) const PAPER: &str = "#f6f4ef";
/// Fine strokes, cement.
pub(crate) const CEMENT: &str = "#6f6c66";
/// Grids and calm fills.
pub(crate) const PALE: &str = "#d5d1c8";
/// The one accent, iron: 8:1 on the paper.
pub(crate) const IRON: &str = "#7a3b1c";

/// How lettering stands at its point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Anchor {
    Start,
    Middle,
    End,
}

/// A piece of lettering.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Letters<'a> {
    pub(crate) size: f64,
    pub(crate) anchor: Anchor,
    pub(crate) bold: bool,
    pub(crate) ink: &'a str,
    /// A rim of paper around it, to be read on lines and hatches.
    pub(crate) halo: bool,
    /// Degrees clockwise about its point.
    pub(crate) turned: f64,
}

impl Letters<'_> {
    pub(crate) const fn new(size: f64) -> Self {
        Self { size, anchor: Anchor::Start, bold: false, ink: INK, halo: false, turned: 0.0 }
    }

    pub(crate) const fn at(self, anchor: Anchor) -> Self {
        Self { anchor, ..self }
    }

    pub(crate) const fn bold(self) -> Self {
        Self { bold: true, ..self }
    }

    pub(crate) const fn halo(self) -> Self {
        Self { halo: true, ..self }
    }
}

/// A drawing being written.
pub(crate) struct Svg {
    prefix: String,
    body: String,
}

impl Svg {
    pub(crate) fn new(prefix: &str) -> Self {
        let kept: String = prefix.chars().filter(|c| c.is_ascii_alphanumeric() || matches!(c, '-' | '_')).collect();
        let begins = kept.starts_with(|c: char| c.is_ascii_alphabetic());
        Self { prefix: if begins { kept } else { format!("p{kept}") }, body: String::with_capacity(8 * 1024) }
    }

    /// Adds markup. Whatever a person typed must have gone through [`escaped`].
    pub(crate) fn put(&mut self, markup: Arguments<'_>) {
        self.body.write_fmt(markup).expect("writing to a string cannot fail");
    }

    /// What all its ids begin with.
    pub(crate) fn prefix(&self) -> &str {
        &self.prefix
    }

    /// The reference to a hatch, as a value of `fill`.
    pub(crate) fn hatch(&self, hatch: Hatch) -> String {
        format!("url(#{}-{})", self.prefix, hatch.name())
    }

    /// Opens a group; `attributes` come with a leading space and escaped values.
    pub(crate) fn open(&mut self, attributes: &str) {
        self.put(format_args!("<g{attributes}>"));
    }

    pub(crate) fn close(&mut self) {
        self.body.push_str("</g>");
    }

    /// The name of the group just opened, shown by browsers when it is pointed at.
    pub(crate) fn title(&mut self, text: &str) {
        self.put(format_args!("<title>{}</title>", escaped(text)));
    }

    /// A stroke through points.
    pub(crate) fn stroke(&mut self, points: &[Xy], class: &str, (ink, width): (&str, f64), extra: &str) {
        let d = outline(points, false);
        self.put(format_args!(
            "<path class=\"{class}\" d=\"{d}\" fill=\"none\" stroke=\"{ink}\" stroke-width=\"{width}\"{extra}/>"
        ));
    }

    /// A closed shape.
    pub(crate) fn shape(&mut self, points: &[Xy], class: &str, fill: &str, (ink, width): (&str, f64)) {
        let d = outline(points, true);
        self.put(format_args!(
            "<path class=\"{class}\" d=\"{d}\" fill=\"{fill}\" stroke=\"{ink}\" stroke-width=\"{width}\" stroke-linejoin=\"round\"/>"
        ));
    }

    pub(crate) fn rect(&mut self, at: Box2, class: &str, fill: &str, (ink, width): (&str, f64)) {
        let (x, y, w, h) = (Num(at.left), Num(at.top), Num(at.width()), Num(at.height()));
        self.put(format_args!(
            "<rect class=\"{class}\" x=\"{x}\" y=\"{y}\" width=\"{w}\" height=\"{h}\" fill=\"{fill}\" stroke=\"{ink}\" stroke-width=\"{width}\"/>"
        ));
    }

    pub(crate) fn circle(&mut self, (x, y): Xy, radius: f64, class: &str, fill: &str, (ink, width): (&str, f64)) {
        let (x, y, r) = (Num(x), Num(y), Num(radius));
        self.put(format_args!(
            "<circle class=\"{class}\" cx=\"{x}\" cy=\"{y}\" r=\"{r}\" fill=\"{fill}\" stroke=\"{ink}\" stroke-width=\"{width}\"/>"
        ));
    }

    /// Lettering with its base line at the point.
    pub(crate) fn text(&mut self, (x, y): Xy, letters: Letters<'_>, text: &str) {
        let anchor = match letters.anchor {
            Anchor::Start => "",
            Anchor::Middle => " text-anchor=\"middle\"",
            Anchor::End => " text-anchor=\"end\"",
        };
        let weight = if letters.bold { " font-weight=\"700\"" } else { "" };
        let halo = if letters.halo {
            format!(" paint-order=\"stroke\" stroke=\"{PAPER}\" stroke-width=\"3\" stroke-linejoin=\"round\"")
        } else {
            String::new()
        };
        let (x, y) = (Num(x), Num(y));
        let turned = if letters.turned == 0.0 {
            String::new()
        } else {
            format!(" transform=\"rotate({} {x} {y})\"", Num(letters.turned))
        };
        let class = match (letters.ink, letters.halo) {
            (PAPER, _) => "p-text-light",
            (_, true) => "p-text p-halo",
            (_, false) => "p-text",
        };
        let (size, ink) = (letters.size, letters.ink);
        self.put(format_args!(
            "<text class=\"{class}\" x=\"{x}\" y=\"{y}\" font-size=\"{size}\" fill=\"{ink}\"{anchor}{weight}{halo}{turned}>{}</text>",
            escaped(text)
        ));
    }

    /// A swatch beside a drawing, which has what its fills refer to. Words stand beside it, so it says nothing itself.
    pub(crate) fn swatch(self, (width, height): (f64, f64)) -> String {
        let (width, height) = (Num(width), Num(height));
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} {height}\" width=\"{width}\" \
             height=\"{height}\" font-family=\"system-ui, sans-serif\" aria-hidden=\"true\">{}</svg>",
            self.body
        )
    }

    /// The whole drawing. `extra` are further attributes with a leading space.
    pub(crate) fn finish(self, (width, height): (f64, f64), title: &str, desc: &str, extra: &str) -> String {
        let Self { prefix, body } = self;
        let (width, height) = (Num(width), Num(height));
        let mut svg = format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"picture\" role=\"img\" viewBox=\"0 0 {width} {height}\" \
             width=\"{width}\" height=\"{height}\" font-family=\"system-ui, 'Noto Sans', 'DejaVu Sans', sans-serif\" \
             aria-labelledby=\"{prefix}-title {prefix}-desc\"{extra}>\
             <title id=\"{prefix}-title\">{}</title><desc id=\"{prefix}-desc\">{}</desc>",
            escaped(title),
            escaped(desc)
        );
        let used: Vec<Hatch> =
            Hatch::all().filter(|h| body.contains(&format!("url(#{prefix}-{})", h.name()))).collect();
        if !used.is_empty() {
            svg.push_str("<defs>");
            for hatch in used {
                let (side, turn, inside) = hatch.tile();
                let name = hatch.name();
                write!(
                    svg,
                    "<pattern id=\"{prefix}-{name}\" patternUnits=\"userSpaceOnUse\" width=\"{side}\" height=\"{side}\" patternTransform=\"rotate({turn})\">{inside}</pattern>"
                )
                .expect("writing to a string cannot fail");
            }
            svg.push_str("</defs>");
        }
        write!(
            svg,
            "<rect class=\"p-paper\" x=\"0\" y=\"0\" width=\"{width}\" height=\"{height}\" fill=\"{PAPER}\"/>{body}</svg>"
        )
        .expect("writing to a string cannot fail");
        svg
    }
}

/// A coordinate with two decimals at most: fine enough for any print, and short.
pub(crate) struct Num(pub(crate) f64);

impl std::fmt::Display for Num {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let rounded = (self.0 * 100.0).round() / 100.0;
        // No minus before a zero.
        write!(f, "{}", if rounded == 0.0 { 0.0 } else { rounded })
    }
}

/// The path through points.
pub(crate) fn outline(points: &[Xy], closed: bool) -> String {
    let mut d = String::with_capacity(points.len() * 12);
    for (at, (x, y)) in points.iter().enumerate() {
        let step = if at == 0 { 'M' } else { 'L' };
        write!(d, "{step}{} {} ", Num(*x), Num(*y)).expect("writing to a string cannot fail");
    }
    if closed {
        d.push('Z');
    }
    d.trim_end().to_owned()
}

/// A text as the content of an element or of an attribute. Characters that XML cannot hold become
/// the replacement character.
pub(crate) fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            '\t' | '\n' | '\r' => out.push(' '),
            '\0'..='\u{1f}' | '\u{fffe}' | '\u{ffff}' => out.push('\u{fffd}'),
            _ => out.push(c),
        }
    }
    out
}
