//! Names of what the axes of a map are set to, thinned where there is no room for all.

use crate::analysis::sweep::axis::Axis;
use crate::base::units::digits;
use crate::output::chart::figure::{Anchor, Panel, Span, width_of};
use crate::output::chart::fonts::Face;
use crate::output::chart::rect::Point;
use crate::output::chart::sheet::{Sheet, bold, fitting, plain, small};
use crate::output::chart::style::{INK, MUTED, NAME};
use crate::output::sweep::words::setting;

/// From the frame to the names beside it; from its foot down to the names and to the path below them.
const BESIDE: f64 = 12.0;
const BELOW: f64 = 22.0;
const PATH_BELOW: f64 = 46.0;
/// Least room between two names side by side, and over each other.
const APART: f64 = 8.0;
const LEADING: f64 = 17.0;
/// From the middle of a name to its base line.
const TO_MIDDLE: f64 = 4.5;

/// Names of an axis: in words where these have room, else bare numbers with the unit behind the path.
#[derive(Debug, Clone, PartialEq)]
pub struct Names {
    /// One per setting.
    pub words: Vec<String>,
    /// What is set, in words; its path where there are none.
    pub what: String,
    /// The path behind these words; none where it stands for itself.
    path: Option<String>,
    /// Width of the widest, pixels.
    pub widest: f64,
}

impl Names {
    /// The names of an axis, none wider than some room if that can be.
    pub fn of(axis: &Axis, room: f64) -> Names {
        let places = 0..axis.settings.len();
        let words = Names::with(places.map(|place| setting(axis, place)), axis, "");
        if words.widest <= room {
            return words;
        }
        let numbers = axis.settings.iter().map(|setting| digits(setting.number));
        Names::with(numbers, axis, &axis.unit)
    }
    fn with(words: impl Iterator<Item = String>, axis: &Axis, unit: &str) -> Names {
        let words: Vec<String> = words.collect();
        let widths = words.iter().map(|words| width_of(&[plain(words, INK)]));
        Names {
            widest: widths.fold(0.0, f64::max),
            words,
            what: match unit {
                "" => axis.words().to_string(),
                unit => format!("{}, {unit}", axis.words()),
            },
            path: axis.name.as_ref().map(|_| axis.path.clone()),
        }
    }
    /// What is set, and its path in muted ink where both have room.
    pub fn head(&self, room: f64) -> Vec<Span> {
        let what = self.what.clone();
        let what = fitting(&[what], Face::SemiBold, NAME, room);
        let alone = vec![bold(&what, INK)];
        let with_path = self.path.iter().map(|path| {
            let path = small(path, MUTED);
            alone.iter().cloned().chain([path]).collect::<Vec<Span>>()
        });
        let mut fits = with_path.filter(|spans| width_of(spans) <= room);
        fits.next().unwrap_or(alone)
    }
}

/// Every how many-th of a number of names has room, each taking `each` of `room`.
pub fn stride(count: usize, each: f64, room: f64) -> usize {
    let step = room / count as f64;
    (each / step).ceil().max(1.0) as usize
}

/// Places that are named: every so many-th from the first, and the last in place of one too near to it.
pub fn named(count: usize, stride: usize) -> Vec<usize> {
    let mut places: Vec<usize> = (0..count).step_by(stride).collect();
    let last = count - 1;
    if places.last().is_some_and(|&place| place != last) {
        if places.len() > 1 && last - places[places.len() - 1] < stride {
            places.pop();
        }
        places.push(last);
    }
    places
}

/// Names the columns of a map, and below them what they are; names may stand out at both sides by so much.
pub fn columns(sheet: &mut Sheet, panel: &Panel, axis: &Axis, out: f64) {
    let (frame, count) = (panel.frame, axis.settings.len());
    let names = Names::of(axis, frame.width() / count as f64 + 2.0 * out);
    let stride = stride(count, names.widest + APART, frame.width());
    for place in named(count, stride) {
        let words = vec![plain(&names.words[place], INK)];
        let x = panel.x(place as f64 + 0.5);
        sheet.say(words, Anchor::Middle, x, frame.bottom + BELOW);
    }
    let x = (frame.left + frame.right) / 2.0;
    let y = frame.bottom + PATH_BELOW;
    sheet.say(names.head(frame.width()), Anchor::Middle, x, y);
}

/// Names the rows of a map, and at a place over them what they are.
pub fn rows(sheet: &mut Sheet, panel: &Panel, names: &Names, (left, baseline): Point) {
    let (frame, count) = (panel.frame, names.words.len());
    for place in named(count, stride(count, LEADING, frame.height())) {
        let words = vec![plain(&names.words[place], INK)];
        let y = panel.y(place as f64 + 0.5) + TO_MIDDLE;
        sheet.say(words, Anchor::End, frame.left - BESIDE, y);
    }
    sheet.say(
        names.head(frame.right - left),
        Anchor::Start,
        left,
        baseline,
    );
}

/// Words in as many lines as they need in some room.
pub fn folded(words: &str, room: f64, span: impl Fn(&str) -> Span) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in words.split(' ') {
        let longer = lines.last().map(|line| format!("{line} {word}"));
        let longer = longer.filter(|line| width_of(&[span(line)]) <= room);
        match (longer, lines.last_mut()) {
            (Some(longer), Some(last)) => *last = longer,
            _ => lines.push(word.to_string()),
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_and_the_last_are_always_named_and_never_too_near_to_others() {
        assert_eq!(named(7, 1), [0, 1, 2, 3, 4, 5, 6]);
        assert_eq!(named(7, 3), [0, 3, 6]);
        assert_eq!(named(8, 3), [0, 3, 7]);
        assert_eq!(named(2, 5), [0, 1]);
        assert_eq!(named(1, 1), [0]);
    }
}
