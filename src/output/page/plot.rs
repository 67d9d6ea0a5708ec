//! A plot of a lesson: lines in an SVG that the browser stretches, words in HTML that keep their size.

use maud::{Markup, html};

use crate::analysis::lesson::trace::{Line, Panel, Trace};
use crate::output::chart::words::{number, trimmed};

use super::lesson_data::Drawn;
use super::marks::Mark;
use super::scale::{HIGH, Scale, WIDE, percent};

/// A panel of the step that is shown first.
#[derive(Debug, Clone, Copy)]
pub struct Plot<'a> {
    /// All that is drawn.
    pub drawn: &'a Drawn<'a>,
    /// Which panel.
    pub place: usize,
    /// The step shown first.
    pub step: usize,
}

impl Plot<'_> {
    fn panel(&self) -> &'static Panel {
        &self.drawn.taught.lesson.panels[self.place]
    }
    fn scale(&self) -> Scale {
        self.drawn.scales[self.place]
    }
    /// The whole plot.
    pub fn markup(&self) -> Markup {
        let (panel, place) = (self.panel(), self.place);
        let heading = format!("panel-{place}");
        html! {
            section class="plot" data-panel=(place) aria-labelledby=(heading) {
                h3 id=(heading) { (panel.title) " " span class="unit" { (panel.traces[0].unit()) } }
                (self.legend())
                div class=(if self.drawn.is_by_the_hour() { "canvas hours" } else { "canvas" }) {
                    (self.lines())
                    (self.words())
                }
                ol class="notes" start=(self.first_mark() + 1) data-notes=(place) {
                    @for mark in self.marks() { li { (mark.words) } }
                }
            }
        }
    }
    fn marks(&self) -> impl Iterator<Item = &Mark> {
        let of_step = self.drawn.marks[self.step].iter();
        of_step.filter(|mark| mark.panel == self.place)
    }
    /// How many marks stand in the panels before.
    fn first_mark(&self) -> usize {
        let of_step = self.drawn.marks[self.step].iter();
        of_step.filter(|mark| mark.panel < self.place).count()
    }
    fn legend(&self) -> Markup {
        let (panel, drawn) = (self.panel(), self.drawn);
        let base = drawn.taught.lesson.steps[drawn.taught.lesson.base].label;
        let several = panel.traces.len() > 1;
        html! {
            ul class="legend" {
                @for (rank, &trace) in panel.traces.iter().enumerate() {
                    li { (sample(trace, rank, false)) (trace.name()) " " b data-here=(drawn.at(trace)) { (self.read(self.step, trace)) } }
                    li class="base" { (sample(trace, rank, true)) @if several { (trace.name()) ", " } (base) " " b data-base=(drawn.at(trace)) { (self.read(drawn.taught.lesson.base, trace)) } }
                }
                @for (line, value) in self.levels() {
                    li { svg class="sample" viewBox="0 0 26 8" aria-hidden="true" { path class=(of_line(line)) d="M0 4H26" {} } (line.name) " " b { (trimmed((100.0 * value).round() / 100.0)) } }
                }
            }
        }
    }
    fn levels(&self) -> impl Iterator<Item = (&'static Line, f64)> {
        let step = &self.drawn.taught.steps[self.step];
        let lines = self.panel().lines.iter();
        lines.map(move |line| (line, (line.value)(step)))
    }
    fn read(&self, step: usize, trace: Trace) -> String {
        let course = &self.drawn.taught.courses[step];
        let value = course.at(self.drawn.at(trace), self.drawn.that_minute());
        value.map_or_else(|| "–".into(), |value| number(value, trace.digits()))
    }
    fn lines(&self) -> Markup {
        let (drawn, scale) = (self.drawn, self.scale());
        let lesson = drawn.taught.lesson;
        let (title, words) = (format!("t{}", self.place), format!("d{}", self.place));
        let path = |step: usize, trace: Trace| {
            let course = &drawn.taught.courses[step];
            scale.path(&course.minutes, &course.values[drawn.at(trace)])
        };
        let level = |y: f64| format!("M0 {y:.1}H{WIDE}");
        let upright = |x: f64| format!("M{x:.1} 0V{HIGH}");
        html! {
            svg role="img" aria-labelledby=(format!("{title} {words}")) viewBox=(format!("0 0 {WIDE} {HIGH}")) preserveAspectRatio="none" {
                title id=(title) { (self.panel().title) }
                desc id=(words) { (drawn.described(self.step, self.place)) }
                @for (from, to) in &drawn.dark {
                    rect class="dark" x=(format!("{:.1}", scale.x(*from))) y="0" width=(format!("{:.1}", scale.x(*to) - scale.x(*from))) height=(HIGH) {}
                }
                @for tick in &drawn.axes[self.place].ticks { path class="grid" d=(level(scale.y(tick.value))) {} }
                @for tick in &drawn.across.ticks { path class="grid" d=(upright(scale.x(tick.value))) {} }
                path class="change" data-changes="" d=(drawn.changes[self.step].iter().map(|&day| upright(scale.x(day))).collect::<String>()) {}
                @for (line, value) in self.levels() { path class=(of_line(line)) d=(level(scale.y(value))) {} }
                @for (rank, &trace) in self.panel().traces.iter().enumerate() {
                    path class=(format!("base {}", class(trace, rank))) data-curve-base=(drawn.at(trace)) d=(path(lesson.base, trace)) {}
                    path class=(format!("curve {}", class(trace, rank))) data-curve=(drawn.at(trace)) d=(path(self.step, trace)) {}
                }
                path class="leader" data-leaders="" d=(self.marks().map(Mark::leader).collect::<String>()) {}
                path class="cursor" data-cursor="" d=(upright(scale.x(f64::from(lesson.day)))) {}
            }
        }
    }
    /// Every other hour gives way on a narrow page.
    fn of_tick(&self, place: usize) -> &'static str {
        match self.drawn.is_by_the_hour() && place % 2 == 1 {
            true => "x gives-way",
            false => "x",
        }
    }
    /// The days whose hours are drawn, each with its middle.
    fn days(&self) -> Vec<(f64, String)> {
        let window = self.drawn.taught.lesson.window;
        let all = window.first_day..=window.last_day;
        all.filter(|_| window.is_by_the_hour())
            .map(|day| (f64::from(day) + 0.5, format!("day {day}")))
            .collect()
    }
    /// Ticks, and marks with their numbers; the same is said in the description and in the notes.
    fn words(&self) -> Markup {
        let (scale, drawn) = (self.scale(), self.drawn);
        html! {
            div aria-hidden="true" {
                @for tick in drawn.axes[self.place].ticks.iter().filter(|tick| !tick.words.is_empty()) {
                    span class="y" style=(format!("top:{}", percent(scale.y(tick.value), HIGH))) { (tick.words) }
                }
                @for (place, tick) in drawn.across.ticks.iter().enumerate() {
                    span class=(self.of_tick(place)) style=(format!("left:{}", percent(scale.x(tick.value), WIDE))) { (tick.words) }
                }
                @for (middle, name) in self.days() {
                    span class="x of-day" style=(format!("left:{}", percent(scale.x(middle), WIDE))) { (name) }
                }
                @if !drawn.is_by_the_hour() { span class="y of-foot" { "day" } }
                div data-marks=(self.place) {
                    @for (number, mark) in self.marks().enumerate() {
                        span class="mark" style=(format!("left:{};top:{}", percent(mark.at.0, 1.0), percent(mark.at.1, 1.0))) { (self.first_mark() + number + 1) }
                    }
                }
            }
        }
    }
}

/// A piece of a curve beside its name.
fn sample(trace: Trace, rank: usize, is_base: bool) -> Markup {
    let of = if is_base { "base" } else { "curve" };
    html! {
        svg class="sample" viewBox="0 0 26 8" aria-hidden="true" { path class=(format!("{of} {}", class(trace, rank))) d="M0 4H26" {} }
    }
}

/// A line of reference, in the colour of its curve where it has one.
fn of_line(line: &Line) -> String {
    format!("limit {}", line.of.map_or("ink", hue))
}

/// Colour and line of a curve, by name.
fn class(trace: Trace, rank: usize) -> String {
    format!("{} line-{rank}", hue(trace))
}

fn hue(trace: Trace) -> &'static str {
    match trace {
        Trace::Ammonia | Trace::FreeAmmonia | Trace::AmmoniaOxidisers | Trace::AmmoniaCapacity => {
            "ammonia"
        }
        Trace::Nitrite | Trace::NitriteCapacity => "nitrite",
        Trace::Oxygen => "oxygen",
        Trace::Co2 => "co2",
        Trace::Ph | Trace::Kh => "ink",
        Trace::Ready => "ready",
        Trace::InSoil | Trace::InDetritus => "soil",
        Trace::InPlants => "plants",
        Trace::InWater => "nitrate",
        Trace::CarriedOut => "water",
        Trace::GoneAsGas => "gas",
    }
}
