//! What the chart of the changes says in its title, made from the runs.

use crate::analysis::change_worth::ChangeWorth;
use crate::analysis::change_worth::effects::MOST_DELAY_DAYS;
use crate::analysis::change_worth::planned::Change;
use crate::output::change_worth::words::{days_list, figures, moving_of_100, ready_day};
use crate::output::chart::words::{number, short};

/// The result, the longest wording first.
pub fn titles(worth: &ChangeWorth) -> Vec<String> {
    let goes = goes(worth);
    let most = most(worth);
    let with_days = match dropped(worth).as_slice() {
        [] => goes.clone(),
        some => format!("{goes}, {}", days_list(some)),
    };
    vec![
        format!("{with_days}; {most}"),
        format!("{goes}; {most}"),
        goes,
    ]
}

/// The changes that go, in the order of the calendar.
fn dropped(worth: &ChangeWorth) -> Vec<Change> {
    let places = 0..worth.changes.len();
    let goes = places.filter(|&place| worth.drop.drops(place));
    goes.map(|place| worth.changes[place].clone()).collect()
}

fn goes(worth: &ChangeWorth) -> String {
    let (some, all) = (worth.drop.dropped().count(), worth.changes.len());
    match (some, all) {
        (0, 1) => "The one change cannot go".into(),
        (0, all) => format!("None of {all} changes can go"),
        (1, 1) => "The one change can go".into(),
        (some, all) => format!("{some} of {all} changes can go"),
    }
}

/// The change that is worth most days, if one is worth some beyond chance.
fn most(worth: &ChangeWorth) -> String {
    let days = worth.alone.iter().map(|effects| effects.days_later());
    let most = days.enumerate().max_by(|a, b| a.1.total_cmp(&b.1));
    match most {
        Some((place, days)) if days > MOST_DELAY_DAYS && worth.alone[place].ready.is_clear() => {
            let day = worth.changes[place].day();
            format!("day {day} is worth most, {} days", number(days, 1))
        }
        _ => "none alone decides the ready day".into(),
    }
}

/// `; 3 to 41 of 100 move`: how many tanks the means are made of, from change to change.
pub fn moving(worth: &ChangeWorth) -> String {
    let counts = worth.alone.iter().map(|one| moving_of_100(&one.ready));
    let [least, most] = counts.fold([f64::INFINITY, 0.0], |[least, most]: [f64; 2], count| {
        [least.min(count), most.max(count)]
    });
    match [least, most].map(|count| number(count, 0)) {
        [least, most] if least == most => format!("; {most} of 100 move"),
        [least, most] => format!("; {least} to {most} of 100 move"),
    }
}

/// How sure it is, and what the picture would hide; the longest wording first.
pub fn sentences(worth: &ChangeWorth) -> Vec<String> {
    let members = worth.common.members;
    let alone = format!("Each left out in turn on the same {members} plausible tanks like yours.");
    let Some(last) = worth.drop.last() else {
        let none = "None is harmless even alone: each moves the ready day or a peak.";
        return vec![format!("{alone} {none}"), alone];
    };
    let together = match worth.drop.dropped().count() {
        1 => "Without that one",
        _ => "All that can go together",
    };
    let (litres, ready) = (short(last.together.litres_saved), ready_day(&last.together));
    let saved = format!("{together}: {litres} L saved, {ready}");
    let moved = figures(&last.together);
    let moved = match moved.is_empty() {
        true => "no peak moved by what is told".to_string(),
        false => moved.join(", "),
    };
    vec![
        format!("{alone} {saved}, {moved}. Stop there."),
        format!("{alone} {saved}. Stop there."),
        format!("{saved}. Stop there."),
        alone,
    ]
}
