//! `pairs.csv`, `drop.csv`, `one-more.csv` and `away.csv`: two changes together, what may go, where one more
//! would help, and what days away cost.

use crate::analysis::change_worth::ChangeWorth;
use crate::analysis::change_worth::absence::Absence;
use crate::analysis::change_worth::effects::{Effects, JUDGED, figure};
use crate::analysis::change_worth::one_more::OneMore;
use crate::analysis::change_worth::pairs::Together;
use crate::output::csv::Head;
use crate::output::table::{Cell, Table};

use super::numbers::{cells, heads, yes_or_no};
use super::words::{days_list, loss};

const BEYOND: &str = "both out - plan, less the same of each alone, tank by tank";

fn day(name: &str, meaning: &str) -> Head {
    Head::new(name, "day", meaning, "the plan")
}

fn table(file: &'static str, own: Vec<Head>, rows: Vec<Vec<Cell>>) -> Table {
    let heads = own.into_iter().chain(heads()).collect();
    Table { file, heads, rows }
}

/// Two changes within a week left out together: what both do beyond the sum of each alone.
pub fn pairs(worth: &ChangeWorth) -> Table {
    let error =
        |unit: &str, name: &str| Head::new(name, unit, "its standard error", "sd/sqrt(pairs)");
    let mut heads = vec![
        day("day", "day of the first change"),
        day("other_day", "day of the second one"),
        Head::plain(
            "strong",
            "whether both do something else than the sum",
            "0.5 days or what is told, and twice the error",
        ),
        Head::plain("pairs", "tanks", "count"),
        Head::new(
            "days_later_beyond",
            "day",
            "later ready day beyond the sum",
            BEYOND,
        ),
        error("day", "days_later_beyond_error"),
    ];
    for name in JUDGED {
        let (name, unit) = (format!("{name}_beyond"), figure(name).unit);
        heads.push(Head::new(&name, unit, "change beyond the sum", BEYOND));
        heads.push(error(unit, &format!("{name}_error")));
    }
    Table {
        file: "pairs.csv",
        heads,
        rows: worth
            .pairs
            .iter()
            .map(|pair| of_pair(worth, pair))
            .collect(),
    }
}

fn of_pair(worth: &ChangeWorth, pair: &Together) -> Vec<Cell> {
    let day = |place: usize| Cell::Count(worth.changes[place].day().into());
    let [first, second] = pair.changes.map(day);
    let count = Cell::Count(pair.days_later.pairs as u64);
    let mut row = vec![first, second, yes_or_no(pair.strongest().is_some()), count];
    let figures = pair.judged.iter().map(|(_, effect)| effect);
    for effect in std::iter::once(&pair.days_later).chain(figures) {
        row.extend([effect.mean, effect.standard_error].map(Cell::Number));
    }
    row
}

/// What was tried to go, in order, each row with all that had gone before.
pub fn drop(worth: &ChangeWorth) -> Table {
    let own = vec![
        Head::plain(
            "step",
            "place in the order of trying, from 1",
            "later ready day when left out alone, least first",
        ),
        day("day", "day of the change"),
        Head::plain(
            "goes",
            "whether it goes",
            "at most 0.5 days later, no figure worse by more than is told",
        ),
        Head::plain(
            "loss",
            "what would be lost; empty when it goes",
            "all that had gone before left out too",
        ),
    ];
    let rows = worth.drop.tried.iter().enumerate().map(|(step, tried)| {
        let mut row = vec![
            Cell::Count(step as u64 + 1),
            Cell::Count(worth.changes[tried.change].day().into()),
            yes_or_no(tried.loss.is_none()),
            tried
                .loss
                .map_or(Cell::Empty, |lost| Cell::Words(loss(&lost))),
        ];
        row.extend(cells(&tried.together));
        row
    });
    table("drop.csv", own, rows.collect())
}

/// One more change on each free day.
pub fn one_more(one_more: &OneMore) -> Table {
    let own = vec![
        day("day", "day of the change that is added"),
        Head::new(
            "share",
            "of 1",
            "its share of the water",
            "middle share of the plan",
        ),
    ];
    let rows = one_more.tried.iter().map(|(change, effects)| {
        let mut row = vec![Cell::Count(change.day().into()), Cell::Number(change.share)];
        row.extend(cells(effects));
        row
    });
    table("one-more.csv", own, rows.collect())
}

/// What days away cost, and what can be done about it.
pub fn away(worth: &ChangeWorth, absence: &Absence) -> Table {
    let own = vec![
        Head::plain("plan", "what is done otherwise", "as said"),
        Head::plain("days", "days of the changes this is about", "the plan"),
    ];
    let changes = |places: &[usize]| {
        let changes = places.iter().map(|&place| worth.changes[place].clone());
        days_list(&changes.collect::<Vec<_>>())
    };
    let row = |plan: &str, days: String, effects: &Effects| {
        let mut row = vec![Cell::words_of(plan), Cell::Words(days)];
        row.extend(cells(effects));
        row
    };
    let at_home = absence.at_home.iter();
    let at_home =
        at_home.map(|effects| row("at home after all", days_list(&absence.missed), effects));
    let doubled = absence.doubled.iter();
    let doubled =
        doubled.map(|(place, effects)| row("one change doubled", changes(&[*place]), effects));
    let reduced = absence.reduced.iter();
    let reduced =
        reduced.map(|one| row("less to do: these stay", changes(&one.stay), &one.effects));
    table(
        "away.csv",
        own,
        at_home.chain(doubled).chain(reduced).collect(),
    )
}
