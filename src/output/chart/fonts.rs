//! The two faces of the charts, and how wide text is in them.

use std::sync::LazyLock;

/// The family both faces belong to; no system font is ever read.
pub const FAMILY: &str = "Inter";

/// One of the two embedded faces.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Face {
    /// Weight 400.
    Regular,
    /// Weight 600.
    SemiBold,
}

/// Both faces.
pub const FACES: [Face; 2] = [Face::Regular, Face::SemiBold];

/// Height of capitals over the base line, as a share of the size.
pub const CAP_HEIGHT: f64 = 0.727;
/// Height of the tallest letters over the base line, as a share of the size.
pub const ASCENT: f64 = 0.76;
/// Depth of the lowest letters under the base line, as a share of the size.
pub const DESCENT: f64 = 0.21;

static REGULAR: LazyLock<ttf_parser::Face<'static>> = LazyLock::new(|| parsed(Face::Regular));
static SEMI_BOLD: LazyLock<ttf_parser::Face<'static>> = LazyLock::new(|| parsed(Face::SemiBold));

fn parsed(face: Face) -> ttf_parser::Face<'static> {
    ttf_parser::Face::parse(face.ttf(), 0).expect("the embedded face is sound: a test reads it")
}

impl Face {
    /// The file the program measures and draws with.
    pub fn ttf(self) -> &'static [u8] {
        match self {
            Face::Regular => include_bytes!("fonts/Inter-Regular.ttf"),
            Face::SemiBold => include_bytes!("fonts/Inter-SemiBold.ttf"),
        }
    }
    /// The same face, packed for browsers.
    pub fn woff2(self) -> &'static [u8] {
        match self {
            Face::Regular => include_bytes!("fonts/Inter-Regular.woff2"),
            Face::SemiBold => include_bytes!("fonts/Inter-SemiBold.woff2"),
        }
    }
    /// Weight as SVG and CSS write it.
    pub fn weight(self) -> u32 {
        match self {
            Face::Regular => 400,
            Face::SemiBold => 600,
        }
    }
    fn parsed(self) -> &'static ttf_parser::Face<'static> {
        match self {
            Face::Regular => &REGULAR,
            Face::SemiBold => &SEMI_BOLD,
        }
    }
    /// Whether the face can draw a character.
    pub fn draws(self, letter: char) -> bool {
        self.parsed().glyph_index(letter).is_some()
    }
    /// Width of a text of a size, pixels: the sum of its advances.
    ///
    /// Kerning is left out, so the shaped text is at most this wide.
    pub fn width(self, text: &str, size: f64) -> f64 {
        let face = self.parsed();
        let advance = |letter| {
            let glyph = face.glyph_index(letter)?;
            face.glyph_hor_advance(glyph)
        };
        let units: f64 = text.chars().filter_map(advance).map(f64::from).sum();
        units * size / f64::from(face.units_per_em())
    }
    /// The text with a question mark for every character the face cannot draw, so that a name in
    /// another script leaves a trace instead of a gap.
    pub fn drawable(self, text: &str) -> String {
        text.chars()
            .map(|letter| if self.draws(letter) { letter } else { '?' })
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_faces_draw_the_letters_of_chemistry() {
        for face in FACES {
            for letter in "NH₄⁺ CO₂ O₂ PO₄³⁻ µmol/m²/s ≤ ≥ − × ° – · …".chars()
            {
                assert!(face.draws(letter), "{face:?} lacks {letter}");
            }
        }
    }

    #[test]
    fn bold_text_is_wider_and_width_grows_with_size() {
        let (plain, bold) = (Face::Regular, Face::SemiBold);
        assert!(bold.width("nitrite", 13.0) > plain.width("nitrite", 13.0));
        let twice = plain.width("nitrite", 26.0) / plain.width("nitrite", 13.0);
        assert!((twice - 2.0).abs() < 1e-12, "width is proportional to size");
    }

    #[test]
    fn a_letter_without_a_glyph_becomes_a_question_mark() {
        assert_eq!(Face::Regular.drawable("a漢b"), "a?b");
    }
}
