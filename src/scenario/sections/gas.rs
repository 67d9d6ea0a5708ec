//! `[gas]`: carbon dioxide, as a rate or as a valve tuned on some days.

use crate::analysis::case::PlanStep;
use crate::analysis::uncertain::moves::{Move, Place as To};
use crate::base::clock::{HOUR, Window};
use crate::base::units::{digits, everyday};
use crate::engine::input::{GasHours, GasPlan, TimerLine};
use crate::scenario::draft::Draft;
use crate::scenario::problem::Problem;
use crate::scenario::reader::{Read, Reader, Said};
use crate::scenario::steps::{self, Line, Step};
use crate::scenario::timer;

const SECONDS_PER_HOUR: f64 = 3600.0;

/// Gas leaving the cylinder, as it is said.
#[derive(Debug, Clone, Copy)]
enum Rate {
    /// Spread over the gas hours, mg/day.
    PerDay(Said),
    /// While on, mg/h.
    PerHour(Said),
    /// While on, so many mg/h in one bubble a second.
    Bubbles(Said, f64),
}

impl Rate {
    fn said(self) -> Said {
        match self {
            Rate::PerDay(said) | Rate::PerHour(said) | Rate::Bubbles(said, _) => said,
        }
    }
    fn mg_per_h(self, window: Window) -> f64 {
        match self {
            Rate::PerHour(said) => said.value,
            Rate::Bubbles(said, mg_per_h) => said.value * mg_per_h,
            Rate::PerDay(said) => said.value / (f64::from(window.minutes()) / f64::from(HOUR)),
        }
    }
    /// The factor from what is said to mg/h.
    fn factor(self, window: Window) -> f64 {
        match self {
            Rate::PerHour(_) => 1.0,
            Rate::Bubbles(_, mg_per_h) => mg_per_h,
            Rate::PerDay(_) => f64::from(HOUR) / f64::from(window.minutes()),
        }
    }
}

/// What `[gas]` says, before it is put together.
struct GasSection {
    window: Read<Window>,
    hold: Read<f64>,
    rate: Read<Rate>,
    tuned_on: Vec<u32>,
    stop_at: Read<f64>,
    first_day: u32,
    steps: Vec<Step<Rate>>,
    /// Diameter of a bubble, mm, where nothing is said of it.
    assumed_bubble_mm: Option<f64>,
}

/// Reads `[gas]`.
pub fn read(file: &Reader<'_>, draft: &mut Draft<'_>, co2_limit: f64, is_dark: bool) -> GasPlan {
    let section = file.section("gas");
    if !section.is_there() {
        section.close();
        draft.fact("Gas", "none");
        return GasPlan::None;
    }
    let gas = parts(&section, draft);
    section.close();
    if !gas.agrees(&section, co2_limit) || !gas.has_hours(&section, is_dark) {
        return GasPlan::None;
    }
    gas.plan(&section, draft)
}

fn parts(section: &Reader<'_>, draft: &mut Draft<'_>) -> GasSection {
    let assumed_bubble_mm = (section.wanted("bubble").is_none()).then(|| draft.parameter("d_bub"));
    let bubble_mg = bubble_mg(section, draft);
    let window = timer::timer(section, "on");
    steps::never_on(section, &window);
    let gas = GasSection {
        window,
        hold: section.said_for("hold", &everyday::CO2, (1.0, 200.0), To::GasTarget),
        rate: rate(section, bubble_mg),
        tuned_on: tuned_on(section, draft),
        stop_at: section.said_for("stop_at", &everyday::CO2, (1.0, 200.0), To::GasCutOff),
        first_day: first_day(section, draft),
        steps: steps::steps(section, &draft.calendar, |entry| rate(entry, bubble_mg)),
        assumed_bubble_mm,
    };
    match section.said("dissolved", &everyday::SHARE, (0.01, 1.0)) {
        Read::Given(share, _) => draft.set_said("eta_CO2", share, "gas.dissolved"),
        Read::Absent => {
            let usual = format!("{} %", digits(100.0 * draft.parameter("eta_CO2")));
            section.assumed("dissolved", usual, "parameter eta_CO2");
        }
        Read::Bad(_) => {}
    }
    gas
}

/// First day with gas: not before the end of the dark start.
fn first_day(section: &Reader<'_>, draft: &Draft<'_>) -> u32 {
    let given = section.count("first_day", (0, i64::from(draft.calendar.last_day)));
    if given.is_absent() {
        let value = draft.dark_days.to_string();
        section.assumed("first_day", value, "at filling, or after the dark start");
    }
    given.or(0).max(draft.dark_days)
}

/// Gas in one bubble, mg: a sphere of the diameter at the density of the gas.
fn bubble_mg(section: &Reader<'_>, draft: &Draft<'_>) -> f64 {
    let diameter_m = section.quantity("bubble", &everyday::LENGTH, (0.0005, 0.02));
    let diameter_mm = diameter_m.map(|m| 1000.0 * m).or(draft.parameter("d_bub"));
    let microlitres = std::f64::consts::PI / 6.0 * diameter_mm * diameter_mm * diameter_mm;
    draft.parameter("rho_gas") * microlitres / 1000.0
}

/// A rate per day, per hour, or in bubbles.
fn rate(section: &Reader<'_>, bubble_mg: f64) -> Read<Rate> {
    let unit = section.unit_of("rate");
    let most = 1e6;
    if everyday::GAS_PER_DAY.spelled(&unit).is_some() {
        let amount = section.said("rate", &everyday::GAS_PER_DAY, (1.0, most));
        return amount.map(Rate::PerDay);
    }
    if everyday::GAS_RATE.spelled(&unit).is_some() {
        let rate = section.said("rate", &everyday::GAS_RATE, (0.1, most));
        return rate.map(Rate::PerHour);
    }
    if everyday::BUBBLE_RATE.spelled(&unit).is_some() {
        let bubbles = section.said("rate", &everyday::BUBBLE_RATE, (0.001, 100.0));
        return bubbles.map(|rate| Rate::Bubbles(rate, bubble_mg * SECONDS_PER_HOUR));
    }
    let Some(entry) = section.wanted("rate") else {
        return Read::Absent;
    };
    let (path, found) = (section.path_of("rate"), entry.node.value.words());
    section.desk.problem(
        Problem::at(
            &entry.node.place,
            format!("{path} needs a rate of gas, but this is {found}"),
        )
        .label("gas leaving the cylinder")
        .help("write it like \"2.4 g/day\", \"300 mg/h\" or \"1.5 bubbles/s\""),
    );
    Read::Bad(entry.node.place.clone())
}

fn tuned_on(section: &Reader<'_>, draft: &mut Draft<'_>) -> Vec<u32> {
    let Some(entry) = section.wanted("tuned_on") else {
        return Vec::new();
    };
    let path = section.path_of("tuned_on");
    let spans = draft
        .calendar
        .spans(draft.desk, &path, &entry.node)
        .unwrap_or_default();
    section.given("tuned_on", &entry.node);
    let mut days: Vec<u32> = spans
        .iter()
        .flat_map(|span| span.first..=span.last)
        .collect();
    days.retain(|&day| day <= draft.calendar.last_day);
    days.sort_unstable();
    days.dedup();
    let (away, there): (Vec<u32>, Vec<u32>) = days.into_iter().partition(|&day| draft.is_away(day));
    draft
        .left_out
        .extend(away.into_iter().map(|day| (day, path.clone())));
    there
}

impl GasSection {
    /// Whether the parts do not contradict each other.
    fn agrees(&self, section: &Reader<'_>, co2_limit: f64) -> bool {
        if let (Some(hold), Some(rate)) = (self.hold.place(), self.rate.place()) {
            section.desk.problem(
                Problem::at(rate, "[gas] has both hold and rate")
                    .label("a fixed setting of the valve")
                    .also(hold, "a valve tuned to a target")
                    .help("keep one of the two; hold = \"none\" takes out an inherited one"),
            );
            return false;
        }
        if self.hold.is_absent() && self.rate.is_absent() {
            if let Some(place) = &section.place {
                section.desk.problem(
                    Problem::at(place, "[gas] does not say how much gas")
                        .help("add hold = \"28 mg/L\" (the highest of the day)")
                        .help("or rate = \"2.4 g/day\""),
                );
            }
            return false;
        }
        if let Read::Given(target, _) = &self.hold
            && *target > co2_limit
        {
            section.desk.notice(format!(
                "gas.hold aims at {} mg/L, above the limit of {} mg/L for animals",
                digits(*target),
                digits(co2_limit)
            ));
        }
        self.belongs(section)
    }
    /// Keys that only go with a rate, and keys that only go with a target.
    fn belongs(&self, section: &Reader<'_>) -> bool {
        let out_of_place = match (&self.hold, self.stop_at.place()) {
            (Read::Given(..), Some(place)) => Some((place, "stop_at", "rate")),
            _ => None,
        };
        if let Some((place, key, needed)) = out_of_place {
            section.desk.problem(
                Problem::at(place, format!("gas.{key} goes with {needed} only"))
                    .label("a valve that is tuned has no controller"),
            );
        }
        out_of_place.is_none()
    }
    /// A rate needs hours; those of a target may be found, if there is light to go by.
    fn has_hours(&self, section: &Reader<'_>, is_dark: bool) -> bool {
        if !self.window.is_absent() {
            return true;
        }
        if self.rate.seen().is_some() {
            section.missing("on");
            return false;
        }
        if is_dark && let Some(place) = &section.place {
            section.desk.problem(
                Problem::at(
                    place,
                    "[gas] has no hours, and there is no [light] to find them from",
                )
                .help("add on = \"10:00..17:30\", or a section [light]"),
            );
        }
        !is_dark
    }
    fn plan(self, section: &Reader<'_>, draft: &mut Draft<'_>) -> GasPlan {
        match (self.hold.seen().copied(), self.rate.seen().copied()) {
            (Some(target), _) => self.hold_plan(section, draft, target),
            (None, Some(rate)) => self.rate_plan(draft, rate),
            (None, None) => GasPlan::None,
        }
    }
    fn rate_plan(self, draft: &mut Draft<'_>, rate: Rate) -> GasPlan {
        let Some(lines) = self.lines(draft, rate) else {
            return GasPlan::None;
        };
        for (at, line) in lines.iter().enumerate() {
            let factor = line.value.factor(line.window);
            (line.value.said()).moves_times(draft.desk, To::Gas(at), factor);
            if let (Rate::Bubbles(..), Some(central_mm)) = (line.value, self.assumed_bubble_mm) {
                let place = To::Bubbles {
                    line: at,
                    central_mm,
                };
                draft.desk.word(&line.name, "d_bub", Move::to(place));
            }
            let mg_per_h = line.value.mg_per_h(line.window);
            let what = format!("gas {} at {} mg/h", line.window, digits(mg_per_h.round()));
            if line.name == "gas" {
                draft.fact(
                    "Gas",
                    format!("{} at {} mg/h", line.window, digits(mg_per_h.round())),
                );
            }
            draft.switches.push(PlanStep {
                day: line.day,
                name: line.name.clone(),
                what,
            });
        }
        GasPlan::Rate {
            lines: engine_lines(&lines),
            cut_off_mg_per_l: self.stop_at.value(),
        }
    }
    fn hold_plan(self, section: &Reader<'_>, draft: &mut Draft<'_>, target: f64) -> GasPlan {
        if let Some(step) = self.steps.iter().find(|step| step.value.is_some()) {
            draft.desk.notice(format!(
                "{} says a rate; with hold it is not used",
                step.name
            ));
        }
        let hours = if self.window.is_absent() {
            section.note_default("on");
            GasHours::Found {
                from_day: self.first_day,
            }
        } else {
            match self.lines(draft, Rate::PerHour(Said::known(0.0))) {
                Some(lines) => GasHours::Given(engine_lines(&lines)),
                None => return GasPlan::None,
            }
        };
        let when = self
            .window
            .seen()
            .map_or("found from the light".to_string(), Window::to_string);
        draft.switches.push(PlanStep {
            day: self.first_day,
            name: "gas".to_string(),
            what: format!(
                "gas, hours {when}, tuned to {} mg/L at the highest",
                digits(target)
            ),
        });
        draft.fact(
            "Gas",
            format!("hours {when}, highest of the day {} mg/L", digits(target)),
        );
        GasPlan::Hold {
            target_mg_per_l: target,
            tuned_on: self.tuned_on.clone(),
            hours,
        }
    }
    fn lines(&self, draft: &Draft<'_>, rate: Rate) -> Option<Vec<Line<Rate>>> {
        let first = Line {
            name: "gas".to_string(),
            day: self.first_day,
            window: *self.window.seen()?,
            value: rate,
        };
        Some(steps::lines(draft, first, &self.steps))
    }
}

fn engine_lines(lines: &[Line<Rate>]) -> Vec<TimerLine> {
    lines
        .iter()
        .map(|line| TimerLine {
            from_day: line.day,
            window: line.window,
            value: line.value.mg_per_h(line.window),
        })
        .collect()
}
