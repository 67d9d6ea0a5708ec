//! Changes within a week of each other, left out two at a time: what both do beyond the sum of each alone.

use crate::analysis::compare::effect::Effect;
use crate::analysis::ensemble::EnsembleError;
use crate::analysis::ensemble::member::{Member, Told};
use crate::analysis::figure_list::FigureOf;
use crate::analysis::levers::paired::days;
use crate::base::clock::DAY;

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

impl Together {
    /// Whether both do something else than the sum of each alone: by half a day, or by what is told of a figure,
    /// and beyond chance.
    pub fn is_strong(&self) -> bool {
        let strong = |effect: &Effect, from: f64| effect.mean.abs() >= from && effect.is_clear();
        let figures = self.judged.iter();
        strong(&self.days_later, MOST_DELAY_DAYS)
            || (figures.clone()).any(|(figure, effect)| strong(effect, figure.told_from))
    }
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
        Some((both? - first?) - (second? - plan?))
    });
    Effect::of_differences(beyond.collect())
}
