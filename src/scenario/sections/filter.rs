//! `[filter]`: what is printed on it, and the area its films have.

use crate::base::units::{digits, everyday};
use crate::scenario::draft::Draft;
use crate::scenario::reader::Reader;

const MINUTES_PER_HOUR: f64 = 60.0;

/// What `[filter]` says.
pub struct Filter {
    /// Flow printed on it, L/h.
    pub rated_l_per_h: Option<f64>,
    /// Area of films, m².
    pub film_m2: Option<f64>,
}

/// Reads `[filter]`.
pub fn read(file: &Reader<'_>) -> Filter {
    let section = file.section("filter");
    let rated = section.quantity("rated", &everyday::FLOW, (0.1, 10_000.0));
    let film = section.quantity("film_area", &everyday::AREA, (0.01, 10_000.0));
    section.close();
    Filter {
        rated_l_per_h: rated.value().map(|l_per_min| l_per_min * MINUTES_PER_HOUR),
        film_m2: film.value(),
    }
}

impl Filter {
    /// Says how often an hour the water goes through it.
    pub fn tell(&self, draft: &mut Draft<'_>, volume_l: f64) {
        let Some(rated) = self.rated_l_per_h else {
            return;
        };
        let share = draft.parameter("f_rated");
        draft.fact(
            "Filter",
            format!(
                "{} L/h printed, so about {:.0} L/h: {:.1} times the water an hour ({:.0} % of the print, common practice, no source)",
                digits(rated),
                share * rated,
                share * rated / volume_l,
                100.0 * share
            ),
        );
    }
}
