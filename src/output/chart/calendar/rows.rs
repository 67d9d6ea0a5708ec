//! A row per calendar: a bar per change on its day, as tall as its share.

use crate::analysis::calendar::score::Score;
use crate::output::chart::axis::{Axis, Scale, Tick};
use crate::output::chart::figure::Line;
use crate::output::chart::sheet::Sheet;
use crate::output::chart::style::Pen;
use crate::output::chart::weekly::Weekly;
use crate::output::chart::words::{counted, number, short};
use crate::output::text::words::capital;

use super::Drawn;

/// From the first row's upper edge to the last one's lower edge.
const TOP: f64 = 446.0;
const BOTTOM: f64 = 824.0;
/// Between two rows, with room for a title; from a row up to its title; tallest row.
const BETWEEN: f64 = 38.0;
const TITLE_UP: f64 = 12.0;
const TALLEST: f64 = 60.0;
/// Width of a bar, as a share of a day; widest and narrowest, pixels.
const OF_A_DAY: f64 = 0.5;
const WIDEST: f64 = 9.0;
const NARROWEST: f64 = 2.0;

/// Height of each of so many rows.
fn tall(count: usize) -> f64 {
    let count = count as f64;
    ((BOTTOM - TOP - BETWEEN * (count - 1.0)) / count).min(TALLEST)
}

/// Upper edge of the first of so many rows.
pub fn top(count: usize) -> f64 {
    BOTTOM - count as f64 * (tall(count) + BETWEEN) + BETWEEN
}

/// Draws a row for each, the last one just over the days.
pub fn draw(sheet: &mut Sheet, weekly: &Weekly<'_>, all: &[Drawn<'_>]) {
    let tall = tall(all.len());
    let shares = all.iter().flat_map(|one| &one.changes);
    let largest = shares.map(|(_, share)| *share).fold(0.0, f64::max);
    for (place, one) in all.iter().enumerate() {
        let after = (all.len() - 1 - place) as f64;
        let bottom = BOTTOM - after * (tall + BETWEEN);
        let mut panel = weekly.panel(bottom - tall, bottom, shares_up(largest));
        let width = (OF_A_DAY * (panel.x(1.0) - panel.x(0.0))).clamp(NARROWEST, WIDEST);
        let pen = Pen::hair(one.colour(place == 0)).wide(width);
        for &(day, share) in &one.changes {
            let x = f64::from(day) + 0.5;
            let ends = vec![(x, 0.0), (x, 100.0 * share)];
            panel.lines.push(Line::new("share changed", ends, pen));
        }
        let told = did(one, all[0].score);
        let at = sheet.panel(panel, &capital(&one.name), &told, TITLE_UP);
        if place + 1 == all.len() {
            weekly.foot(sheet, at);
        }
    }
}

/// Nothing and the largest share, in percent.
fn shares_up(largest: f64) -> Axis {
    let high = if largest > 0.0 {
        100.0 * largest
    } else {
        100.0
    };
    let ends = [0.0, high].map(|value| Tick {
        value,
        words: format!("{} %", number(value, 0)),
    });
    Axis {
        low: 0.0,
        high,
        scale: Scale::Even,
        ticks: ends.into(),
    }
}

/// `6 changes, 142 L; it holds in 60 of 100; middle peaks: ammonia raised to 5.4, nitrite 1.9 mg N/L`.
fn did(one: &Drawn<'_>, planned: &Score) -> String {
    let score = one.score;
    let peak = |place: usize, name: &str| {
        let [here, there] = [score, planned].map(|score| short(score.peaks[place][1]));
        let is_raised = here != there && score.raises(place, planned);
        format!("{name}{} {here}", if is_raised { " raised to" } else { "" })
    };
    format!(
        "{}, {} L; it holds in {} of 100; middle peaks: {}, {} mg N/L",
        counted(score.visits, "change", "changes"),
        number(score.litres, 0),
        number(score.of_100().floor(), 0),
        peak(0, "ammonia"),
        peak(1, "nitrite")
    )
}
