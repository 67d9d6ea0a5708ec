//! `members.csv`: every plausible tank, what was drawn for it and what came of it.

use crate::analysis::ensemble::member::{Member, Told};
use crate::analysis::figures::Figures;
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
    for (name, _, _, read) in FIGURES {
        match read(&told.figures) {
            Some(value) => row.number(FILE, name, 0, value)?,
            None => row.push(""),
        }
    }
    Ok(())
}

/// Name with unit, unit, what it is, how it is read off; none where there is none.
type Figure = (
    &'static str,
    &'static str,
    &'static str,
    fn(&Figures) -> Option<f64>,
);

const FIGURES: [Figure; 22] = [
    (
        "tan_peak_mg_n_per_l",
        "mg N/L",
        "highest total ammonia",
        |f| Some(f.tan_peak.value),
    ),
    (
        "free_ammonia_peak_mg_n_per_l",
        "mg N/L",
        "highest free ammonia",
        |f| Some(f.free_ammonia_peak.value),
    ),
    (
        "nitrite_peak_mg_n_per_l",
        "mg N/L",
        "highest nitrite",
        |f| Some(f.nitrite_peak.value),
    ),
    (
        "nitrate_peak_mg_n_per_l",
        "mg N/L",
        "highest nitrate",
        |f| Some(f.nitrate_peak.value),
    ),
    (
        "nitrate_end_mg_n_per_l",
        "mg N/L",
        "nitrate at the end",
        |f| Some(f.nitrate_end),
    ),
    (
        "oxygen_low_mg_per_l",
        "mg/L",
        "lowest oxygen: the worst night",
        |f| Some(f.oxygen_low.value),
    ),
    ("co2_high_mg_per_l", "mg/L", "highest carbon dioxide", |f| {
        Some(f.co2_high.value)
    }),
    ("kh_low_dkh", "dKH", "lowest KH", |f| Some(f.kh_low.value)),
    (
        "tan_over_limit_h",
        "h",
        "time with total ammonia over its limit",
        |f| Some(f.hours.tan),
    ),
    (
        "free_ammonia_over_limit_h",
        "h",
        "time with free ammonia over its limit",
        |f| Some(f.hours.free_ammonia),
    ),
    (
        "nitrite_over_limit_h",
        "h",
        "time with nitrite over its limit",
        |f| Some(f.hours.nitrite),
    ),
    (
        "oxygen_under_limit_h",
        "h",
        "time with oxygen under its limit",
        |f| Some(f.hours.oxygen),
    ),
    (
        "co2_over_limit_h",
        "h",
        "time with carbon dioxide over its limit",
        |f| Some(f.hours.co2),
    ),
    (
        "temperature_jump_c",
        "°C",
        "largest change of temperature at a water change",
        |f| f.temperature_jump.map(|jump| jump.value),
    ),
    (
        "ph_jump",
        "1",
        "largest change of pH at a water change",
        |f| f.ph_jump.map(|jump| jump.value),
    ),
    ("water_changed_l", "L", "water taken out by changes", |f| {
        Some(f.litres_changed)
    }),
    (
        "heaviest_week_l",
        "L",
        "most water taken out within days 0 to 6, 7 to 13 and so on",
        |f| Some(f.heaviest_week_l),
    ),
    ("gas_used_g", "g", "gas that left the cylinder", |f| {
        Some(f.gas_g)
    }),
    ("plants_g", "g dry weight", "plants at the end", |f| {
        Some(f.plants_g)
    }),
    (
        "algae_g_per_m2",
        "g dry weight/m²",
        "algae at the end; only to be compared",
        |f| Some(f.algae_g_per_m2),
    ),
    (
        "tan_peak_day",
        "1",
        "day of the highest total ammonia",
        |f| Some(f64::from(f.tan_peak.day())),
    ),
    ("nitrite_peak_day", "1", "day of the highest nitrite", |f| {
        Some(f64::from(f.nitrite_peak.day()))
    }),
];

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
    heads.extend(
        told.map(|(name, unit, what, _)| Head::new(name, unit, what, "the run as planned")),
    );
    let drawn = forecast.uncertain.rows().iter();
    heads.extend(drawn.map(|row| Head::new(&row.name, &row.unit, &row.words, "drawn")));
    heads
}
