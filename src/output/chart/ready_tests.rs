//! What tests should read on the way: a small table of card steps.

use crate::analysis::ensemble::bands::SHARES;
use crate::analysis::ensemble::confirm::Confirming;
use crate::analysis::ensemble::soil::{DAYS, SoilAmmonia};
use crate::analysis::forecast::Forecast;
use crate::analysis::kit::{Card, Step};
use crate::base::quantiles::quantiles;
use crate::output::kit::stands_between;

use super::Story;
use super::figure::{Anchor, Shape, Span};
use super::fonts::Face;
use super::hundred::told;
use super::ready_words::are_few;
use super::sheet::{LEFT, Sheet, bold, plain};
use super::style::{GRID, INK, MUTED, Pen, SENTENCE};
use super::weeks_forecast_words::ever;
use super::words::{counted, trimmed};

/// Base line of the title.
const TITLE: f64 = 690.0;
/// Base line of the heads of columns, and from one row to the next.
const HEADS: f64 = 719.0;
const ROW: f64 = 29.0;
/// Right edges of the columns of days, and of the tests before the ready day.
const OF_DAYS: [f64; DAYS.len()] = [430.0, 530.0, 630.0, 730.0];
const OF_TESTS: [f64; 2] = [950.0, 1136.0];
/// The middle half of [`SHARES`].
const MIDDLE: [usize; 2] = [1, 3];

/// Draws the table.
pub fn table(story: &Story<'_>, sheet: &mut Sheet, forecast: &Forecast) {
    let kit = &story.case.kit;
    let title = vec![
        Span::new("What your tests should read", Face::SemiBold, SENTENCE, INK),
        plain(&unit_words(story, forecast), MUTED),
    ];
    rule(sheet, TITLE - 26.0);
    sheet.say(title, Anchor::Start, LEFT, TITLE);
    heads(sheet, forecast);
    let confirming = &forecast.confirming;
    let chloride = story.milestones.end.chloride_mg_per_l;
    let limits = story.case.limits.of_tests(chloride);
    let tests = |steps: fn(&Confirming) -> &[Step; SHARES.len()], limit: f64| -> Vec<String> {
        let steps = confirming.iter().map(steps);
        steps.map(|steps| against(steps, limit)).collect()
    };
    let mut rows = vec![Row {
        name: bold(&format!("ammonia, {}", kit.ammonia.unit), INK),
        days: of_days(&forecast.soil_ammonia, &kit.ammonia),
        tests: tests(|test| &test.ammonia, limits[0]),
    }];
    rows.extend(forecast.one_bag_less.as_ref().map(|less| Row {
        name: plain("the same with one bag of soil less", MUTED),
        days: of_days(less, &kit.ammonia),
        tests: Vec::new(),
    }));
    rows.push(Row {
        name: bold(&format!("nitrite, {}", kit.nitrite.unit), INK),
        days: of_days(&nitrite(forecast), &kit.nitrite),
        tests: tests(|test| &test.nitrite, limits[1]),
    });
    for (n, row) in rows.into_iter().enumerate() {
        row.draw(sheet, HEADS + ROW * (n + 1) as f64);
    }
}

fn unit_words(story: &Story<'_>, forecast: &Forecast) -> String {
    let animals = match story.case.input.has_animals() {
        true => " without animals",
        false => "",
    };
    let end = match ever(&forecast.curve) {
        none if none.count == 0 => "; no tank is ready, so none is confirmed".to_string(),
        few if are_few(&forecast.curve) => {
            format!("; before ready, those {} only", few.reached_words())
        }
        _ => String::new(),
    };
    format!("steps of the card, in the evening{animals}; the middle 50 of 100 plausible tanks{end}")
}

fn heads(sheet: &mut Sheet, forecast: &Forecast) {
    let head = |sheet: &mut Sheet, words: String, x| {
        sheet.say(vec![plain(&words, MUTED)], Anchor::End, x, HEADS);
    };
    for (day, x) in DAYS.into_iter().zip(OF_DAYS) {
        head(sheet, format!("day {day}"), x);
    }
    for (test, x) in forecast.confirming.iter().zip(OF_TESTS) {
        let days = counted(test.days_before as usize, "day", "days");
        head(sheet, format!("{days} before ready"), x);
    }
}

/// One row of the table.
struct Row {
    name: Span,
    days: [String; DAYS.len()],
    tests: Vec<String>,
}

impl Row {
    fn draw(self, sheet: &mut Sheet, baseline: f64) {
        rule(sheet, baseline - ROW / 2.0 - 4.5);
        sheet.say(vec![self.name], Anchor::Start, LEFT, baseline);
        for (words, x) in self.days.into_iter().zip(OF_DAYS) {
            sheet.say(vec![plain(&words, INK)], Anchor::End, x, baseline);
        }
        for (words, x) in self.tests.into_iter().zip(OF_TESTS) {
            sheet.say(vec![bold(&words, INK)], Anchor::End, x, baseline);
        }
    }
}

fn rule(sheet: &mut Sheet, y: f64) {
    let y = y.floor() + 0.5;
    let ends = vec![(LEFT, y), (OF_TESTS[1], y)];
    sheet.shape(Shape::Path(ends, Pen::hair(GRID)));
}

/// Nitrite on the same evenings, mg N/L.
fn nitrite(forecast: &Forecast) -> SoilAmmonia {
    DAYS.map(|day| {
        let evenings = told(forecast).filter_map(|told| told.evenings.of_day(day));
        let mut values: Vec<f64> = evenings.map(|e| f64::from(e.nitrite)).collect();
        (!values.is_empty()).then(|| quantiles(&mut values, &SHARES))
    })
}

/// Card steps on the days; a dash past the end of the run.
fn of_days(values: &SoilAmmonia, card: &Card) -> [String; DAYS.len()] {
    values.map(|values| match values {
        Some(values) => range(&values.map(|value| card.read(value))),
        None => "–".to_string(),
    })
}

/// The steps between which half of the tanks read, one where both are the same.
fn range(steps: &[Step; SHARES.len()]) -> String {
    let [low, high] = MIDDLE.map(|point| trimmed(steps[point].printed));
    if low == high {
        low
    } else {
        format!("{low}–{high}")
    }
}

/// The same with where the steps stand against the limit: `0–0.2, inside`.
fn against(steps: &[Step; SHARES.len()], limit: f64) -> String {
    let [low, high] = MIDDLE.map(|point| steps[point]);
    format!("{}, {}", range(steps), stands_between(&low, &high, limit))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::kit::TestKit;

    #[test]
    fn half_of_the_tanks_read_between_two_steps_or_on_one() {
        let card = TestKit::default().ammonia;
        // mg N/L; 1 mg NH₄/L is 0.776 mg N/L
        let told = of_days(
            &[
                Some([0.0, 0.75, 1.0, 1.6, 9.0]),
                Some([0.78; 5]),
                None,
                None,
            ],
            &card,
        );
        assert_eq!(told, ["1–2", "1", "–", "–"]);
    }
}
