//! What the two confirming tests before the ready day should read.

use crate::analysis::kit::{Step, TestKit};
use crate::base::quantiles::quantiles;

use super::bands::SHARES;
use super::member::{Evening, Member};

/// What one confirming test should read, as card steps at [`SHARES`] of the members.
#[derive(Debug, Clone, PartialEq)]
pub struct Confirming {
    /// How many days before the ready day.
    pub days_before: u32,
    /// How many members have a ready day, and an evening this long before it.
    pub members: usize,
    /// Total ammonia.
    pub ammonia: [Step; SHARES.len()],
    /// Nitrite.
    pub nitrite: [Step; SHARES.len()],
}

/// The tests of the two evenings before each member's ready day, the earlier first; none where no member has
/// both a ready day and such an evening.
pub fn confirming(members: &[Member], kit: &TestKit) -> Vec<Confirming> {
    [2, 1]
        .into_iter()
        .filter_map(|days_before| {
            let told = members
                .iter()
                .filter_map(|member| member.told.as_ref().ok());
            let evening = told.filter_map(|told| {
                let day = told.ready.day?.checked_sub(days_before)?;
                told.evenings.of_day(day)
            });
            confirmed(days_before, &evening.collect::<Vec<_>>(), kit)
        })
        .collect()
}

fn confirmed(days_before: u32, evenings: &[Evening], kit: &TestKit) -> Option<Confirming> {
    let over = |value: fn(&Evening) -> f32| {
        let mut sample: Vec<f64> = evenings.iter().map(|e| f64::from(value(e))).collect();
        quantiles(&mut sample, &SHARES)
    };
    (!evenings.is_empty()).then(|| Confirming {
        days_before,
        members: evenings.len(),
        ammonia: over(|evening| evening.tan).map(|value| kit.ammonia.read(value)),
        nitrite: over(|evening| evening.nitrite).map(|value| kit.nitrite.read(value)),
    })
}
