//! A code as a picture that a phone scans (ISO/IEC 18004, QR code).

use std::fmt::Write;

use qrcodegen::{QrCode, QrCodeEcc, QrSegment};

use crate::{Code, MARK};

/// Blank modules around the symbol, as the standard asks.
const QUIET: i32 = 4;

/// A QR code as a drawing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Symbol {
    /// How wide and high it is in modules, with the quiet zone around it.
    pub side: i32,
    /// The dark modules, as the path of an SVG whose unit is a module.
    pub path: String,
}

impl Symbol {
    /// The symbol of a code, behind an address or none: error correction M at the least, or better where that makes it no
    /// larger. Nothing where the address is too long for any symbol.
    pub fn of(address: &str, code: &Code) -> Option<Self> {
        let segments = [
            QrSegment::make_bytes(format!("{address}{MARK}").as_bytes()),
            // all its signs are of that set
            QrSegment::make_alphanumeric(&code.text()),
        ];
        let drawn = QrCode::encode_segments(&segments, QrCodeEcc::Medium).ok()?;
        Some(Self { side: drawn.size().saturating_add(2 * QUIET), path: path(&drawn) })
    }
}

/// A rectangle for each run of dark modules in a row.
fn path(drawn: &QrCode) -> String {
    let mut path = String::new();
    for y in 0..drawn.size() {
        let mut x = 0;
        while x < drawn.size() {
            let run = (x..drawn.size()).take_while(|x| drawn.get_module(*x, y)).count();
            let run = i32::try_from(run).unwrap_or(i32::MAX);
            if run > 0 {
                // writing to a text can't fail
                let _ = write!(path, "M{} {}h{run}v1h-{run}z", x + QUIET, y + QUIET);
            }
            x = x.saturating_add(run).saturating_add(1);
        }
    }
    path
}
