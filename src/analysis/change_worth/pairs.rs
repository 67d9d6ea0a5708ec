//! Changes within a week of each other, left out two at a time: what both do beyond the sum of each alone.

use crate::analysis::compare::effect::Effect;
use crate::analysis::ensemble::EnsembleError;
use crate::analysis::ensemble::member::{Member, Told};
use crate::analysis::figure_list::FigureOf;
use crate::analysis::levers::paired::days;
use crate::base::clock::DAY;
use crate::base::rounding::beyond_rounding;

use super::effects::{JUDGED, MOST_DELAY_DAYS, figure};
use super::planned::{Change, without};
use super::rounds::Rounds;

/// Changes no further apart are tried together, minutes: a week.
pub const NEAR_MINUTES: u32 = 7 * DAY;
/// Plausible tanks on which two are tried together.
pub const MEMBERS: usize = 64;

/// Two changes left out together.
///
/// ```text
/// beyond the sum = (both out − plan) − (first out − plan) − (second out − plan)     tank by tank
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Together {
    /// Which changes, by their places in the plan.
    pub changes: [usize; 2],
    /// Days by which the ready day comes later with both out, beyond the sum of each alone.
    pub days_later: Effect,
    /// The figures of [`JUDGED`], in that order: by how much they rise beyond the sum.
    pub judged: Vec<(&'static FigureOf, Effect)>,
}

/// What two changes do most beyond the sum of each alone.
#[derive(Debug, Clone, Copy)]
pub enum Beyond {
    /// The ready day comes later by so many days more.
    Later(f64),
    /// A figure rises by so much more, in its unit.
    Rises(&'static FigureOf, f64),
}

impl Together {
    /// What both do most beyond the sum: by half a day at least, else by what is told of a figure, and beyond
    /// chance; none where they just add up.
    pub fn strongest(&self) -> Option<Beyond> {
        let later = &self.days_later;
        if later.mean.abs() >= MOST_DELAY_DAYS && later.is_clear() {
            return Some(Beyond::Later(later.mean));
        }
        let strong = |(figure, effect): &&(&FigureOf, Effect)| {
            effect.mean.abs() >= figure.told_from && effect.is_clear()
        };
        let times = |(figure, effect): &(&FigureOf, Effect)| effect.mean.abs() / figure.told_from;
        let judged = self.judged.iter().filter(strong);
        let (figure, effect) = judged.max_by(|a, b| times(a).total_cmp(&times(b)))?;
        Some(Beyond::Rises(figure, effect.mean))
    }
}

impl Beyond {
    /// Place in a list: those of the ready day first, then by how many times what is told.
    fn rank(&self) -> (bool, f64) {
        match self {
            Beyond::Later(days) => (true, days.abs()),
            Beyond::Rises(figure, by) => (false, by.abs() / figure.told_from),
        }
    }
}

/// The pairs that do not just add up, the strongest first.
pub fn strong(pairs: &[Together]) -> Vec<(&Together, Beyond)> {
    let strong = pairs.iter();
    let mut strong: Vec<(&Together, Beyond)> = strong
        .filter_map(|pair| Some((pair, pair.strongest()?)))
        .collect();
    strong.sort_by(|(_, a), (_, b)| {
        let (a, b) = (a.rank(), b.rank());
        b.0.cmp(&a.0).then(b.1.total_cmp(&a.1))
    });
    strong
}

/// Which changes are tried together.
pub fn near(changes: &[Change]) -> Vec<[usize; 2]> {
    let places = 0..changes.len();
    let apart = |a: usize, b: usize| changes[b].minute.abs_diff(changes[a].minute);
    let of_one = |a: usize| {
        let later = a + 1..changes.len();
        let near = later.take_while(move |&b| apart(a, b) <= NEAR_MINUTES);
        near.map(move |b| [a, b])
    };
    places.flat_map(of_one).collect()
}

/// What each two do together; `alone` are the first members with each change left out alone.
///
/// # Errors
/// When somebody wishes to stop, or too many members fail.
pub fn together(
    rounds: &mut Rounds<'_, '_>,
    changes: &[Change],
    alone: &[Vec<Member>],
) -> Result<Vec<Together>, EnsembleError> {
    let near = near(changes);
    let both = |&[a, b]: &[usize; 2]| without(&[&changes[a], &changes[b]]);
    let both: Vec<_> = near.iter().map(both).collect();
    let members = alone.first().map_or(0, Vec::len);
    let last_day = rounds.case.input.last_day;
    let plan = rounds.plan[..members].to_vec();
    let mut found = Vec::with_capacity(near.len());
    rounds.run(&both, members, |place, out| {
        let [a, b] = near[place];
        let four = [&out, &alone[a], &alone[b], &plan];
        found.extend(beyond(near[place], four, last_day));
    })?;
    Ok(found)
}

fn beyond(changes: [usize; 2], four: [&Vec<Member>; 4], last_day: u32) -> Option<Together> {
    let judged = JUDGED.iter().filter_map(|name| {
        let figure = figure(name);
        Some((figure, sum(four, |told| (figure.read)(&told.figures))?))
    });
    Some(Together {
        changes,
        days_later: sum(four, |told| Some(days(told, last_day)))?,
        judged: judged.collect(),
    })
}

/// Both out, less each alone, and the plan again, tank by tank.
fn sum(four: [&Vec<Member>; 4], read: impl Fn(&Told) -> Option<f64>) -> Option<Effect> {
    let of = |members: &[Member], n: usize| read(members[n].told.as_ref().ok()?);
    let tanks = 0..four[0].len();
    let beyond = tanks.filter_map(|n| {
        let [both, first, second, plan] = four.map(|members| of(members, n));
        let (both, first, second, plan) = (both?, first?, second?, plan?);
        let size = [both, first, second, plan]
            .into_iter()
            .fold(0.0, |most: f64, value| most.max(value.abs()));
        Some(beyond_rounding((both - first) - (second - plan), size))
    });
    Effect::of_differences(beyond.collect())
}
