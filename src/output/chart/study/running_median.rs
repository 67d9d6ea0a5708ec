//! The running median: the middle of the runs in windows along an input.

use crate::analysis::study::input::{Input, Spread};
use crate::base::quantiles::quantile;
use crate::output::chart::later::later;
use crate::output::chart::rect::Point;
use crate::output::study::Story;

use super::across::across;

/// Most windows of the running median, and the runs of a window.
const WINDOWS: usize = 20;
const IN_A_WINDOW: usize = 50;
/// Fewest runs for a line: two windows.
pub(super) const FOR_A_LINE: usize = 2 * IN_A_WINDOW;

/// The middle of the runs in windows of equal number along an input; of settings, of each.
pub(super) fn running_median(input: &Input, points: &[Point], story: &Story<'_>) -> Vec<Point> {
    let mut order = points.to_vec();
    order.sort_by(|a, b| a.0.total_cmp(&b.0));
    let axis = across(input);
    let of_window = |slot: &[Point]| {
        let y = middle(slot.iter().map(|point| point.1));
        let last = f64::from(story.study.last_day);
        // between the last day and the line of those that are later there is nothing
        let y = if y > last && story.findings.found[0].milestone.is_a_ready_day() {
            later(story.study.last_day)
        } else {
            y
        };
        (middle(slot.iter().map(|point| point.0)), y)
    };
    let points: Vec<Point> = windows(input, &order).into_iter().map(of_window).collect();
    let inside = points.iter().filter(|point| axis.holds(point.0));
    inside.copied().collect()
}

/// Runs in the order of an input, in windows; none of too few runs for two.
fn windows<'a>(input: &Input, order: &'a [Point]) -> Vec<&'a [Point]> {
    if matches!(input.spread, Spread::Settings(_)) {
        let setting = |point: &Point| (point.0 + 0.5).floor();
        return order.chunk_by(|a, b| setting(a) == setting(b)).collect();
    }
    let count = (order.len() / IN_A_WINDOW).min(WINDOWS);
    let end = |window: usize| window * order.len() / count;
    match count {
        0 | 1 => Vec::new(),
        _ => (0..count)
            .map(|window| &order[end(window)..end(window + 1)])
            .collect(),
    }
}

/// The middle of some values.
pub(super) fn middle(values: impl Iterator<Item = f64>) -> f64 {
    let mut values: Vec<f64> = values.collect();
    values.sort_unstable_by(f64::total_cmp);
    quantile(&values, 0.5)
}
