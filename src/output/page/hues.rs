//! The hues of the charts on a dark page: each as a line or a word, and as an area that bears light words.

use crate::output::chart::style::{
    AMMONIA, AWAY, BASE, CARE, CHANGE, CO2, Colour, DARK, DETRITUS, DUSK, GAS, GRID, INK, LIGHT,
    MUTED, NITRATE, NITRITE, OXYGEN, PLANTS, READY, SOIL, WATER, WHITE,
};

/// One hue, as the rules of a page write colours.
#[derive(Debug, Clone, Copy)]
pub struct Hue {
    /// The colour it is on light paper, and in the files of charts.
    pub of: Colour,
    /// Lines and words on dark paper.
    pub dark_line: &'static str,
    /// Areas on dark paper.
    pub dark_area: &'static str,
}

impl Hue {
    /// The colour on light paper as the files of charts write it.
    pub fn light(&self) -> String {
        let Colour(r, g, b) = self.of;
        format!("#{r:02X}{g:02X}{b:02X}")
    }
}

const fn hue(of: Colour, dark_line: &'static str, dark_area: &'static str) -> Hue {
    Hue {
        of,
        dark_line,
        dark_area,
    }
}

/// All of them.
#[rustfmt::skip]
pub const HUES: [Hue; 22] = [
    hue(AMMONIA, "#f2905a", "#f2905a"),
    hue(NITRITE, "#e08bb8", "#e08bb8"),
    hue(NITRATE, "#93aff2", "#93aff2"),
    hue(OXYGEN, "#62bcea", "#62bcea"),
    hue(CO2, "#ea8397", "#ea8397"),
    hue(PLANTS, "#5cc48f", "#1b6b43"),
    hue(LIGHT, "#d9bd4a", "#8a7010"),
    hue(INK, "#e9ecf0", "#e9ecf0"),
    hue(MUTED, "#a9b2bc", "#a9b2bc"),
    hue(GRID, "#282f37", "#282f37"),
    hue(BASE, "#67717c", "#67717c"),
    hue(CHANGE, "#86bbe6", "#2b6ca3"),
    hue(SOIL, "#c8b794", "#6b5e48"),
    hue(DETRITUS, "#b59a78", "#4d4132"),
    hue(WATER, "#7fb6d8", "#2d5f7d"),
    hue(GAS, "#9aa5b0", "#56606b"),
    hue(CARE, "#9bb86a", "#55703a"),
    hue(AWAY, "#1a2027", "#1a2027"),
    hue(DARK, "#232a36", "#232a36"),
    hue(DUSK, "#1b222c", "#1b222c"),
    hue(READY, "#63c4c6", "#1d6b6e"),
    hue(WHITE, "#12161b", "#12161b"),
];

/// The place of paper among them.
pub const fn paper() -> usize {
    HUES.len() - 1
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paper_is_the_last_of_them() {
        assert_eq!(HUES[paper()].of, WHITE);
    }

    /// Relative luminance of a colour as rules write it (WCAG 2.2).
    fn luminance(hex: &str) -> f64 {
        let part = |from: usize| {
            let byte = u8::from_str_radix(&hex[from..from + 2], 16).unwrap();
            let share = f64::from(byte) / 255.0;
            match share <= 0.04045 {
                true => share / 12.92,
                false => crate::base::maths::pow((share + 0.055) / 1.055, 2.4),
            }
        };
        0.2126 * part(1) + 0.7152 * part(3) + 0.0722 * part(5)
    }

    fn contrast(a: &str, b: &str) -> f64 {
        let (a, b) = (luminance(a), luminance(b));
        (a.max(b) + 0.05) / (a.min(b) + 0.05)
    }

    #[test]
    fn words_of_any_hue_can_be_read_on_dark_paper() {
        let paper = HUES[paper()].dark_line;
        let pale = [GRID, BASE, AWAY, DARK, DUSK, WHITE];
        for hue in HUES.iter().filter(|hue| !pale.contains(&hue.of)) {
            let own = contrast(hue.dark_line, paper);
            assert!(own >= 4.5, "{}: {own}", hue.light());
        }
        for area in [CHANGE, SOIL, DETRITUS, WATER, CARE, GAS, PLANTS, READY] {
            let hue = HUES.iter().find(|hue| hue.of == area).unwrap();
            let words = contrast(hue.dark_area, "#e9ecf0");
            assert!(words >= 4.5, "words on {}: {words}", hue.light());
        }
    }
}
