//! What to test next: the reading of a card that would narrow the ready day most.
//!
//! Members that read alike on an evening are one group. What is left of the squared error of the ready day
//! within the groups, on average, is what the reading would leave open:
//!
//! ```text
//! narrowed = 1 − [Σ (T − mean of its group)²/(n − groups)] / [Σ (T − mean)²/(n − 1)]      T = min(ready day, length)
//! ```
//! Both sums are divided by what is free in them, so that a reading that tells nothing narrows nothing on
//! average, however many steps the card has.

use rand_distr::{Distribution, StandardNormal};

use crate::analysis::kit::{Card, TestKit};
use crate::base::maths;
use crate::base::moments::Moments;
use crate::base::streams::stream;

use super::member::{Evening, Member, Told};

/// How far apart two people read one water, as the standard deviation of the logarithm (a judgement: half a
/// step of a card is a fifth to a half of its value).
pub const READING_NOISE: f64 = 0.2;
/// Evenings that are weighed: the first four weeks, in which there is still something to decide.
pub const LAST_EVENING: u32 = 28;

/// What is tested.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tested {
    /// Total ammonia.
    Ammonia,
    /// Nitrite.
    Nitrite,
}

impl Tested {
    /// Both, in the order in which they rise.
    pub const ALL: [Tested; 2] = [Tested::Ammonia, Tested::Nitrite];
    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Tested::Ammonia => "ammonia",
            Tested::Nitrite => "nitrite",
        }
    }
    /// Its card.
    pub fn card(self, kit: &TestKit) -> &Card {
        match self {
            Tested::Ammonia => &kit.ammonia,
            Tested::Nitrite => &kit.nitrite,
        }
    }
    fn of(self, evening: Evening) -> f64 {
        f64::from(match self {
            Tested::Ammonia => evening.tan,
            Tested::Nitrite => evening.nitrite,
        })
    }
}

/// What a test on an evening would be worth.
#[derive(Debug, Clone, PartialEq)]
pub struct Worth {
    /// The day of the evening.
    pub day: u32,
    /// What is tested.
    pub tested: Tested,
    /// Share of the squared error of the ready day that the reading takes away; below nothing by chance.
    pub narrowed: f64,
    /// What each step that is read would mean, in rising order; steps that few tanks read stand with their neighbours.
    pub readings: Vec<Meaning>,
}

impl Worth {
    /// Share of the spread of the ready day (its standard deviation) that the reading takes away.
    pub fn off_the_spread(&self) -> f64 {
        1.0 - (1.0 - self.narrowed.min(1.0)).sqrt()
    }
}

/// What a reading would mean.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Meaning {
    /// The step, as printed on the card; the lowest where several stand together.
    pub printed: f64,
    /// The highest step, where several stand together.
    pub up_to: f64,
    /// How many members that is.
    pub tanks: usize,
    /// Mean of min(ready day, length) of those, days.
    pub mean_day: f64,
    /// The day by which half of them are ready; none where that is past the run.
    pub middle_day: Option<u32>,
}

/// What each test of the first evenings would be worth, the best first; none where all tanks are ready on
/// one day, or none is.
pub fn worth(members: &[Member], kit: &TestKit, length: u32, seed: u64) -> Vec<Worth> {
    let told: Vec<(u64, &Told)> = members
        .iter()
        .filter_map(|member| Some((member.number as u64, member.told.as_ref().ok()?)))
        .collect();
    let all = moments(told.iter().map(|(_, told)| capped(told, length)));
    let Some(open) = all.deviation().filter(|&open| open > 0.0) else {
        return Vec::new();
    };
    let mut worth: Vec<Worth> = (1..=LAST_EVENING.min(length))
        .flat_map(|day| Tested::ALL.map(|tested| (day, tested)))
        .filter_map(|(day, tested)| {
            let read = readings(&told, (day, tested), tested.card(kit), seed);
            let groups = grouped(&read, length);
            Some(Worth {
                day,
                tested,
                narrowed: narrowed(&groups, open * open)?,
                readings: meanings(&read, length),
            })
        })
        .collect();
    worth.sort_by(|a, b| b.narrowed.total_cmp(&a.narrowed));
    worth
}

fn capped(told: &Told, length: u32) -> f64 {
    f64::from(told.ready.day.map_or(length, |day| day.min(length)))
}

/// What each member would read, with noise of its own; members without that evening are left out.
fn readings<'a>(
    told: &[(u64, &'a Told)],
    (day, tested): (u32, Tested),
    card: &Card,
    seed: u64,
) -> Vec<(f64, &'a Told)> {
    let name = format!("reading/{}/{day}", tested.words());
    told.iter()
        .filter_map(|&(number, told)| {
            let value = tested.of(told.evenings.of_day(day)?);
            let chance: f64 = StandardNormal.sample(&mut stream(seed, &name, number));
            let seen = value * maths::exp(READING_NOISE * chance);
            Some((card.read(seen).printed, told))
        })
        .collect()
}

/// The ready days of those that read alike, by rising step.
fn grouped(read: &[(f64, &Told)], length: u32) -> Vec<(f64, Moments)> {
    let mut steps: Vec<f64> = read.iter().map(|(step, _)| *step).collect();
    steps.sort_by(f64::total_cmp);
    steps.dedup();
    steps
        .into_iter()
        .map(|step| {
            let alike = read.iter().filter(|(read, _)| *read == step);
            (step, moments(alike.map(|(_, told)| capped(told, length))))
        })
        .collect()
}

/// Share of the squared error taken away; none where nothing is free to vary.
fn narrowed(groups: &[(f64, Moments)], open: f64) -> Option<f64> {
    let count: u64 = groups.iter().map(|(_, group)| group.count()).sum();
    let free = count
        .checked_sub(groups.len() as u64)
        .filter(|&free| free > 0)?;
    let within: f64 = groups
        .iter()
        .filter_map(|(_, group)| {
            Some(group.deviation()? * group.deviation()? * (group.count() - 1) as f64)
        })
        .sum();
    Some(1.0 - within / free as f64 / open)
}

/// Fewer tanks than this say nothing of a step of their own.
const ENOUGH_TANKS: usize = 20;

/// What the steps that are read would mean: one by one where enough tanks read them, with their neighbours above
/// where not, and with those below at the upper end.
fn meanings(read: &[(f64, &Told)], length: u32) -> Vec<Meaning> {
    let mut read = read.to_vec();
    read.sort_by(|(a, _), (b, _)| a.total_cmp(b));
    let steps: Vec<_> = read.chunk_by(|(a, _), (b, _)| a == b).collect();
    let mut from = 0;
    let mut ends = Vec::new();
    for step in steps {
        let so_far = ends.last().copied().unwrap_or(0);
        from += step.len();
        if from - so_far >= ENOUGH_TANKS {
            ends.push(from);
        }
    }
    // the last take in what is left over
    ends.pop();
    ends.push(read.len());
    let begins = std::iter::once(0).chain(ends.clone());
    let together = begins.zip(ends).filter(|(from, until)| from < until);
    together
        .map(|(from, until)| meaning(&read[from..until], length))
        .collect()
}

/// What is true of some that read alike, the lowest first.
fn meaning(read: &[(f64, &Told)], length: u32) -> Meaning {
    let group = moments(read.iter().map(|(_, told)| capped(told, length)));
    Meaning {
        printed: read.first().map_or(0.0, |(step, _)| *step),
        up_to: read.last().map_or(0.0, |(step, _)| *step),
        tanks: read.len(),
        mean_day: group.mean(),
        middle_day: middle_day(read),
    }
}

/// The day by which half of those are ready.
fn middle_day(read: &[(f64, &Told)]) -> Option<u32> {
    let mut days: Vec<u32> = read
        .iter()
        .map(|(_, told)| told.ready.day.unwrap_or(u32::MAX))
        .collect();
    days.sort_unstable();
    let half = days.len().div_ceil(2);
    let day = *days.get(half.checked_sub(1)?)?;
    (day != u32::MAX).then_some(day)
}

fn moments(values: impl Iterator<Item = f64>) -> Moments {
    let mut moments = Moments::default();
    values.for_each(|value| moments.add(value));
    moments
}

#[cfg(test)]
mod tests {
    use super::super::member::{Evenings, MemberReady};
    use super::*;

    /// A member that reads so much ammonia on every evening, no nitrite, and is ready on a day.
    fn member(number: usize, tan: f32, day: Option<u32>) -> Member {
        let ready = MemberReady {
            day,
            candidate: day,
            quiet_from: day,
            waited_for: None,
            broken_after: None,
        };
        let mut told = super::super::tests::told(ready);
        let nitrite = 0.0;
        told.evenings = Evenings {
            first_day: 0,
            readings: vec![Evening { tan, nitrite }; 30],
        };
        Member {
            number,
            told: Ok(told),
        }
    }

    #[test]
    fn a_reading_that_tells_the_day_takes_all_error_away_and_one_that_tells_nothing_none() {
        // 0.08 and 4 mg N/L lie steps apart on the card, whatever the noise
        let members: Vec<Member> = (0..40)
            .map(|n| match n % 2 {
                0 => member(n, 0.08, Some(20)),
                _ => member(n, 4.0, None),
            })
            .collect();
        let worth = worth(&members, &TestKit::default(), 56, 1);
        let best = &worth[0];
        assert_eq!(best.tested, Tested::Ammonia);
        let (low, high) = (&best.readings[0], best.readings.last().unwrap());
        assert_eq!((low.mean_day, high.mean_day), (20.0, 56.0));
        assert_eq!((low.middle_day, high.middle_day), (Some(20), None));
        let tanks: usize = best.readings.iter().map(|reading| reading.tanks).sum();
        assert_eq!(tanks, 40, "every tank is behind one step");
        assert!((best.narrowed - 1.0).abs() < 1e-12);
        let nitrite = worth.iter().find(|test| test.tested == Tested::Nitrite);
        // one group: nothing is taken away, and nothing is free to be
        assert!(nitrite.unwrap().narrowed.abs() < 1e-12);
    }

    #[test]
    fn tanks_that_are_ready_on_one_day_need_no_test() {
        let members: Vec<Member> = (0..9).map(|n| member(n, n as f32, Some(30))).collect();
        assert!(worth(&members, &TestKit::default(), 56, 1).is_empty());
    }

    #[test]
    fn readings_that_hang_together_with_nothing_narrow_nothing_on_average() {
        // by a turn of the golden ratio the days have nothing to do with the readings
        let turn = |n: usize, by: f64| (n as f64 * by).fract();
        let members: Vec<Member> = (0..400)
            .map(|n| {
                let day = 10 + (40.0 * turn(n, 0.618_033_988_7)) as u32;
                member(n, (5.0 * turn(n, 0.754_877_666_2)) as f32, Some(day))
            })
            .collect();
        let worth = worth(&members, &TestKit::default(), 56, 1);
        // 1/√(n/2) for 7 groups of 400 is the size of chance
        assert!(worth[0].narrowed < 0.07, "{}", worth[0].narrowed);
    }
}
