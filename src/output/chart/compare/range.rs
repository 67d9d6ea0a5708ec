//! The differences of one plan from the first: a thin bar, a thick one, a disc at the mean with words over it,
//! and a piece of dark line where there is no difference.

use crate::analysis::compare::effect::Effect;
use crate::output::chart::figure::{Anchor, Label, Shape};
use crate::output::chart::sheet::{Sheet, bold};
use crate::output::chart::style::{Colour, INK, Pen, WHITE};
use crate::output::chart::words::{number, signed};

/// From the middle of a row up to the words, and down to the bar.
const WORDS_UP: f64 = 3.0;
const BAR_DOWN: f64 = 9.0;
/// Half of the piece of line at no difference: the words over it stay clear.
const HALF_LINE: f64 = 8.0;
/// Widths of both bars; radii of the disc and of its white ring.
const THIN: f64 = 1.4;
const THICK: f64 = 5.0;
const DISC: f64 = 4.0;
const RING: f64 = 5.4;
/// Clear room between words and the frame, pixels.
const CLEAR: f64 = 3.0;

/// Draws them in a panel, about a height of the page.
pub fn draw(sheet: &mut Sheet, at: usize, effect: &Effect, middle: f64, colour: Colour) {
    let panel = &sheet.figure.panels[at];
    let [p05, p25, _, p75, p95] = effect.points.map(|value| panel.x(value));
    let (mean, nothing, y) = (panel.x(effect.mean), panel.x(0.0), middle + BAR_DOWN);
    let label = words(effect, (panel.frame.left, panel.frame.right), mean, middle);
    let level = |from: f64, to: f64, width: f64| {
        Shape::Path(vec![(from, y), (to, y)], Pen::curve(colour).wide(width))
    };
    let upright = vec![(nothing, y - HALF_LINE), (nothing, y + HALF_LINE)];
    for shape in [
        Shape::Path(upright, Pen::hair(INK)),
        level(p05, p95, THIN),
        level(p25, p75, THICK),
        Shape::Disc((mean, y), RING, WHITE),
        Shape::Disc((mean, y), DISC, colour),
    ] {
        sheet.shape(shape);
    }
    sheet.figure.labels.push(label);
}

/// The words over the disc, kept inside the frame.
fn words(effect: &Effect, (left, right): (f64, f64), mean: f64, middle: f64) -> Label {
    let words = in_words(effect);
    let label = |x: f64| {
        let words = vec![bold(&words, INK)];
        Label::new(words, Anchor::Middle, x, middle - WORDS_UP)
    };
    let half = label(0.0).space.width() / 2.0 + CLEAR;
    label(mean.clamp(left + half, right - half))
}

/// `−3.1 ± 0.4`: both to the place in which the error begins to count.
pub fn in_words(effect: &Effect) -> String {
    let (mean, error) = (effect.mean, effect.standard_error);
    let is_sure = error == 0.0;
    let digits = match if is_sure { mean.abs() / 10.0 } else { error } {
        size if size >= 2.95 => 0,
        size if size >= 0.295 => 1,
        size if size >= 0.0295 => 2,
        size if size >= 0.00295 => 3,
        _ => 4,
    };
    match is_sure {
        true if mean == 0.0 => "0".to_string(),
        true => signed(mean, digits),
        false => format!("{} ± {}", signed(mean, digits), number(error, digits)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn mean_and_error_have_the_digits_that_count() {
        let said = |mean, standard_error| {
            in_words(&Effect {
                pairs: 9,
                mean,
                standard_error,
                points: [mean; 5],
            })
        };
        assert_eq!(said(-3.123, 0.44), "−3.1 ± 0.4");
        assert_eq!(said(82.6, 25.0), "+83 ± 25");
        assert_eq!(said(-0.483, 0.048), "−0.48 ± 0.05");
        assert_eq!(said(0.0112, 0.0006), "+0.0112 ± 0.0006");
        assert_eq!(said(-236.8, 0.0), "−237");
        assert_eq!(said(0.0, 0.0), "0");
    }
}
