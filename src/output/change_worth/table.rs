//! `changes.csv`: one row per change of the plan, what leaving it out alone does, and whether it may go.

use crate::analysis::case::Case;
use crate::analysis::change_worth::ChangeWorth;
use crate::base::clock::TimeOfDay;
use crate::output::csv::Head;
use crate::output::table::{Cell, Table};
use crate::output::when::{iso_date, weekday};

use super::numbers::{cells, heads, yes_or_no};

/// One row per change, in the order of the calendar.
pub fn table(case: &Case, worth: &ChangeWorth) -> Table {
    let plain = |name: &str, meaning: &str| Head::plain(name, meaning, "the plan");
    let mut all = vec![
        Head::new("day", "day", "day of the change", "the plan"),
        plain("date", "its date; empty when the scenario has none"),
        plain(
            "weekday",
            "its weekday; empty when the scenario has no date",
        ),
        plain("time", "its time of day"),
        plain("entry", "dotted path of its entry in the scenario"),
        Head::new("share", "of 1", "share of the water present", "the plan"),
        Head::plain(
            "drop_order",
            "its place in the order of dropping, from 1",
            "those that may go, then those missed only together with them, then those missed alone; each by days later",
        ),
        Head::plain(
            "may_go",
            "whether it may go, together with those before it",
            "run again together: at most 0.5 days later, no figure worse by more than is told",
        ),
    ];
    all.extend(heads());
    Table {
        file: "changes.csv",
        heads: all,
        rows: (0..worth.changes.len())
            .map(|place| row(case, worth, place))
            .collect(),
    }
}

fn row(case: &Case, worth: &ChangeWorth, place: usize) -> Vec<Cell> {
    let change = &worth.changes[place];
    let day = change.day();
    let words = |words: String| match words.is_empty() {
        true => Cell::Empty,
        false => Cell::Words(words),
    };
    let order = worth.drop.order();
    let rank = order.iter().position(|&other| other == place);
    let mut row = vec![
        Cell::Count(day.into()),
        words(iso_date(case.filled_on, day)),
        words(weekday(case.filled_on, day)),
        words(TimeOfDay::of(change.minute).to_string()),
        words(change.name.clone()),
        Cell::Number(change.share),
        rank.map_or(Cell::Empty, |rank| Cell::Count(rank as u64 + 1)),
        yes_or_no(worth.drop.drops(place)),
    ];
    row.extend(cells(&worth.alone[place]));
    row
}
