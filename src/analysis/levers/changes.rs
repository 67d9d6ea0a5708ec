//! Water changes: one more or one fewer a week, larger or smaller.

use crate::base::clock::{DAY, TimeOfDay};
use crate::base::units::digits;
use crate::engine::event::{Event, EventKind};
use crate::engine::input::ModelInput;

use super::lever::Lever;

/// Days in a week; weeks are days 1 to 7, 8 to 14 and so on, as calendars of a new tank are written.
const WEEK: u32 = 7;
/// By how much shares grow or shrink (a judgement, no source).
const SHARE_STEP: f64 = 0.2;
/// Fish keep some of their water, and a change that is hardly one is not worth the bucket.
const SHARES: (f64, f64) = (0.1, 0.9);
/// Share and time of day where no change is planned (common practice, no source).
const USUAL: (f64, TimeOfDay) = (0.5, TimeOfDay::at(9, 30));
/// Name of the changes that are added.
const ADDED: &str = "changes.one_more";

/// The levers on the changes of a plan.
pub fn levers(input: &ModelInput) -> Vec<Lever> {
    let all = [
        one_more(input),
        one_fewer(input),
        shares(input, "changes_larger", "larger", SHARE_STEP),
        shares(input, "changes_smaller", "smaller", -SHARE_STEP),
    ];
    all.into_iter().flatten().collect()
}

/// One change more in every week, on the day furthest from the others on which somebody is there.
fn one_more(input: &ModelInput) -> Option<Lever> {
    let mut changes = changes(input);
    let words = match changes.is_empty() {
        true => "a change of half the water every week",
        false => "one change a week more",
    };
    let mut added = Vec::new();
    for first in (1..=final_day(input)).step_by(WEEK as usize) {
        if let Some(change) = between(&changes, input, first) {
            changes.push(change.clone());
            added.push(change);
        }
    }
    (!added.is_empty()).then(|| {
        Lever::of("changes_one_more", words, move |input| {
            input.events.extend_from_slice(&added);
        })
    })
}

/// A change in the week that begins on a day, like the one nearest to it.
fn between(changes: &[Event], input: &ModelInput, first: u32) -> Option<Event> {
    let away = |day: u32| (input.unfed.iter()).any(|&(from, last)| (from..=last).contains(&day));
    let apart = |change: &Event, day: u32| (change.minute / DAY).abs_diff(day);
    let nearest = |day: u32| changes.iter().min_by_key(|change| apart(change, day));
    let far = |day: u32| nearest(day).map_or(u32::MAX, |change| apart(change, day));
    let days = first..=final_day(input).min(first + WEEK - 1);
    let free = days.filter(|&day| !away(day) && far(day) > 0);
    // the first of several that are equally far
    let day = free.rev().max_by_key(|&day| far(day))?;
    let like = nearest(day).map(|change| (change.kind.clone(), TimeOfDay::of(change.minute)));
    let (kind, time) = like.unwrap_or((EventKind::Change { share: USUAL.0 }, USUAL.1));
    Some(Event {
        minute: day * DAY + time.0,
        name: ADDED.into(),
        kind,
    })
}

/// One change fewer in every week that has two or more; where no week has, every second one.
fn one_fewer(input: &ModelInput) -> Option<Lever> {
    let minutes: Vec<u32> = changes(input).iter().map(|change| change.minute).collect();
    let week = |minute: &u32| (minute / DAY).saturating_sub(1) / WEEK;
    let weeks: Vec<&[u32]> = minutes.chunk_by(|a, b| week(a) == week(b)).collect();
    let several = weeks.iter().filter(|week| week.len() > 1);
    let middle: Vec<u32> = several.map(|week| week[week.len() / 2]).collect();
    let (left_out, words) = match middle.is_empty() {
        false => (middle, "one change a week fewer"),
        true => (
            minutes.iter().skip(1).step_by(2).copied().collect(),
            "every second change left out",
        ),
    };
    (!left_out.is_empty()).then(|| {
        Lever::of("changes_one_fewer", words, move |input| {
            let stays =
                |event: &Event| !(event.kind.is_change() && left_out.contains(&event.minute));
            input.events.retain(stays);
        })
    })
}

/// All shares by a step larger or smaller.
fn shares(input: &ModelInput, key: &'static str, word: &str, step: f64) -> Option<Lever> {
    let moved = move |share: f64| (share + step).clamp(SHARES.0, SHARES.1);
    let (mut seen, mut moves) = (Vec::new(), false);
    for change in &changes(input) {
        if let EventKind::Change { share } = change.kind {
            moves |= moved(share) != share;
            let percent = digits((100.0 * moved(share)).round());
            if !seen.contains(&percent) {
                seen.push(percent);
            }
        }
    }
    moves.then(|| {
        let words = format!("{word} changes, {} %", seen.join(" and "));
        Lever::of(key, words, move |input| {
            for event in &mut input.events {
                if let EventKind::Change { share } = &mut event.kind {
                    *share = moved(*share);
                }
            }
        })
    })
}

/// The changes of the plan in their order, the look-ahead included.
fn changes(input: &ModelInput) -> Vec<Event> {
    let mut changes: Vec<Event> = (input.events.iter())
        .filter(|event| event.kind.is_change())
        .cloned()
        .collect();
    changes.sort_by_key(|change| change.minute);
    changes
}

/// The last day that is simulated.
fn final_day(input: &ModelInput) -> u32 {
    input.last_day + input.lookahead_days
}
