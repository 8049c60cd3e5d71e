//! Reads a drawing back and checks what every drawing promises.

use roxmltree::{Document, Node};

/// Attributes that a drawing may carry: none of them runs, loads or styles anything by itself.
const ATTRIBUTES: &[&str] = &[
    "aria-labelledby",
    "class",
    "clip-path",
    "clip-rule",
    "cx",
    "cy",
    "d",
    "data-item",
    "data-layer-of",
    "data-m",
    "data-x",
    "data-x0",
    "data-y",
    "data-y0",
    "data-zone",
    "fill",
    "fill-rule",
    "font-family",
    "font-size",
    "font-weight",
    "height",
    "id",
    "paint-order",
    "patternTransform",
    "patternUnits",
    "r",
    "role",
    "stroke",
    "stroke-dasharray",
    "stroke-linejoin",
    "stroke-width",
    "text-anchor",
    "transform",
    "viewBox",
    "width",
    "x",
    "y",
];
const ELEMENTS: &[&str] =
    &["svg", "title", "desc", "defs", "pattern", "clipPath", "g", "path", "rect", "circle", "text"];

/// What was found in a drawing.
pub(crate) struct Found {
    /// Coordinates held against the frame.
    pub(crate) coordinates: usize,
    /// All lettering with its size.
    pub(crate) texts: Vec<(String, f64)>,
}

/// Checks a drawing whose ids begin with `prefix`.
pub(crate) fn sound(svg: &str, prefix: &str) -> Found {
    let document = Document::parse(svg).expect("a drawing is well-formed XML");
    let root = document.root_element();
    assert_eq!(root.attribute("role"), Some("img"));
    for (name, id) in [("title", format!("{prefix}-title")), ("desc", format!("{prefix}-desc"))] {
        let node = root.children().find(|n| n.has_tag_name(("http://www.w3.org/2000/svg", name))).expect(name);
        assert_eq!(node.attribute("id"), Some(id.as_str()));
        assert!(!node.text().unwrap_or_default().is_empty(), "{name} says nothing");
    }
    let view: Vec<f64> = numbers(root.attribute("viewBox").expect("a viewBox"));
    let (width, height) = (view[2], view[3]);
    let mut found = Found { coordinates: 0, texts: Vec::new() };
    for node in root.descendants().filter(Node::is_element) {
        allowed(&node, prefix);
        if node.ancestors().any(|a| a.tag_name().name() == "pattern") {
            continue;
        }
        for (x, y) in reach(&node) {
            let inside = (-0.01..=width + 0.01).contains(&x) && (-0.01..=height + 0.01).contains(&y);
            assert!(inside, "{x}, {y} lies outside {width} by {height}: {:?}", &svg[node.range()]);
            found.coordinates += 2;
        }
        if node.tag_name().name() == "text" {
            let size = node.attribute("font-size").and_then(|s| s.parse().ok()).expect("text has a size");
            found.texts.push((node.text().unwrap_or_default().to_owned(), size));
        }
    }
    found
}

fn allowed(node: &Node<'_, '_>, prefix: &str) {
    assert!(ELEMENTS.contains(&node.tag_name().name()), "element {}", node.tag_name().name());
    for attribute in node.attributes() {
        let (name, value) = (attribute.name(), attribute.value());
        assert!(ATTRIBUTES.contains(&name), "attribute {name}");
        if name == "id" {
            assert!(value.starts_with(&format!("{prefix}-")), "id {value}");
        }
        if let Some(at) = value.strip_prefix("url(#").and_then(|v| v.strip_suffix(')')) {
            assert!(at.starts_with(&format!("{prefix}-")), "{value}");
            let there = node.document().descendants().any(|n| n.attribute("id") == Some(at));
            assert!(there, "{value} leads nowhere");
        } else if name != "data-item" && name != "data-zone" {
            assert!(!value.contains("url("), "{value}");
        }
    }
}

fn numbers(text: &str) -> Vec<f64> {
    text.split(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | '-')))
        .filter(|t| !t.is_empty())
        .map(|t| t.parse().expect("a number"))
        .collect()
}

/// The points that a node reaches to, its lettering by a narrow estimate of its own.
fn reach(node: &Node<'_, '_>) -> Vec<(f64, f64)> {
    let number = |name: &str| node.attribute(name).map(|v| v.parse::<f64>().expect("a number"));
    match node.tag_name().name() {
        "path" => numbers(node.attribute("d").expect("a path has d")).chunks(2).map(|p| (p[0], p[1])).collect(),
        "rect" => {
            let (x, y) = (number("x").expect("x"), number("y").expect("y"));
            vec![(x, y), (x + number("width").expect("width"), y + number("height").expect("height"))]
        }
        "circle" => {
            let (x, y, r) = (number("cx").expect("cx"), number("cy").expect("cy"), number("r").expect("r"));
            vec![(x - r, y - r), (x + r, y + r)]
        }
        "text" => {
            let (x, y) = (number("x").expect("x"), number("y").expect("y"));
            let size = number("font-size").expect("font-size");
            // About the mean of common sans-serif faces.
            let share = |c: char| if matches!(c, ' ' | 'i' | 'j' | 'l') { 0.25 } else { 0.5 };
            let wide = size * node.text().unwrap_or_default().chars().map(share).sum::<f64>();
            let (before, after) = match node.attribute("text-anchor") {
                Some("middle") => (wide / 2.0, wide / 2.0),
                Some("end") => (wide, 0.0),
                _ => (0.0, wide),
            };
            if node.has_attribute("transform") {
                vec![(x, y)]
            } else {
                vec![(x - before, y - 0.7 * size), (x + after, y)]
            }
        }
        _ => Vec::new(),
    }
}
