//! One day, hour by hour: oxygen against its limit, carbon dioxide in the water and as the
//! indicator shows it, pH; above them when light, gas and air were on.

use crate::base::clock::{DAY, TimeOfDay};
use crate::engine::event::EventKind;
use crate::engine::result::Reading;

use super::Story;
use super::axis::{Axis, Scale, Tick, around, from_zero};
use super::ends::{EndName, name_ends};
use super::figure::{Anchor, Field, Figure, Form, Limit, Line, Panel, Shape, Upright, width_of};
use super::rect::{Point, Rect};
use super::series::{Stretch, in_words, last, lowest, of_day, stretches};
use super::sheet::{Key, LEFT, RIGHT, Sheet, bold, change_mark, corners, plain, small, step_mark};
use super::style::{AWAY, BASE, CHANGE, CO2, Colour, DARK, INK, LIGHT, MUTED, OXYGEN, Pen};
use super::words::{list, number, short, span, trimmed};

/// One day of a run, as the chart needs it.
struct Day<'a> {
    story: &'a Story<'a>,
    day: u32,
    readings: Vec<&'a Reading>,
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
    };
    let name = format!("day-{day:02}");
    let mut sheet = Sheet::new(&name, &today.titles(), &today.sentences());
    sheet.key(&[
        Key::Line(Pen::curve(MUTED), "central forecast"),
        Key::Line(Pen::LIMIT, "limit"),
        Key::Change,
        Key::Step,
        Key::Dark,
    ]);
    today.switches(&mut sheet);
    today.oxygen(&mut sheet);
    today.carbon_dioxide(&mut sheet);
    today.acidity(&mut sheet);
    Some(sheet.figure)
}

impl Day<'_> {
    fn hour(&self, minute: u32) -> f64 {
        f64::from(minute - self.day * DAY) / 60.0
    }
    fn curve(&self, value: impl Fn(&Reading) -> f64) -> Vec<Point> {
        let readings = self.readings.iter();
        readings.map(|r| (self.hour(r.minute), value(r))).collect()
    }
    fn when(&self, holds: impl Fn(&Reading) -> bool) -> Vec<Stretch> {
        stretches(&self.readings, self.day, holds)
    }
    /// Bars that say when light, gas and air were on.
    fn switches(&self, sheet: &mut Sheet) {
        let most =
            |value: fn(&Reading) -> f64| self.readings.iter().map(|r| value(r)).fold(0.0, f64::max);
        let light = most(|r| r.light_umol_per_m2_s);
        let gas_g: f64 = self
            .readings
            .windows(2)
            .map(|w| w[0].gas_mg_per_h * f64::from(w[1].minute - w[0].minute) / 60_000.0)
            .sum();
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
            .map(|&(from, until)| shade((hour(from), hour(until)), DARK))
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
        let all = points.iter().map(|p| p.1).chain([bound]);
        let mut panel = self.panel(262.0, 462.0, from_zero(all, 1.2 * bound, 4));
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
        if let Some(low) = lowest(&self.readings, |r| r.oxygen_mg_per_l) {
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
        let all = water.iter().chain(&indicator).map(|p| p.1).chain([bound]);
        let mut panel = self.panel(510.0, 670.0, from_zero(all, 1.2 * bound, 4));
        let pens = [Pen::curve(CO2), Pen::dashed(CO2)];
        let ends = [last(&water), last(&indicator)];
        let high = water.iter().copied().max_by(|a, b| a.1.total_cmp(&b.1));
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
        let mut panel = self.panel(718.0, 834.0, around(low, high, 4));
        let (pen, end) = (Pen::curve(INK), last(&points));
        panel.lines = vec![Line::new("pH", points, pen)];
        let axis = panel.across.clone();
        let at = sheet.panel(panel, "pH", "", 14.0);
        let both = format!("{}–{}", number(low, 1), number(high, 1));
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
    fn time(&self, minute: u32) -> TimeOfDay {
        TimeOfDay(minute - self.day * DAY)
    }
}

fn upright(at: f64, pen: Pen) -> Upright {
    Upright { at, pen }
}

/// Something that was done on the day.
struct Done {
    minute: u32,
    words: String,
    is_change: bool,
}

impl Day<'_> {
    /// What was done, one entry per minute.
    fn steps(&self) -> Vec<Done> {
        let of_today = |minute: u32| minute / DAY == self.day;
        let events = self.story.run.input.events.iter();
        let mut found: Vec<(u32, u8, String)> = events
            .filter(|e| of_today(e.minute))
            .map(|e| (e.minute, e.kind.rank(), event_words(&e.kind)))
            .collect();
        found.sort();
        found.dedup();
        let mut steps: Vec<Done> = Vec::new();
        for (minute, _, words) in found {
            let is_change = words.ends_with("water change");
            match steps.last_mut() {
                Some(last) if last.minute == minute => {
                    last.words += &format!(", {words}");
                    last.is_change |= is_change;
                }
                _ => steps.push(Done {
                    minute,
                    words,
                    is_change,
                }),
            }
        }
        steps
    }
    /// Marks on the upper frame with what was done, each in the lowest row with room.
    fn name_steps(&self, sheet: &mut Sheet, at: usize) {
        for step in self.steps() {
            let this = &sheet.figure.panels[at];
            let (x, top) = (this.x(self.hour(step.minute)), this.frame.top);
            sheet.shape(if step.is_change {
                change_mark((x, top))
            } else {
                step_mark((x, top - 5.0))
            });
            let words = format!("{} {}", step.words, self.time(step.minute));
            let spans = vec![small(&words, if step.is_change { CHANGE } else { INK })];
            let half = width_of(&spans) / 2.0;
            let middle = x.clamp(LEFT + half, RIGHT + 100.0 - half);
            let rows = [top - 14.0, top - 31.0];
            let _ = rows
                .into_iter()
                .any(|row| sheet.say_clear(spans.clone(), Anchor::Middle, middle, row));
        }
    }
    fn titles(&self) -> Vec<String> {
        let (low, high) = range(&self.curve(|r| r.oxygen_mg_per_l));
        let Some(lowest) = lowest(&self.readings, |r| r.oxygen_mg_per_l) else {
            return Vec::new();
        };
        let (day, low, high) = (
            self.story.calendar().day(self.day),
            number(low, 1),
            number(high, 1),
        );
        let time = self.time(lowest.minute);
        if self.story.milestones.oxygen_low.minute / DAY == self.day {
            return vec![
                format!("The worst night: oxygen falls to {low} mg/L at {time} on {day}"),
                format!("The worst night: oxygen falls to {low} mg/L at {time}"),
            ];
        }
        let day = format!("D{}", &day[1..]);
        vec![format!(
            "{day}: oxygen between {low} and {high} mg/L, lowest at {time}"
        )]
    }
    fn sentences(&self) -> Vec<String> {
        let under = self.under_words();
        let lag = self.lag_words();
        vec![format!("{under} {lag}"), under]
    }
    /// How long oxygen is under its limit.
    fn under_words(&self) -> String {
        let bound = self.story.case.limits.oxygen.value;
        let under = under(&self.curve(|r| r.oxygen_mg_per_l), bound);
        let minute = |hour: f64| (hour * 60.0).round() as u32;
        let named: Vec<String> = under
            .iter()
            .map(|&(from, until)| in_words((minute(from), minute(until))))
            .collect();
        match named.len() {
            0 => format!("Oxygen stays over its limit of {} mg/L.", trimmed(bound)),
            1 | 2 => format!("Oxygen is under its limit from {}.", list(&named)),
            _ => format!(
                "Oxygen is under its limit for {} in all.",
                span(minutes(&under))
            ),
        }
    }
    /// How far the indicator trails the water when the lights go on.
    fn lag_words(&self) -> String {
        let lit = self.when(|r| r.light_umol_per_m2_s > 0.0);
        let on = lit.first().map(|s| self.day * DAY + s.0);
        let reading = on.and_then(|on| self.readings.iter().find(|r| r.minute == on));
        match reading {
            Some(r) => format!(
                "At lights-on the water holds {} mg/L CO₂ while the indicator shows {}.",
                short(r.co2_mg_per_l),
                short(r.indicator_co2_mg_per_l)
            ),
            None => "The lights stay off all day.".to_string(),
        }
    }
}

/// What an event is called on the chart of its day.
fn event_words(kind: &EventKind) -> String {
    match kind {
        EventKind::Change { share } => {
            format!("{} % water change", number(100.0 * share, 0))
        }
        EventKind::Trim { .. } => "trim".into(),
        EventKind::Siphon { .. } => "siphon".into(),
        EventKind::Wipe { .. } => "wipe".into(),
        EventKind::CleanFilter { .. } => "filter cleaned".into(),
        EventKind::Dose(_) => "dose".into(),
        EventKind::Seed { .. } => "seeded".into(),
        EventKind::Plant { .. } => "planted".into(),
        EventKind::Stock(animals) if animals.shrimp => "shrimp in".into(),
        EventKind::Stock(_) => "fish in".into(),
        EventKind::Uneaten { .. } => "feed left over".into(),
    }
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

/// Lowest and highest value of a curve.
fn range(points: &[Point]) -> (f64, f64) {
    points
        .iter()
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), p| {
            (l.min(p.1), h.max(p.1))
        })
}

/// Where a curve lies under a bound, hours; crossings between two points are drawn straight.
fn under(points: &[Point], bound: f64) -> Vec<(f64, f64)> {
    let mut found: Vec<(f64, f64)> = Vec::new();
    for two in points.windows(2) {
        let ((x0, y0), (x1, y1)) = (two[0], two[1]);
        if x1 <= x0 || (y0 >= bound && y1 >= bound) {
            continue;
        }
        let crossing = x0 + (bound - y0) / (y1 - y0) * (x1 - x0);
        let from = if y0 < bound { x0 } else { crossing };
        let until = if y1 < bound { x1 } else { crossing };
        match found.last_mut() {
            Some(last) if (last.1 - from).abs() < 1e-9 => last.1 = until,
            _ => found.push((from, until)),
        }
    }
    found
}

/// Minutes of stretches of hours.
fn minutes(stretches: &[(f64, f64)]) -> u32 {
    let hours: f64 = stretches.iter().map(|s| s.1 - s.0).sum();
    (hours * 60.0).round() as u32
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn time_under_a_bound_is_cut_at_the_crossings() {
        let curve = [(0.0, 6.0), (2.0, 4.0), (3.0, 4.0), (4.0, 6.0)];
        assert_eq!(under(&curve, 5.0), [(1.0, 3.5)]);
        assert_eq!(minutes(&under(&curve, 5.0)), 150);
        assert_eq!(under(&curve, 3.0), []);
    }
}
