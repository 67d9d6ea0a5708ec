//! What is varied as one text: `changes.early.share=20 %..80 %:4`, a path, both ends and how many values.

use crate::analysis::sweep::axis::Axis;
use crate::base::units::quantity;
use crate::scenario::problem::{Place, Problem};

use super::division::{divided, ends, refuse_parts};

/// How it is written.
pub const EXAMPLE: &str = "--vary 'changes.early.share=20 %..80 %:4'";
/// Fewest values of an axis.
const FEWEST: usize = 2;
/// Most values of an axis: more have no place on any page.
pub(super) const MOST: usize = 10_000;
/// An axis as it was written.
pub struct Spec {
    /// What it says.
    pub axis: Axis,
    /// Where the path stands.
    pub place: Place,
}

pub(super) type Refused = Box<Problem>;

/// Reads a text that stands in a file of its own.
pub fn read(file: usize, text: &str) -> Result<Spec, Refused> {
    let whole = Place::new(file, 0..text.len());
    let form = |title: &str| Box::new(Problem::at(&whole, title).help(like()));
    let (path, rest) = text
        .split_once('=')
        .ok_or_else(|| form("it is not said what is varied"))?;
    let (range, count) = rest
        .rsplit_once(':')
        .ok_or_else(|| form("it is not said how many values there are"))?;
    let start = path.len() + 1;
    let of_range = Place::new(file, start..start + range.len());
    let of_count = Place::new(file, start + range.len() + 1..text.len());
    let place = Place::new(file, 0..path.len());
    let path = bare(path.trim(), &place)?;
    let count = how_many(count.trim(), &of_count)?;
    let (first, last) = quantity::ends(range).ok_or_else(|| {
        Box::new(Problem::at(&of_range, "a range has two ends with two dots between").help(like()))
    })?;
    let range = ends(&first, &last, &of_range)?;
    let axis = divided(path, &range, count);
    refuse_parts(&axis, &range, &of_count)?;
    Ok(Spec { axis, place })
}

pub(super) fn like() -> String {
    format!("write it like {EXAMPLE}: a path, both ends with their unit, how many values")
}

/// A dotted path of bare names.
fn bare<'a>(path: &'a str, place: &Place) -> Result<&'a str, Refused> {
    let is_sign = |sign: char| sign.is_ascii_alphanumeric() || matches!(sign, '_' | '-');
    let is_name = |name: &str| !name.is_empty() && name.chars().all(is_sign);
    match path.split('.').all(is_name) {
        true => Ok(path),
        false => Err(Box::new(
            Problem::at(place, format!("\"{path}\" is no dotted path of names")).help(like()),
        )),
    }
}

fn how_many(text: &str, place: &Place) -> Result<usize, Refused> {
    let count = text.parse().ok();
    count
        .filter(|count| (FEWEST..=MOST).contains(count))
        .ok_or_else(|| {
            let title = format!("\"{text}\" is no number of values");
            let problem = Problem::at(place, title).label(format!("allowed: {FEWEST} to {MOST}"));
            Box::new(problem.help(like()))
        })
}

/// The problem of a path that is varied twice.
pub fn twice(spec: &Spec) -> Problem {
    Problem::at(&spec.place, format!("{} is varied twice", spec.axis.path))
        .help("vary another value beside it, or it alone")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn words(text: &str) -> Vec<String> {
        let axis = read(0, text).unwrap_or_else(|problem| panic!("{}", problem.title));
        axis.axis.settings.into_iter().map(|s| s.words).collect()
    }

    #[test]
    fn a_range_is_divided_evenly_and_keeps_its_ends_as_written() {
        assert_eq!(
            words("changes.early.share=20 %..80 %:4"),
            ["20 %", "40 %", "60 %", "80 %"]
        );
        assert_eq!(words("air.flow=0.10..1 L/min:2"), ["0.10 L/min", "1 L/min"]);
        assert_eq!(words("changes.early.every=1..7:4"), ["1", "3", "5", "7"]);
        assert_eq!(words("x=0..1 h:4")[1], "0.333333 h");
    }
}
