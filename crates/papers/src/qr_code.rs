//! An address as a code that a phone's camera reads.
//!
//! The code is a QR code (ISO/IEC 18004, from memory): correction level M, since a paper on a site gets dirty,
//! and the quiet zone of four modules that the standard asks for around it.

use std::fmt::Write;

use fast_qr::qr::QRBuilder;
use fast_qr::{ECL, QRCode};

use crate::error::PaperError;

/// Blank modules around the code.
const QUIET: usize = 4;
/// Longest address taken: with more, the modules are too small to be read off a wall.
const LONGEST: usize = 200;

/// An address checked for printing.
pub(crate) struct QrCode {
    pub(crate) address: String,
    qr: QRCode,
}

impl QrCode {
    /// The code of a web address.
    ///
    /// # Errors
    /// It is no web address, or too long.
    pub(crate) fn of(address: &str) -> Result<Self, PaperError> {
        let address = address.trim();
        let wrong = || {
            PaperError::field(
                "link",
                format!("{address:?}"),
                "a web address of at most 200 signs, such as https://slabs.example.org/s/4f2a",
            )
        };
        let rest = ["https://", "http://"].into_iter().find_map(|scheme| address.strip_prefix(scheme));
        let host = rest.and_then(|rest| rest.split(['/', '?', '#']).next()).unwrap_or_default();
        if host.is_empty() || address.len() > LONGEST || !address.chars().all(|c| c.is_ascii_graphic()) {
            return Err(wrong());
        }
        let qr = QRBuilder::new(address).ecl(ECL::M).build().map_err(|_| wrong())?;
        Ok(Self { address: address.to_owned(), qr })
    }

    /// Modules on a side, the quiet zone counted.
    fn side(&self) -> usize {
        self.qr.size + 2 * QUIET
    }

    /// Whether the module is dark; those of the quiet zone are not.
    fn dark(&self, row: usize, column: usize) -> bool {
        let inside = |at: usize| (QUIET..QUIET + self.qr.size).contains(&at);
        inside(row) && inside(column) && self.qr[row - QUIET][column - QUIET].value()
    }

    /// The code as a drawing: black on white whatever the paper's colors are.
    pub(crate) fn svg(&self) -> Vec<u8> {
        let side = self.side();
        let mut path = String::new();
        for row in 0..side {
            let mut column = 0;
            while column < side {
                let run = (column..side).take_while(|at| self.dark(row, *at)).count();
                if run > 0 {
                    // Writing to a string cannot fail.
                    let _ = write!(path, "M{column} {row}h{run}v1h-{run}z");
                }
                column += run.max(1);
            }
        }
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {side} {side}\" shape-rendering=\"crispEdges\">\
             <path fill=\"#fff\" d=\"M0 0h{side}v{side}h-{side}z\"/><path fill=\"#000\" d=\"{path}\"/></svg>"
        )
        .into_bytes()
    }
}

#[cfg(test)]
mod tests {
    use super::QrCode;

    /// Paints the drawing's own path, not the modules, with `dots` dots to a module, and has it read by a
    /// decoder that shares nothing with the library that drew it.
    fn read_back(code: &QrCode, dots: usize) -> String {
        let svg = String::from_utf8(code.svg()).expect("text");
        let number = |text: &str| text.parse::<usize>().expect("a whole number");
        let side = number(svg.split("viewBox=\"0 0 ").nth(1).and_then(|rest| rest.split(' ').next()).expect("a side"));
        let path = svg.rsplit("d=\"").next().and_then(|rest| rest.split('"').next()).expect("a path");
        let mut dark = vec![false; side * side];
        for run in path.split('z').filter(|run| !run.is_empty()) {
            let (start, rest) = run[1..].split_once('h').expect("a run");
            let (column, row) = start.split_once(' ').expect("a corner");
            let width = number(rest.split('v').next().expect("a width"));
            let first = number(row) * side + number(column);
            dark[first..first + width].fill(true);
        }
        let size = side * dots;
        let gray = |x: usize, y: usize| if dark[(y / dots) * side + x / dots] { 0 } else { 255 };
        let mut picture = rqrr::PreparedImage::prepare_from_greyscale(size, size, gray);
        let grids = picture.detect_grids();
        assert_eq!(grids.len(), 1, "one code in the picture");
        grids[0].decode().expect("it is read").1
    }

    #[test]
    fn an_outside_decoder_reads_the_address_back() {
        let long = format!("https://slabs.example.org/s/{}", "0123456789abcdef".repeat(4));
        let longest = format!("https://slabs.example.org/s/{}", "z".repeat(172));
        let all = ["http://10.0.0.7:8712/s/4f2a", "https://slabs.example.org/?a=b&c=%C3%B1#top", &long, &longest];
        for address in all {
            for dots in [3, 4, 7] {
                assert_eq!(read_back(&QrCode::of(address).expect("an address"), dots), address, "{dots} dots");
            }
        }
    }

    #[test]
    fn what_is_no_web_address_is_refused() {
        let long = format!("https://slabs.example.org/s/{}", "z".repeat(173));
        for odd in [
            "",
            "slabs.example.org",
            "javascript:alert(1)",
            "https://",
            "https:///s/1",
            "https://a b",
            "https://ñ.example",
            &long,
        ] {
            let error = QrCode::of(odd).err().unwrap_or_else(|| panic!("{odd} was taken")).to_string();
            assert!(error.starts_with("link: ") && error.contains("accepted: a web address"), "{error}");
        }
        assert_eq!(
            QrCode::of(" https://slabs.example.org/s/1 ").expect("taken").address,
            "https://slabs.example.org/s/1"
        );
    }
}
