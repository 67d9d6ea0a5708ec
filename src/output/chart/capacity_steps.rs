//! The two steps of nitrification: how much each could oxidise, and from when that covers what is
//! asked of it.

use crate::analysis::ready::OxidationStep;
use crate::engine::result::Reading;

use super::Story;
use super::axis::Axis;
use super::rect::Point;
use super::series::{lowest, of_day};
use super::style::{AMMONIA, Colour, NITRITE};

/// One of the two steps.
pub struct Step {
    /// Which.
    pub step: OxidationStep,
    /// Title of its panel.
    pub title: &'static str,
    /// Its colour.
    pub colour: Colour,
    /// Lowest capacity of each day, mg N a day.
    pub capacity: Vec<Point>,
    /// First day from which it covers what comes in, to the end.
    pub covers_load: Option<u32>,
    /// First day from which it covers the feed, to the end.
    pub covers_feed: Option<u32>,
}

/// Both steps of a run against what comes in.
pub fn steps(story: &Story<'_>, load: &[Point]) -> [Step; 2] {
    let step = |step, title, colour, value: fn(&Reading) -> f64, covers_feed| {
        let capacity: Vec<Point> = (0..=story.run.input.last_day)
            .filter_map(|day| {
                let low = lowest(&of_day(story.run, day), value)?;
                Some((f64::from(day) + 0.5, value(low)))
            })
            .collect();
        Step {
            step,
            title,
            colour,
            covers_load: covers_from(&capacity, load),
            covers_feed,
            capacity,
        }
    };
    let from = story.verdict.capacity_covers_from;
    [
        step(
            OxidationStep::Ammonia,
            "Ammonia step",
            AMMONIA,
            |r| r.ammonia_capacity_mg_n_per_day,
            from[0],
        ),
        step(
            OxidationStep::Nitrite,
            "Nitrite step",
            NITRITE,
            |r| r.nitrite_capacity_mg_n_per_day,
            from[1],
        ),
    ]
}

impl Step {
    /// Its name in the middle of a sentence.
    pub fn name(&self) -> &'static str {
        match self.step {
            OxidationStep::Ammonia => "ammonia step",
            OxidationStep::Nitrite => "nitrite step",
        }
    }
}

/// First day from which capacity is at least the load, every day to the end.
fn covers_from(capacity: &[Point], load: &[Point]) -> Option<u32> {
    let mut from = None;
    for (could, comes) in capacity.iter().zip(load) {
        from = match (could.1 >= comes.1, from) {
            (true, None) => Some(could.0.floor() as u32),
            (true, since) => since,
            (false, _) => None,
        };
    }
    from
}

/// Where the capacity of a step first covers something for good.
pub struct Crossing {
    /// Its place on the curve of the capacity.
    pub at: Point,
    /// What it covers and since when.
    pub words: String,
    /// Whether it is what comes in, which a line through the panel shows, or the feed alone.
    pub is_load: bool,
}

/// The crossings of a step that lie on the axis.
pub fn crossings(story: &Story<'_>, step: &Step, up: &Axis) -> Vec<Crossing> {
    let feed = if story.verdict.feed_is_planned {
        "the planned feed"
    } else {
        "a usual feed"
    };
    let crossing = |day: Option<u32>, what: String, is_load| {
        let at = f64::from(day?) + 0.5;
        let same = step.capacity.iter().find(|p| p.0 == at)?;
        let when = match day? {
            0 => "from the start".to_string(),
            day => format!("from {}", story.calendar().day(day)),
        };
        up.holds(same.1).then(|| Crossing {
            at: *same,
            words: format!("covers {what} {when}"),
            is_load,
        })
    };
    let load = "what comes in".to_string();
    let all = if step.covers_load == step.covers_feed {
        vec![crossing(
            step.covers_load,
            format!("{load} and {feed}"),
            true,
        )]
    } else {
        vec![
            crossing(step.covers_load, load, true),
            crossing(step.covers_feed, feed.to_string(), false),
        ]
    };
    all.into_iter().flatten().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_crossing_that_lasts_counts() {
        let load = [(0.5, 5.0), (1.5, 5.0), (2.5, 5.0), (3.5, 5.0)];
        let could = [(0.5, 6.0), (1.5, 4.0), (2.5, 5.0), (3.5, 9.0)];
        assert_eq!(covers_from(&could, &load), Some(2));
        assert_eq!(covers_from(&could[..2], &load[..2]), None);
    }
}
