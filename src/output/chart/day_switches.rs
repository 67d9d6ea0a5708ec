//! The bars above the chart of a day: when light, gas and air were on, and how much.

use crate::base::clock::{DAY, TimeOfDay};
use crate::engine::result::Reading;

use super::day::Day;
use super::figure::{Anchor, Shape, width_of};
use super::rect::Rect;
use super::series::Stretch;
use super::sheet::{LEFT, RIGHT, Sheet, bold, plain, small};
use super::signs::corners;
use super::style::{AWAY, CO2, Colour, INK, LIGHT, MUTED, OXYGEN};
use super::words::number;

impl Day<'_> {
    /// Bars that say when light, gas and air were on.
    pub fn switches(&self, sheet: &mut Sheet) {
        let most =
            |value: fn(&Reading) -> f64| self.readings.iter().map(|r| value(r)).fold(0.0, f64::max);
        let light = most(|r| r.light_umol_per_m2_s);
        let used = |reading: Option<&&Reading>| reading.map_or(0.0, |r| r.gas_used_g);
        let gas_g = used(self.readings.last()) - used(self.readings.first());
        let air = most(|r| r.air_l_per_min);
        let rows = [
            Switch {
                name: "light",
                amount: format!("{} µmol/m²/s", number(light, 0)),
                colour: LIGHT,
                on: self.when(|r| r.light_umol_per_m2_s > 0.0),
            },
            Switch {
                name: "gas",
                amount: format!("{} g", number(gas_g, 1)),
                colour: CO2,
                on: self.when(|r| r.gas_mg_per_h > 0.0),
            },
            Switch {
                name: "air",
                amount: format!("{} L/min", number(air, 1)),
                colour: OXYGEN,
                on: self.when(|r| r.air_l_per_min > 0.0),
            },
        ];
        for (n, row) in rows.iter().enumerate() {
            row.draw(sheet, 134.0 + 25.0 * n as f64);
        }
    }
}

/// One of the three bars.
struct Switch {
    name: &'static str,
    amount: String,
    colour: Colour,
    on: Vec<Stretch>,
}

impl Switch {
    /// Draws the bar with its top at a height of the page.
    fn draw(&self, sheet: &mut Sheet, top: f64) {
        let x = |minute: u32| LEFT + f64::from(minute) / f64::from(DAY) * (RIGHT - LEFT);
        let bar = |from: f64, until: f64| corners(&Rect::new(from, top, until, top + 16.0));
        sheet.shape(Shape::Fill(bar(LEFT, RIGHT), AWAY, 1.0));
        for &(from, until) in &self.on {
            sheet.shape(Shape::Fill(bar(x(from), x(until)), self.colour, 0.85));
        }
        let baseline = top + 12.5;
        self.name_times(sheet, x, baseline);
        let mut name = vec![bold(self.name, INK)];
        if self.on.is_empty() {
            let words = vec![small(&format!("no {} on this day", self.name), MUTED)];
            sheet.say(words, Anchor::Middle, (LEFT + RIGHT) / 2.0, baseline);
        } else {
            name.push(plain(&self.amount, MUTED));
        }
        sheet.say(name, Anchor::Start, RIGHT + 12.0, baseline);
    }
    /// The times at both ends of each piece, where they do not fall on another piece.
    fn name_times(&self, sheet: &mut Sheet, x: impl Fn(u32) -> f64, baseline: f64) {
        let free = |left: f64, right: f64| {
            left >= LEFT
                && right <= RIGHT
                && !self.on.iter().any(|s| x(s.0) < right && left < x(s.1))
        };
        for &(from, until) in &self.on {
            let words = |minute: u32| vec![small(&TimeOfDay(minute).to_string(), INK)];
            let width = width_of(&words(0));
            let (left, right) = (x(from) - 8.0, x(until) + 8.0);
            if from > 0 && free(left - width, left) {
                sheet.say_clear(words(from), Anchor::End, left, baseline);
            }
            if until < DAY && free(right, right + width) {
                sheet.say_clear(words(until), Anchor::Start, right, baseline);
            }
        }
    }
}
