//! Names of what the axes of a map are set to, thinned where there is no room for all.

use crate::analysis::sweep::axis::Axis;
use crate::base::units::digits;
use crate::output::chart::figure::{Anchor, Panel, width_of};
use crate::output::chart::fonts::Face;
use crate::output::chart::rect::Point;
use crate::output::chart::sheet::{Sheet, bold, fitting, plain};
use crate::output::chart::style::{INK, NAME};
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
    /// What is set.
    pub path: String,
    /// Width of the widest, pixels.
    pub widest: f64,
}

impl Names {
    /// The names of an axis, none wider than some room if that can be.
    pub fn of(axis: &Axis, room: f64) -> Names {
        let places = 0..axis.settings.len();
        let words = Names::with(places.map(|place| setting(axis, place)), axis.path.clone());
        if words.widest <= room {
            return words;
        }
        let path = match axis.unit.as_str() {
            "" => axis.path.clone(),
            unit => format!("{}, {unit}", axis.path),
        };
        let numbers = axis.settings.iter().map(|setting| digits(setting.number));
        Names::with(numbers, path)
    }
    fn with(words: impl Iterator<Item = String>, path: String) -> Names {
        let words: Vec<String> = words.collect();
        let widths = words.iter().map(|words| width_of(&[plain(words, INK)]));
        Names {
            widest: widths.fold(0.0, f64::max),
            words,
            path,
        }
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
    let path = fitted(&names.path, frame.width());
    let x = (frame.left + frame.right) / 2.0;
    let y = frame.bottom + PATH_BELOW;
    sheet.say(vec![bold(&path, INK)], Anchor::Middle, x, y);
}

/// Names the rows of a map, and at a place over them what they are.
pub fn rows(sheet: &mut Sheet, panel: &Panel, names: &Names, (left, baseline): Point) {
    let (frame, count) = (panel.frame, names.words.len());
    for place in named(count, stride(count, LEADING, frame.height())) {
        let words = vec![plain(&names.words[place], INK)];
        let y = panel.y(place as f64 + 0.5) + TO_MIDDLE;
        sheet.say(words, Anchor::End, frame.left - BESIDE, y);
    }
    let path = fitted(&names.path, frame.right - left);
    sheet.say(vec![bold(&path, INK)], Anchor::Start, left, baseline);
}

fn fitted(path: &str, room: f64) -> String {
    fitting(&[path.to_string()], Face::SemiBold, NAME, room)
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
