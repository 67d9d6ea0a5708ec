//! The charts of a study: what each input explains, how it moves a milestone, what ready tanks have in common, and
//! how sure all that is.
//!
//! ```text
//! bars          shares with their intervals, or ranks, or ranges; one row an input (bars_rows, bars_words)
//! plane         mean size of effects against their spread
//! scatter       a milestone against its strongest inputs
//! regions       the inputs that differ most between tanks that are ready by a day and the others
//! convergence   the widest interval against the number of members
//! across        the axis of an input; small      panels side by side; hues       a colour per group
//! titles        what was found, in words
//! ```

mod across;
mod bars;
mod bars_rows;
mod bars_words;
mod convergence;
mod convergence_notes;
mod hues;
mod plane;
mod regions;
mod running_median;
mod scatter;
mod small;
mod titles;

use crate::output::study::Story;

use super::figure::Figure;

/// Milestones that have a chart of bars, or of effects.
const WITH_BARS: usize = 4;

/// All charts there is something to draw for.
pub fn figures(story: &Story<'_>) -> Vec<Figure> {
    let found = story.findings.found.iter().take(WITH_BARS);
    let mut figures: Vec<Figure> = found
        .clone()
        .filter_map(|found| bars::figure(story, found))
        .collect();
    figures.extend(found.filter_map(|found| plane::figure(story, found)));
    figures.extend(scatter::figure(story));
    figures.extend(regions::figure(story));
    figures.extend(convergence::figure(story));
    figures
}
