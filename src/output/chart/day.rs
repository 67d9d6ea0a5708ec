//! One day, hour by hour: oxygen against its limit, carbon dioxide in the water and as the
//! indicator shows it, pH; above them when light, gas and air were on.

use crate::analysis::beyond::under;
use crate::analysis::charted;
use crate::base::clock::{DAY, TimeOfDay};
use crate::engine::result::Reading;

use super::Story;
use super::axis::{Axis, Scale, Tick, about, from_zero};
use super::bands::heights;
use super::day_hours::{minutes, range};
use super::ends::{EndName, name_ends};
use super::figure::{Anchor, Field, Figure, Form, Limit, Line, Panel, Upright};
use super::key::Key;
use super::rect::{Point, Rect};
use super::series::{Stretch, ends_of_steps, last, lowest, of_day, stretches};
use super::sheet::{LEFT, RIGHT, Sheet, bold, plain, small};
use super::style::{AWAY, BASE, CHANGE, CO2, DUSK, INK, MUTED, OXYGEN, Pen};
use super::words::{number, short, span, trimmed};

/// One day of a run, as the chart needs it.
pub struct Day<'a> {
    /// The run.
    pub story: &'a Story<'a>,
    /// Which day.
    pub day: u32,
    /// Its readings, those inside steps too: what curves are drawn of.
    pub readings: Vec<&'a Reading>,
    /// Those at the ends of steps and at events alone. What is named is read off them, as in the report
    /// and on every other chart, so that an hour is the same wherever it is told.
    pub ends_of_steps: Vec<&'a Reading>,
}

/// The chart of a day; none for a day outside the run.
pub fn figure(story: &Story<'_>, day: u32) -> Option<Figure> {
    if day > story.run.input.last_day {
        return None;
    }
    let readings = of_day(story.run, day);
    if readings.len() < 2 {
        return None;
    }
    let today = Day {
        story,
        day,
        readings,
        ends_of_steps: ends_of_steps(story.run, day),
    };
    let name = format!("day-{day:02}");
    let mut sheet = Sheet::new(&name, &today.titles(), &today.sentences());
    let mut keys = story.curve_keys();
    keys.extend([Key::Line(Pen::LIMIT, "limit"), Key::Dark(DUSK)]);
    let steps = today.steps();
    if steps.iter().any(|s| s.is_change) {
        keys.push(Key::Change);
    }
    if steps.iter().any(|s| !s.is_change) {
        keys.push(Key::Step);
    }
    sheet.key(&keys);
    today.switches(&mut sheet);
    today.oxygen(&mut sheet);
    today.carbon_dioxide(&mut sheet);
    today.acidity(&mut sheet);
    Some(sheet.figure)
}

impl Day<'_> {
    /// Hours since midnight.
    pub fn hour(&self, minute: u32) -> f64 {
        f64::from(minute - self.day * DAY) / 60.0
    }
    /// A quantity over the hours.
    pub fn curve(&self, value: impl Fn(&Reading) -> f64) -> Vec<Point> {
        let readings = self.readings.iter();
        readings.map(|r| (self.hour(r.minute), value(r))).collect()
    }
    /// When something holds.
    pub fn when(&self, holds: impl Fn(&Reading) -> bool) -> Vec<Stretch> {
        stretches(&self.readings, self.day, holds)
    }
    /// An empty panel with the dark hours shaded and the switches of the light as lines.
    fn panel(&self, top: f64, bottom: f64, up: Axis) -> Panel {
        let frame = Rect::new(LEFT, top, RIGHT, bottom);
        let mut panel = Panel::new(frame, hours(), up);
        let dark = self.when(|r| r.light_umol_per_m2_s <= 0.0);
        let shade = |(from, until): (f64, f64), colour| Field {
            across: (from, until),
            up: (panel.up.low, panel.up.high),
            colour,
            alpha: 1.0,
        };
        let hour = |minute: u32| f64::from(minute) / 60.0;
        let mut fields: Vec<Field> = dark
            .iter()
            .map(|&(from, until)| shade((hour(from), hour(until)), DUSK))
            .collect();
        let first = self.hour(self.readings[0].minute);
        if first > 0.0 {
            fields.push(shade((0.0, first), AWAY));
        }
        panel.fields = fields;
        let switches = dark.iter().flat_map(|&(from, until)| [from, until]);
        panel.uprights = switches
            .map(hour)
            .filter(|h| *h > first && *h < 24.0)
            .map(|at| upright(at, Pen::hair(BASE)))
            .collect();
        for step in self.steps().iter().filter(|s| s.is_change) {
            let pen = Pen::hair(CHANGE).wide(1.4);
            panel.uprights.push(upright(self.hour(step.minute), pen));
        }
        panel
    }
    fn oxygen(&self, sheet: &mut Sheet) {
        let bound = self.story.case.limits.oxygen.value;
        let points = self.curve(|r| r.oxygen_mg_per_l);
        let bands = self.bands(charted::OXYGEN, "oxygen", OXYGEN);
        let all = points.iter().map(|p| p.1).chain([bound]);
        let all = all.chain(heights(&bands));
        let mut panel = self.panel(262.0, 462.0, from_zero(all, 1.2 * bound, 4));
        panel.areas = bands;
        let (pen, end) = (Pen::curve(OXYGEN), last(&points));
        let under = under(&points, bound);
        panel.limits = vec![Limit::new("limit", bound, (0.0, 24.0), Pen::LIMIT)];
        for &(from, until) in &under {
            let thick = Pen::hair(INK).wide(3.4);
            let points = vec![(from, bound), (until, bound)];
            panel
                .lines
                .push(Line::new("under the limit", points, thick));
        }
        panel.lines.push(Line::new("oxygen", points, pen));
        let at = sheet.panel(panel, "Oxygen", "mg/L", 14.0);
        self.name_not_full(sheet, at);
        self.name_steps(sheet, at);
        self.name_lowest(sheet, at, &under, bound);
        let names = [
            EndName::curve("O₂", number(end, 1), end, pen),
            EndName::limit("limit", trimmed(bound), bound, Pen::LIMIT),
        ];
        name_ends(sheet, at, &names);
    }
    fn name_lowest(&self, sheet: &mut Sheet, at: usize, under: &[(f64, f64)], bound: f64) {
        if let Some(low) = lowest(&self.ends_of_steps, |r| r.oxygen_mg_per_l) {
            let place = (self.hour(low.minute), low.oxygen_mg_per_l);
            sheet.mark(at, place, Form::Disc, OXYGEN);
            let time = self.time(low.minute);
            let words = format!("lowest {} at {time}", number(place.1, 1));
            sheet.words_at(at, place, vec![bold(&words, INK)]);
        }
        let length = |s: &&(f64, f64)| s.1 - s.0;
        let longest = under.iter().max_by(|a, b| length(a).total_cmp(&length(b)));
        if let Some(&(from, until)) = longest {
            let words = format!("under the limit for {}", span(minutes(under)));
            let place = ((from + until) / 2.0, bound);
            sheet.words_at(at, place, vec![plain(&words, INK)]);
        }
    }
    fn carbon_dioxide(&self, sheet: &mut Sheet) {
        let bound = self.story.case.limits.co2.value;
        let water = self.curve(|r| r.co2_mg_per_l);
        let indicator = self.curve(|r| r.indicator_co2_mg_per_l);
        let bands = self.bands(charted::CO2, "CO₂", CO2);
        let all = water.iter().chain(&indicator).map(|p| p.1);
        let all = all.chain([bound]).chain(heights(&bands));
        let mut panel = self.panel(510.0, 670.0, from_zero(all, 1.2 * bound, 4));
        panel.areas = bands;
        let pens = [Pen::curve(CO2), Pen::dashed(CO2)];
        let ends = [last(&water), last(&indicator)];
        let high = lowest(&self.ends_of_steps, |r| -r.co2_mg_per_l);
        let high = high.map(|r| (self.hour(r.minute), r.co2_mg_per_l));
        panel.limits = vec![Limit::new("limit", bound, (0.0, 24.0), Pen::LIMIT)];
        panel.lines = vec![
            Line::new("water", water, pens[0]),
            Line::new("indicator", indicator, pens[1]),
        ];
        let title = "CO₂ in the water and as the indicator shows it";
        let at = sheet.panel(panel, title, "mg/L", 14.0);
        if let Some(high) = high {
            sheet.mark(at, high, Form::Disc, CO2);
            sheet.words_at(at, high, vec![bold(&self.highest_words(high), INK)]);
        }
        let names = [
            EndName::limit("limit", trimmed(bound), bound, Pen::LIMIT),
            EndName::curve("water", short(ends[0]), ends[0], pens[0]),
            EndName::curve("indicator", short(ends[1]), ends[1], pens[1]),
        ];
        name_ends(sheet, at, &names);
    }
    fn highest_words(&self, (hour, value): Point) -> String {
        let minute = (hour * 60.0).round() as u32;
        let gas = self.when(|r| r.gas_mg_per_h > 0.0);
        if minute < DAY && gas.iter().any(|s| s.1 == minute) {
            format!("highest {} when the gas stops", short(value))
        } else {
            format!("highest {} at {}", short(value), TimeOfDay(minute))
        }
    }
    fn acidity(&self, sheet: &mut Sheet) {
        let points = self.curve(|r| r.ph);
        let (low, high) = range(&points);
        let bands = self.bands(charted::PH, "pH", MUTED);
        let least = heights(&bands).fold(low, f64::min);
        let most = heights(&bands).fold(high, f64::max);
        let mut panel = self.panel(718.0, 834.0, about(least, most, 4));
        panel.areas = bands;
        let (pen, end) = (Pen::curve(INK), last(&points));
        panel.lines = vec![Line::new("pH", points, pen)];
        let axis = panel.across.clone();
        let at = sheet.panel(panel, "pH", "", 14.0);
        let (least, most) = (number(low, 1), number(high, 1));
        let both = match least == most {
            true => least,
            false => format!("{least}–{most}"),
        };
        name_ends(sheet, at, &[EndName::curve("pH", both, end, pen)]);
        sheet.ticks_below(at, &axis);
        let middle = (LEFT + RIGHT) / 2.0;
        let words = vec![small("time of day", MUTED)];
        sheet.say(words, Anchor::Middle, middle, 834.0 + 43.0);
    }
    fn name_not_full(&self, sheet: &mut Sheet, at: usize) {
        let first = self.readings[0].minute;
        if first > self.day * DAY {
            let this = &sheet.figure.panels[at];
            let (x, y) = (this.x(self.hour(first) / 2.0), this.frame.top + 22.0);
            let words = format!("filled at {}", TimeOfDay::of(first));
            sheet.say_if_free(at, vec![small(&words, MUTED)], x, y);
        }
    }
    /// Time of day of a minute of this day.
    pub fn time(&self, minute: u32) -> TimeOfDay {
        TimeOfDay(minute - self.day * DAY)
    }
}

fn upright(at: f64, pen: Pen) -> Upright {
    Upright { at, pen }
}

/// The hours of a day.
fn hours() -> Axis {
    let tick = |hour: u32| Tick {
        value: f64::from(hour),
        words: if hour.is_multiple_of(3) {
            TimeOfDay::at(hour, 0).to_string()
        } else {
            String::new()
        },
    };
    Axis {
        low: 0.0,
        high: 24.0,
        scale: Scale::Even,
        ticks: (0..=24).map(tick).collect(),
    }
}
