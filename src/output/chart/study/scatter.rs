//! A milestone against its six strongest inputs: a dot a run, and the running median.

use crate::analysis::study::findings::Found;
use crate::analysis::study::findings::index::Kind;
use crate::analysis::study::findings::judged::Judged;
use crate::analysis::study::input::{Input, Spread};
use crate::output::chart::axis::{Axis, around, from_zero};
use crate::output::chart::figure::{Figure, Line, Panel, Shape};
use crate::output::chart::key::Key;
use crate::output::chart::later::{later, up_to_the_end};
use crate::output::chart::notes::write;
use crate::output::chart::rect::Point;
use crate::output::chart::sheet::Sheet;
use crate::output::chart::style::{INK, Pen, WHITE};
use crate::output::chart::sweep::tint::over_white;
use crate::output::study::Story;
use crate::output::study::words::{name, unit, value};
use crate::output::text::words::capital;

use super::across::{across, are_numbered};
use super::hues::hue;
use super::running_median::{FOR_A_LINE, middle, running_median};
use super::{small, titles};

/// Dots of a panel.
const DOTS: usize = 500;
/// One of so many parts of all runs is an end.
const ENDS: usize = 5;
/// Radius of a dot, and how much of its hue is left over white.
const DOT: f64 = 2.0;
const PALE: f64 = 0.5;
/// How far dots of a setting are spread about it, as a share of the way to the next.
const SPREAD: f64 = 0.6;
/// An axis begins at zero where the lowest value is under this share of the highest.
const FROM_ZERO: f64 = 0.5;
const STEPS: usize = 4;
/// Base line of the last note.
const LAST_NOTE: f64 = 876.0;

/// The chart of the milestone that is told first; none where no rows were kept or nothing moves it.
pub fn figure(story: &Story<'_>) -> Option<Figure> {
    let (main, judged) = titles::of_main(story)?;
    let inputs = strongest(story, main, &judged);
    if inputs.is_empty() || story.findings.points.rows() == 0 {
        return None;
    }
    let outputs: Vec<f64> = story.findings.points.outputs(0);
    let mut sheet = Sheet::new(
        "scatter",
        &ends(story, main, &outputs, inputs[0]),
        &sentences(story, main),
    );
    let line = Pen::curve(INK).wide(2.2);
    if story.findings.points.rows() >= FOR_A_LINE || any_settings(story, &inputs) {
        sheet.key(&[Key::Line(line, "middle of the runs nearby")]);
    }
    for (number, &input) in inputs.iter().enumerate() {
        draw(&mut sheet, story, main, &outputs, (number, input));
    }
    write(&mut sheet, &titles::limits(story, main), LAST_NOTE);
    Some(sheet.figure)
}

fn any_settings(story: &Story<'_>, inputs: &[usize]) -> bool {
    let mut spreads = inputs.iter().map(|&at| &story.study.inputs[at].spread);
    spreads.any(|spread| matches!(spread, Spread::Settings(_)))
}

/// From where to where the milestone goes along the strongest input, in a fifth of all runs at either end.
fn ends(story: &Story<'_>, main: &Found, outputs: &[f64], input: usize) -> Vec<String> {
    let mut order: Vec<Point> = story
        .findings
        .points
        .places(input)
        .zip(outputs.iter().copied())
        .collect();
    order.sort_by(|a, b| a.0.total_cmp(&b.0));
    let few = (order.len() / ENDS).max(1);
    let input_of = &story.study.inputs[input];
    let said = |slot: &[Point]| {
        let middle = middle(slot.iter().map(|point| point.1));
        value(&main.milestone, middle, story.study.last_day)
    };
    if let Spread::Settings(settings) = &input_of.spread {
        return of_settings(story, main, input_of, settings, &order);
    }
    let (low, high) = (said(&order[..few]), said(&order[order.len() - few..]));
    let factor = &story.findings.factors[input];
    let milestone = capital(main.milestone.short);
    let of = |name: &str| format!("{milestone}: {low} with low {name}, {high} with high");
    vec![of(&name(factor)), of(&factor.name)]
}

/// From the setting with the lowest middle to that with the highest.
fn of_settings(
    story: &Story<'_>,
    main: &Found,
    input: &Input,
    settings: &[String],
    order: &[Point],
) -> Vec<String> {
    let is_of = |point: &Point, at: usize| input.at(point.0) as usize == at;
    let of_setting = |(at, setting)| {
        let runs = || order.iter().filter(|point| is_of(point, at));
        let any = runs().next().is_some();
        any.then(|| (setting, middle(runs().map(|point| point.1))))
    };
    let mut middles: Vec<(&String, f64)> =
        settings.iter().enumerate().filter_map(of_setting).collect();
    middles.sort_by(|a, b| a.1.total_cmp(&b.1));
    let milestone = capital(main.milestone.short);
    let said = |(setting, of): &(&String, f64)| {
        format!(
            "{} with {setting}",
            value(&main.milestone, *of, story.study.last_day)
        )
    };
    match middles.as_slice() {
        [lowest, .., highest] => vec![
            format!("{milestone}: {}, {}", said(lowest), said(highest)),
            format!("{milestone}: {}", said(lowest)),
            milestone,
        ],
        _ => vec![milestone],
    }
}

/// `1 sixty … 5 weekly-changes` below the numbers of settings that are words.
fn below(input: &Input) -> String {
    match &input.spread {
        Spread::Settings(settings) if are_numbered(settings) => match settings.as_slice() {
            [first, .., last] => format!("1 {first} … {} {last}", settings.len()),
            _ => String::new(),
        },
        _ => String::new(),
    }
}

/// What a dot is; the longest wording first.
fn sentences(story: &Story<'_>, main: &Found) -> Vec<String> {
    let shown = story.findings.points.rows().min(DOTS);
    let unit = match unit(&main.milestone).trim() {
        "" | "days" => String::new(),
        unit => format!(" ({unit})"),
    };
    let milestone = main.milestone.short;
    let line = match story.findings.points.rows() < FOR_A_LINE {
        true => {
            format!("a line through the middle of runs nearby is drawn from {FOR_A_LINE} runs on")
        }
        false => "the line runs through the middle of all runs nearby".to_string(),
    };
    let dot = format!("A dot is one of {shown} runs; {line}.");
    let late = match main.outputs.beyond {
        0 => String::new(),
        _ => format!(" Uppermost: later than day {}.", story.study.last_day),
    };
    vec![
        format!("The {milestone}{unit} against the inputs that move it most. {dot}{late}"),
        format!("{dot}{late}"),
    ]
}

/// The strongest inputs: of groups, those whose ranks are largest.
fn strongest(story: &Story<'_>, main: &Found, judged: &Judged) -> Vec<usize> {
    let inputs = story.study.inputs.len();
    let mut order: Vec<usize> = judged.order.iter().map(|(factor, _)| *factor).collect();
    if order.iter().any(|factor| *factor >= inputs) {
        let mut ranks: Vec<_> = main.of(Kind::Rank).collect();
        ranks.sort_by(|a, b| b.value.abs().total_cmp(&a.value.abs()));
        order = ranks.into_iter().map(|index| index.factor).collect();
    }
    order.truncate(small::MOST);
    order
}

fn draw(
    sheet: &mut Sheet,
    story: &Story<'_>,
    main: &Found,
    outputs: &[f64],
    (number, at): (usize, usize),
) {
    let input = &story.study.inputs[at];
    let height = |output: f64| match story.study.is_beyond(&main.milestone, output) {
        true => later(story.study.last_day),
        false => output,
    };
    let places = story.findings.points.places(at);
    let points: Vec<Point> = places
        .zip(outputs)
        .map(|(place, output)| (along(input, place), height(*output)))
        .collect();
    let heights: Vec<f64> = points.iter().map(|point| point.1).collect();
    let up = match main.milestone.is_a_ready_day() {
        true => up_to_the_end(&heights, story.study.last_day, up),
        false => up(&heights),
    };
    let middle = running_median(input, &points, story);
    let mut panel = Panel::new(small::frame(number), across(input), up);
    let stretches = stretches(input, &middle);
    for stretch in &stretches {
        let line = Line::new(
            "middle of the runs nearby",
            stretch.clone(),
            Pen::curve(INK),
        );
        panel.lines.push(line);
    }
    let factor = &story.findings.factors[at];
    let panel = small::add(sheet, panel, factor, input, &below(input));
    let colour = over_white(hue(input.group), PALE);
    let inside = |point: &&Point| sheet.figure.panels[panel].across.holds(point.0);
    let shown: Vec<Point> = points.iter().take(DOTS).filter(inside).copied().collect();
    for point in shown {
        let place = sheet.figure.panels[panel].at(point);
        sheet.shape(Shape::Disc(place, DOT, colour));
    }
    // over the dots
    for stretch in stretches {
        let path = sheet.figure.panels[panel].path(&stretch);
        for pen in [Pen::curve(WHITE).wide(5.0), Pen::curve(INK).wide(2.2)] {
            sheet.shape(Shape::Path(path.clone(), pen));
        }
    }
}

/// The running median as it is drawn: one line; of settings, which have no order, a level each.
fn stretches(input: &Input, middle: &[Point]) -> Vec<Vec<Point>> {
    let level = |(x, y): &Point| {
        let setting = (x + 0.5).floor();
        vec![(setting - SPREAD / 2.0, *y), (setting + SPREAD / 2.0, *y)]
    };
    match &input.spread {
        Spread::Settings(_) => middle.iter().map(level).collect(),
        _ => vec![middle.to_vec()],
    }
}

/// Where a place lies along the axis; runs of one setting are spread a little about it.
fn along(input: &Input, place: f64) -> f64 {
    let value = input.at(place);
    match &input.spread {
        Spread::Settings(settings) => {
            value + SPREAD * (place * settings.len() as f64 - value - 0.5)
        }
        _ => input.shown(value),
    }
}

fn up(heights: &[f64]) -> Axis {
    let low = heights.iter().copied().fold(f64::INFINITY, f64::min);
    let high = heights.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    match low < FROM_ZERO * high || !low.is_finite() {
        true => from_zero(heights.iter().copied(), 1e-9, STEPS),
        false => around(low, high, STEPS),
    }
}
