//! How many of 100 plausible tanks are ready by each day, what the others wait for, and what animals would
//! meet on the ready day.

use crate::analysis::broken::Running;
use crate::analysis::ready::Waiting;

use super::member::{Member, MemberReady};

/// How many are ready by when, and why not earlier. Failed members do not count.
#[derive(Debug, Clone, PartialEq)]
pub struct ReadyCurve {
    /// How many members it is made of.
    pub members: usize,
    /// The last day of the run.
    pub last_day: u32,
    /// Members ready by each day, from day 0 on.
    ready_by: Vec<usize>,
    /// What members waited for last, the most frequent first; none for those ready from the first day.
    pub waited_for: Vec<(Option<Waiting>, usize)>,
    /// How many of the members with a ready day break each running limit in the two weeks from it on.
    pub break_after: [(Running, usize); Running::ALL.len()],
}

impl ReadyCurve {
    /// The curve of these members.
    pub fn of(members: &[Member], last_day: u32) -> ReadyCurve {
        let ready: Vec<&MemberReady> = members
            .iter()
            .filter_map(|member| member.told.as_ref().ok())
            .map(|told| &told.ready)
            .collect();
        let by = |day: u32| {
            let is_ready = |ready: &&&MemberReady| ready.day.is_some_and(|ready| ready <= day);
            ready.iter().filter(is_ready).count()
        };
        let breaks = |limit: Running| {
            let after = ready.iter().filter_map(|ready| ready.broken_after);
            (limit, after.filter(|broken| broken.has(limit)).count())
        };
        ReadyCurve {
            members: ready.len(),
            last_day,
            ready_by: (0..=last_day).map(by).collect(),
            waited_for: counted(ready.iter().map(|ready| ready.waited_for)),
            break_after: Running::ALL.map(breaks),
        }
    }
    /// Members that have a ready day within the run.
    pub fn ever_ready(&self) -> usize {
        self.ready_by.last().copied().unwrap_or(0)
    }
    /// How many of 100 members with a ready day break a running limit in the two weeks from it on.
    pub fn of_100_that_break(&self, limit: Running) -> f64 {
        let (_, breaking) = self.break_after[limit as usize];
        100.0 * breaking as f64 / self.ever_ready().max(1) as f64
    }
    /// How many of 100 are ready by a day.
    pub fn of_100_by(&self, day: u32) -> f64 {
        let ready = self.ready_by.get(day as usize).copied();
        100.0 * ready.unwrap_or(self.ever_ready()) as f64 / self.members.max(1) as f64
    }
    /// The first day by which so many of 100 are ready; none when that is later than the last day.
    pub fn day_of(&self, of_100: usize) -> Option<u32> {
        let enough = |ready: &usize| self.members > 0 && 100 * ready >= of_100 * self.members;
        self.ready_by.iter().position(enough).map(|day| day as u32)
    }
}

/// What there is with how often, the most frequent first, in the order of their coming where equal.
fn counted<T: PartialEq>(all: impl Iterator<Item = T>) -> Vec<(T, usize)> {
    let mut counts: Vec<(T, usize)> = Vec::new();
    for one in all {
        match counts.iter_mut().find(|(known, _)| *known == one) {
            Some((_, count)) => *count += 1,
            None => counts.push((one, 1)),
        }
    }
    counts.sort_by_key(|(_, count)| std::cmp::Reverse(*count));
    counts
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::ready::Ripening;

    fn ready(day: Option<u32>) -> MemberReady {
        MemberReady {
            day,
            candidate: day,
            quiet_from: day,
            waited_for: Some(Waiting::Limit(Ripening::Nitrite)),
            broken_after: None,
        }
    }

    fn curve(days: &[Option<u32>]) -> ReadyCurve {
        let told = days
            .iter()
            .map(|&day| super::super::tests::told(ready(day)));
        let members = told.enumerate().map(|(number, told)| Member {
            number,
            told: Ok(told),
        });
        ReadyCurve::of(&members.collect::<Vec<_>>(), 10)
    }

    #[test]
    fn the_day_of_so_many_of_100_is_the_first_by_which_they_are_ready() {
        let curve = curve(&[Some(7), None, Some(3), Some(5)]);
        assert_eq!(curve.of_100_by(2), 0.0);
        assert_eq!(curve.of_100_by(5), 50.0);
        assert_eq!(curve.of_100_by(10), 75.0);
        let days = [10, 50, 75, 90].map(|of_100| curve.day_of(of_100));
        assert_eq!(
            days,
            [Some(3), Some(5), Some(7), None],
            "later than the run"
        );
        assert_eq!(curve.ever_ready(), 3);
    }

    #[test]
    fn without_members_nothing_is_ready() {
        assert_eq!(curve(&[]).day_of(10), None);
        assert_eq!(curve(&[]).of_100_by(10), 0.0);
    }

    #[test]
    fn the_most_frequent_comes_first() {
        assert_eq!(
            counted([2, 1, 3, 3, 1, 3].into_iter()),
            [(3, 3), (1, 2), (2, 1)]
        );
    }
}
