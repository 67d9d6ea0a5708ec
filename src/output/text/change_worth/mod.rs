//! The worth of every change: one screen.

mod rows;

use crate::analysis::case::Case;
use crate::analysis::change_worth::ChangeWorth;
use crate::analysis::change_worth::absence::{Absence, Reduced};
use crate::analysis::change_worth::effects::{JUDGED, Loss, MOST_DELAY_DAYS, figure};
use crate::analysis::change_worth::one_more::OneMore;
use crate::analysis::change_worth::pairs::{Beyond, Together, strong};
use crate::analysis::change_worth::planned::Change;
use crate::output::change_worth::words::{
    better, days_in_words, days_list, in_a_line, loss, places,
};
use crate::output::chart::words::{short, signed};

use super::words::counted;
use super::{Page, Tone, title};

/// Strong pairs told one by one.
const PAIRS: usize = 2;
/// Changes that stay, told with their loss.
const STAY: usize = 2;

/// The whole page, but for where the files are.
pub fn page(case: &Case, worth: &ChangeWorth) -> Page {
    let mut page = Page::default();
    title(&mut page, case);
    page.gap();
    rows::table(&mut page, case, worth);
    page.gap();
    drop(&mut page, worth);
    stay(&mut page, worth);
    pairs(&mut page, worth);
    if let Some(more) = &worth.one_more {
        one_more(&mut page, more);
    }
    if let Some(absence) = &worth.absence {
        away(&mut page, worth, absence);
    }
    page.gap();
    page
}

/// What may go, in which order, and where to stop.
fn drop(page: &mut Page, worth: &ChangeWorth) {
    let days = worth.drop.dropped();
    let days: Vec<u32> = days
        .map(|tried| worth.changes[tried.change].day())
        .collect();
    let Some(last) = worth.drop.last() else {
        let least = worth.drop.kept_alone.first();
        let least = least.map_or(String::new(), |(change, lost)| {
            let day = worth.changes[*change].day();
            format!("; least that on day {day}: {} without it", loss(lost))
        });
        return page.block(
            "Drop",
            Tone::Strong,
            format!("none: each is missed even alone{least}"),
        );
    };
    let words = match days.as_slice() {
        [only] => format!("day {only} only, then stop"),
        several => format!("in this order, then stop: {}", days_in_words(several)),
    };
    page.block("Drop", Tone::Strong, words);
    let together = match days.len() {
        1 => "without it",
        _ => "all of them together",
    };
    let litres = short(last.together.litres_saved);
    let effects = in_a_line(&last.together);
    page.line(
        Tone::Plain,
        format!("{together}: {litres} L saved; {effects}"),
    );
}

/// What would be lost next, and what is worth most.
fn stay(page: &mut Page, worth: &ChangeWorth) {
    let day = |change: usize| worth.changes[change].day();
    let together = worth.drop.tried.iter().filter_map(|tried| {
        let lost = tried.loss.as_ref()?;
        Some(format!("day {} too: {}", day(tried.change), loss(lost)))
    });
    let next: Vec<String> = together.take(STAY).collect();
    if !next.is_empty() {
        page.block("Not", Tone::Plain, next.join("; "));
    }
    let alone = worth.drop.kept_alone.iter().rev();
    let delays = alone.filter_map(|(change, lost)| match lost {
        Loss::Later(_) => Some(format!("day {}: {}", day(*change), loss(lost))),
        Loss::Worse(..) => None,
    });
    let most: Vec<String> = delays.take(STAY).collect();
    let words = match most.is_empty() {
        true => format!("no change alone moves the ready day by more than {MOST_DELAY_DAYS} days"),
        false => format!("without {}", most.join("; without ")),
    };
    page.block("Worth most", Tone::Plain, words);
}

fn pairs(page: &mut Page, worth: &ChangeWorth) {
    if worth.pairs.is_empty() {
        return;
    }
    let strong = strong(&worth.pairs);
    let tried = counted(worth.pairs.len(), "pair");
    let head = format!(
        "{tried} within a week, each left out on {} tanks:",
        worth.pair_members
    );
    let (told, more) = strong.split_at(strong.len().min(PAIRS));
    let told: Vec<String> = (told.iter())
        .map(|(pair, most)| beyond(worth, pair, most))
        .collect();
    let words = match (told.is_empty(), more.len()) {
        (true, _) => "all do the sum of what each does alone".to_string(),
        (false, 0) => format!("beyond the sum of each alone, {}", told.join("; ")),
        (false, more) => format!(
            "beyond the sum of each alone, {}; {more} more in pairs.csv",
            told.join("; ")
        ),
    };
    page.block("Pairs", Tone::Plain, format!("{head} {words}"));
}

/// `days 2 and 3 peak ammonia +0.20 mg N/L`: what two do most beyond the sum.
fn beyond(worth: &ChangeWorth, pair: &Together, most: &Beyond) -> String {
    let both = days_in_words(&pair.changes.map(|change| worth.changes[change].day()));
    match most {
        Beyond::Later(days) => format!("{both} ready day {} days", signed(*days, 1)),
        Beyond::Rises(figure, by) => {
            let by = signed(*by, places(figure));
            format!("{both} {} {by} {}", figure.short, figure.unit)
        }
    }
}

fn one_more(page: &mut Page, more: &OneMore) {
    let (change, effects) = &more.best;
    let percent = short(100.0 * more.share);
    let words = match more.helps() {
        true => format!(
            "a change of {percent} % helps most on day {}: {}",
            change.day(),
            in_a_line(effects)
        ),
        false => format!(
            "a change of {percent} % on no day brings the ready day half a day nearer beyond chance"
        ),
    };
    page.block("One more", Tone::Plain, words);
    let peaks = JUDGED[..2].iter().filter_map(|name| {
        let (change, by) = more.betters_most(name)?;
        Some(format!(
            "on day {} {}",
            change.day(),
            better(figure(name), by)
        ))
    });
    let peaks: Vec<String> = peaks.collect();
    if !peaks.is_empty() {
        page.line(Tone::Plain, format!("lowest peaks: {}", peaks.join(", ")));
    }
}

fn away(page: &mut Page, worth: &ChangeWorth, absence: &Absence) {
    let words = match &absence.at_home {
        Some(effects) => format!(
            "{} missed on {}; done after all: {}",
            counted(absence.missed.len(), "change"),
            days_list(&absence.missed),
            in_a_line(effects)
        ),
        None => "no change falls on a day away: nothing is lost".to_string(),
    };
    page.block("Away", Tone::Plain, words);
    if let Some((place, effects)) = &absence.doubled {
        let change = &worth.changes[*place];
        let share = short(100.0 * change.doubled_share());
        let words = format!(
            "best to double up on day {}, to {share} %: {}",
            change.day(),
            in_a_line(effects)
        );
        page.line(Tone::Plain, words);
    }
    if absence.reduced.is_none() {
        page.line(Tone::Plain, "less to do: none can go, not even then");
    }
    if let Some(reduced) = &absence.reduced {
        page.line(Tone::Plain, less_to_do(worth, reduced));
    }
}

/// Which changes will do: those that stay by name, or those that go where they are fewer.
fn less_to_do(worth: &ChangeWorth, reduced: &Reduced) -> String {
    let all = 0..worth.changes.len();
    let (stay, gone): (Vec<usize>, Vec<usize>) =
        all.partition(|place| reduced.stay.contains(place));
    let named = |places: &[usize]| {
        let changes = places.iter().map(|&place| worth.changes[place].clone());
        days_list(&changes.collect::<Vec<Change>>())
    };
    let which = match gone.len() < stay.len() {
        true => format!("without {}", named(&gone)),
        false => named(&stay),
    };
    let doubled = reduced.doubled.map(|place| worth.changes[place].day());
    let doubled = doubled.map_or(String::new(), |day| format!(", doubled on day {day}"));
    format!(
        "less to do: {} of {} will do, {which}{doubled}: {}",
        stay.len(),
        counted(worth.changes.len(), "change"),
        in_a_line(&reduced.effects)
    )
}
