//! The latest filling, or how near one can come.

use jiff::civil::Date;

use crate::analysis::case::Case;
use crate::analysis::latest_fill::{Fill, LatestFill, Wish};
use crate::analysis::levers::Pulled;
use crate::output::when::date;

use super::levers::named;
use super::words::counted;
use super::{Page, Tone};

/// What the page is made from.
#[derive(Debug, Clone, Copy)]
pub struct Story<'a> {
    /// The scenario as it is written.
    pub case: &'a Case,
    /// What was wished for.
    pub wish: Wish,
    /// The answer.
    pub answer: &'a LatestFill,
    /// What levers do to the plan of that filling.
    pub pulled: &'a [Pulled],
}

/// The page of an answer.
pub fn page(story: &Story) -> Page {
    let (wish, answer) = (story.wish, story.answer);
    let mut page = Page::default();
    page.block("firstfill", Tone::Strong, story.case.name.as_str());
    let by = day(story, wish.ready_by_day);
    page.line(
        Tone::Plain,
        format!(
            "ready by {by} in {} of 100 plausible tanks like yours",
            wish.of_100
        ),
    );
    page.gap();
    match answer.latest {
        Some(fill) => page.block("Fill", Tone::Strong, latest(story, fill)),
        // what is missing is told once, as the failure
        None => page.block("Fill", Tone::Warn, "no day does"),
    }
    page.block("Levers", Tone::Plain, levers(story.pulled));
    page.block("Searched", Tone::Faint, searched(story));
    page
}

/// What is said where no filling does.
pub fn none(story: &Story) -> String {
    let (wish, best) = (story.wish, story.answer.best);
    let most = match best.of_100 >= 1.0 {
        true => format!(
            "the most is {} of 100, filled on {}",
            best.of_100.floor(),
            day(story, best.put_off_days)
        ),
        false => "hardly one of them is, whenever it is filled".to_string(),
    };
    format!(
        "no filling from {} on makes {} of 100 plausible tanks like yours ready by {}; {most}. {}",
        day(story, 0),
        wish.of_100,
        day(story, wish.ready_by_day),
        what_binds(story)
    )
}

/// Whether it is the date that comes too soon, or the end of the run.
fn what_binds(story: &Story) -> String {
    let (days, last_day) = (story.wish.ready_by_day, story.case.input.last_day);
    match days > last_day {
        true => format!(
            "Only what is ready by day {last_day} of a filling counts: a larger `length`, with a plan to its end, looks further"
        ),
        false => format!(
            "From the start in the file until then there are {}: an earlier start, a later date, or a lever buys more",
            counted(days as usize, "day")
        ),
    }
}

fn latest(story: &Story, fill: Fill) -> String {
    let slack = match fill.put_off_days {
        0 => "the start in the file; no slack".to_string(),
        days => {
            let days = counted(days as usize, "day");
            format!(
                "{days} of slack after the start in the file, {}",
                day(story, 0)
            )
        }
    };
    format!(
        "on {} at the latest ({slack}); {} of 100 plausible tanks like yours are then ready in time",
        day(story, fill.put_off_days),
        fill.of_100.floor()
    )
}

fn levers(pulled: &[Pulled]) -> String {
    match named(pulled).as_str() {
        "" => "none buys half a day or more".into(),
        named => format!("what buys most, on average, each alone: {named}"),
    }
}

fn searched(story: &Story) -> String {
    let (wish, answer) = (story.wish, story.answer);
    let plans = match answer.plans {
        1 => "1 plan, the same whatever the day of filling".to_string(),
        many => format!("{many} plans that differ in weekdays or dated absences"),
    };
    let members = wish.trying.members;
    let impossible = match answer.impossible {
        0 => String::new(),
        count => format!(
            "; {} not possible, something is planned for a date before",
            counted(count, "filling day")
        ),
    };
    format!("{plans}, each on {members} plausible tanks{impossible}")
}

/// `Sat 6 Mar 2027`
fn day(story: &Story, day: u32) -> String {
    let in_words = |date: Date| date.strftime("%a %-d %b %Y").to_string();
    date(story.case.filled_on, day).map_or(format!("day {day}"), in_words)
}
