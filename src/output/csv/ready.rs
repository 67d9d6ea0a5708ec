//! `ready.csv`: when plausible tanks are ready, what they waited for, and what tests should read until then.

use crate::analysis::broken::Running;
use crate::analysis::ensemble::bands::SHARES;
use crate::analysis::ensemble::confirm::Confirming;
use crate::analysis::ensemble::next_test::Worth;
use crate::analysis::ensemble::soil::{DAYS, SoilAmmonia};
use crate::analysis::forecast::Forecast;
use crate::analysis::kit::{Step, TestKit};
use crate::analysis::margin::Stand;
use crate::output::number::six_digits;
use crate::output::waiting::{later, waited_words};

use super::{Head, Row, Table};

const FILE: &str = "ready.csv";
/// The days told by themselves: by when so many of 100 are ready.
pub const OF_100: [usize; 3] = [10, 50, 90];

/// What, for which day or share, a number or words, its unit; with the limits of the two confirming tests, of
/// ammonia and of nitrite, mg N/L.
pub fn table(forecast: &Forecast, kit: &TestKit, limits: [f64; 2]) -> Table {
    let mut rows = curve(forecast);
    rows.extend(reasons(forecast));
    rows.extend(soil("evening_ammonia", &forecast.soil_ammonia));
    if let Some(less) = &forecast.one_bag_less {
        rows.extend(soil("evening_ammonia_one_bag_less", less));
    }
    rows.extend(
        forecast
            .confirming
            .iter()
            .flat_map(|test| confirming(test, kit, limits)),
    );
    rows.extend(forecast.tests.iter().map(worth));
    Table {
        file: FILE,
        heads: heads(),
        rows,
    }
}

fn curve(forecast: &Forecast) -> Vec<Row> {
    let curve = &forecast.curve;
    let days = OF_100.map(|of_100| {
        let day = curve.day_of(of_100);
        let told = day.map_or(later(curve.last_day), |day| day.to_string());
        Row::of(["day_of", &format!("{of_100} of 100"), &told, "day"])
    });
    let by = (0..=curve.last_day).map(|day| {
        let ready = six_digits(curve.of_100_by(day));
        Row::of(["ready_by", &format!("day {day}"), &ready, "of 100"])
    });
    days.into_iter().chain(by).collect()
}

fn reasons(forecast: &Forecast) -> Vec<Row> {
    let curve = &forecast.curve;
    let share = |count: usize| six_digits(100.0 * count as f64 / curve.members.max(1) as f64);
    let waited = curve.waited_for.iter().map(|&(waiting, count)| {
        let what = waiting.map_or("nothing", waited_words);
        Row::of(["waited_for", what, &share(count), "of 100"])
    });
    let breaks = Running::ALL.map(|limit| {
        let of_100 = six_digits(curve.of_100_that_break(limit));
        Row::of([
            "breaks_after",
            limit.key(),
            &of_100,
            "of 100 with a ready day",
        ])
    });
    waited.chain(breaks).collect()
}

fn soil(what: &str, ammonia: &SoilAmmonia) -> Vec<Row> {
    let told = DAYS.iter().zip(ammonia);
    told.filter_map(|(day, points)| points.map(|points| (day, points)))
        .flat_map(|(day, points)| {
            let row = move |(share, value): (f64, f64)| {
                Row::of([
                    format!("{what}_{}", point(share)),
                    format!("day {day}"),
                    six_digits(value),
                    "mg N/L".into(),
                ])
            };
            SHARES.into_iter().zip(points).map(row)
        })
        .collect()
}

fn worth(test: &Worth) -> Row {
    let narrowed = six_digits(100.0 * test.narrowed.max(0.0));
    let when = format!("day {}", test.day);
    let what = format!("{}_test_narrows", test.tested.words());
    Row::of([what.as_str(), &when, &narrowed, "% of the squared error"])
}

fn confirming(test: &Confirming, kit: &TestKit, limits: [f64; 2]) -> Vec<Row> {
    let cards = [
        (
            "confirming_ammonia",
            &test.ammonia,
            &kit.ammonia.unit,
            limits[0],
        ),
        (
            "confirming_nitrite",
            &test.nitrite,
            &kit.nitrite.unit,
            limits[1],
        ),
    ];
    let when = match test.days_before {
        1 => "1 day before".to_string(),
        days => format!("{days} days before"),
    };
    let row = |what: &str, unit: &str, (share, step): (f64, &Step)| {
        let name = format!("{what}_{}", point(share));
        Row::of([name.as_str(), &when, &six_digits(step.printed), unit])
    };
    let stand = |what: &str, limit: f64, (share, step): (f64, &Step)| {
        let name = format!("{what}_{}_stands", point(share));
        let word = Stand::under(step.mg_n_per_l, limit).word();
        let limit = format!("limit {} mg N/L", six_digits(limit));
        Row::of([name.as_str(), &when, word, &limit])
    };
    let rows = cards.iter().flat_map(|&(what, steps, unit, limit)| {
        let points = SHARES.into_iter().zip(steps.iter());
        points.flat_map(move |at| [row(what, unit, at), stand(what, limit, at)])
    });
    rows.collect()
}

/// `p05` for 0.05.
fn point(share: f64) -> String {
    format!("p{:02.0}", 100.0 * share)
}

fn heads() -> Vec<Head> {
    vec![
        Head::plain(
            "what",
            "what the number tells",
            "all plausible tanks that did not fail",
        ),
        Head::plain(
            "at",
            "for which day, share of 100, reason or test",
            "as said",
        ),
        Head::plain(
            "value",
            "the number; words where it lies past the run",
            "as said",
        ),
        Head::plain("unit", "its unit", "as said"),
    ]
}
