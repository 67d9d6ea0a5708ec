//! Which figure leads a sweep of one value: the one that moves most against the spread of the tanks.

use crate::analysis::ensemble::member::{Member, Told};
use crate::analysis::levers::paired::days;
use crate::base::moments::Moments;

use super::Sweep;

/// How far the mean of a figure moves over the grid, against how far the tanks of one point lie apart.
///
/// ```text
/// (highest mean − lowest mean)/(mean over the points of the standard deviation of their tanks)
/// ```
///
/// Nothing where the mean does not move; infinite where it does and all tanks are alike.
fn moves(sweep: &Sweep, figure: impl Fn(&Told) -> Option<f64>) -> f64 {
    let of_member = |member: &Member| figure(member.told.as_ref().ok()?);
    let (mut means, mut spreads) = (Moments::default(), Moments::default());
    for point in &sweep.points {
        let mut tanks = Moments::default();
        let values = point.members.iter().filter_map(of_member);
        values.for_each(|value| tanks.add(value));
        means.add(tanks.mean());
        spreads.add(tanks.deviation().unwrap_or(0.0));
    }
    match means.most() - means.least() {
        moved if moved > 0.0 => moved / spreads.mean(),
        _ => 0.0,
    }
}

/// Whether the ready day moves more than the peak of ammonia, each against its own spread.
pub fn ready_day_leads(sweep: &Sweep) -> bool {
    let ready = moves(sweep, |told| Some(days(told, sweep.last_day)));
    ready > moves(sweep, |told| Some(told.figures.tan_peak.value))
}
