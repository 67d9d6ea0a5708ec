//! `members.csv`: every plausible tank, what was drawn for it and what came of it.

use crate::analysis::ensemble::member::{Member, Told};
use crate::analysis::figure_list::FIGURES;
use crate::analysis::forecast::Forecast;
use crate::output::waiting::waited_words;

use super::{Head, NotANumber, Row, Table};

const FILE: &str = "members.csv";
/// Status of a member that was run to its end.
const WHOLE: &str = "ok";

/// One row per member, failed ones too.
pub fn table(forecast: &Forecast) -> Result<Table, NotANumber> {
    let rows = forecast.ensemble.members.iter();
    let rows = rows.map(|member| row(forecast, member));
    Ok(Table {
        file: FILE,
        heads: heads(forecast),
        rows: rows.collect::<Result<_, _>>()?,
    })
}

fn row(forecast: &Forecast, member: &Member) -> Result<Row, NotANumber> {
    let status = match &member.told {
        Ok(_) => WHOLE.to_string(),
        Err(why) => why.to_string(),
    };
    let mut row = Row::of([member.number.to_string(), status]);
    match &member.told {
        Ok(told) => came_of_it(&mut row, told)?,
        Err(_) => (0..3 + FIGURES.len()).for_each(|_| row.push("")),
    }
    let drawn = forecast.uncertain.draw(forecast.seed, member.number);
    for (varied, value) in forecast.uncertain.rows().iter().zip(drawn) {
        row.number(FILE, &varied.name, 0, value)?;
    }
    Ok(row)
}

fn came_of_it(row: &mut Row, told: &Told) -> Result<(), NotANumber> {
    let day = |day: Option<u32>| day.map_or(String::new(), |day| day.to_string());
    row.push(&day(told.ready.day));
    row.push(&day(told.ready.candidate));
    row.push(told.ready.waited_for.map_or("", waited_words));
    for figure in FIGURES {
        match (figure.read)(&told.figures) {
            Some(value) => row.number(FILE, figure.name, 0, value)?,
            None => row.push(""),
        }
    }
    Ok(())
}

fn heads(forecast: &Forecast) -> Vec<Head> {
    let mut heads = vec![
        Head::plain("member", "number of the plausible tank", "counted from 0"),
        Head::plain("status", "ok, or why its run failed", "the run"),
        Head::plain(
            "ready_day",
            "its ready day; empty when later than the last day",
            "ripening limits and capacity without animals, then two weeks with the planned ones",
        ),
        Head::plain(
            "candidate_day",
            "first day from which limits and capacity hold without animals; empty for none",
            "the run without animals",
        ),
        Head::plain(
            "waited_for",
            "what the last days waited for",
            "the run without animals",
        ),
    ];
    let told = FIGURES.iter();
    heads.extend(told.map(|f| Head::new(f.name, f.unit, f.what, "the run as planned")));
    let drawn = forecast.uncertain.rows().iter();
    heads.extend(drawn.map(|row| Head::new(&row.name, &row.unit, &row.words, "drawn")));
    heads
}
