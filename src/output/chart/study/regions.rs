//! The inputs that differ most between tanks that are ready by a day and the others.

use crate::analysis::study::findings::regions::{Apart, Regions};
use crate::analysis::study::input::{Input, Spread};
use crate::output::chart::axis::{Axis, from_zero};
use crate::output::chart::figure::{Area, Figure, Line, Panel};
use crate::output::chart::key::Key;
use crate::output::chart::notes::{Note, write};
use crate::output::chart::rect::Point;
use crate::output::chart::sheet::Sheet;
use crate::output::chart::style::{INK, Pen, READY};
use crate::output::chart::words::{list, number};
use crate::output::study::Story;
use crate::output::study::numbers::told_apart;
use crate::output::study::ready::{how_many, is_scenario, middles, most_apart};
use crate::output::study::verdict::cannot_say;
use crate::output::study::words::{name, share, with_unit};
use crate::output::text::words::{capital, counted};

use super::across::{across, are_numbered};
use super::small;

/// Inputs named in the title.
const NAMED: usize = 2;
/// How much the area of those that are ready covers.
const COVER: f64 = 0.2;
const STEPS: usize = 4;
/// How a side begins, but for the scenario.
const HAVE: &str = "have ";
/// Base line of the last note.
const LAST_NOTE: f64 = 876.0;

/// The chart; none where all tanks are ready by the day, or none is.
pub fn figure(story: &Story<'_>) -> Option<Figure> {
    let regions = story.findings.regions.as_ref()?;
    let mut sheet = Sheet::new("regions", &titles(story, regions), &sentences(regions));
    sheet.key(&[
        Key::Line(
            ready_pen(),
            "tanks that are ready by then, of 100 so many in each step",
        ),
        Key::Line(others_pen(), "the others, of 100 of them"),
    ]);
    for (number, apart) in regions.inputs.iter().take(small::MOST).enumerate() {
        draw(&mut sheet, story, regions, (number, apart));
    }
    write(
        &mut sheet,
        &[Note::new("Limits", cannot_say(story))],
        LAST_NOTE,
    );
    Some(sheet.figure)
}

fn ready_pen() -> Pen {
    Pen::curve(READY).wide(2.4)
}

fn others_pen() -> Pen {
    Pen::dashed(INK).wide(1.4)
}

/// `Tanks ready by day 21 have higher … (0.85, others 0.66 /day) and lower …`, the longest wording first.
fn titles(story: &Story<'_>, regions: &Regions) -> Vec<String> {
    let by = regions.by_day;
    let clear: Vec<&Apart> = regions.clear().take(NAMED).collect();
    let said = |most: usize, how: Naming| {
        let sides = clear.iter().take(most);
        let words: Vec<String> = sides.map(|apart| side(story, apart, how)).collect();
        format!("Tanks ready by day {by} {}", list(&once(words)))
    };
    match clear.is_empty() {
        true => vec![format!(
            "Nothing is known to set tanks that are ready by day {by} apart from the others"
        )],
        false => vec![
            said(NAMED, Naming::InWords),
            said(1, Naming::InWords),
            said(NAMED, Naming::ByName),
            said(1, Naming::ByName),
        ],
    }
}

/// The verb once where it comes again and again.
fn once(mut sides: Vec<String>) -> Vec<String> {
    let has = |words: &str| words.starts_with(HAVE);
    for at in (1..sides.len()).rev() {
        if has(&sides[at]) && has(&sides[at - 1]) {
            sides[at] = sides[at][HAVE.len()..].to_string();
        }
    }
    sides
}

/// How an input is named.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Naming {
    InWords,
    ByName,
}

/// `have higher growth of oxidisers (0.85, others 0.66 /day)`.
fn side(story: &Story<'_>, apart: &Apart, how: Naming) -> String {
    let input = &story.study.inputs[apart.input];
    let name = match how {
        Naming::InWords => name(&story.findings.factors[apart.input]),
        Naming::ByName => input.name.clone(),
    };
    if let Spread::Settings(settings) = &input.spread {
        let (at, [ready, others]) = most_apart(apart);
        let way = if ready > others { "more" } else { "less" };
        let setting = settings.get(at).map_or("", String::as_str);
        return match is_scenario(input) {
            true => format!("are {way} often {setting}"),
            false => format!("{HAVE}{way} often {setting} as {name}"),
        };
    }
    let middles @ [ready, others] = middles(apart, input);
    let way = if ready > others { "higher" } else { "lower" };
    let [ready, others] = told_apart(middles);
    format!(
        "{HAVE}{way} {name} ({ready}, others {})",
        with_unit(input, &others)
    )
}

fn sentences(regions: &Regions) -> Vec<String> {
    let clear = regions.clear().count();
    let of = regions.inputs.len();
    let differ = if clear == 1 { "differs" } else { "differ" };
    let clear = counted(clear, "input");
    let base = capital(&how_many(regions));
    vec![
        format!(
            "{base}; {clear} of {of} {differ} by more than chance (a distance of {}).",
            number(regions.by_chance, 3)
        ),
        format!("{base}; {clear} {differ} by more than chance."),
        format!("{base}."),
    ]
}

fn draw(
    sheet: &mut Sheet,
    story: &Story<'_>,
    regions: &Regions,
    (number_of_panel, apart): (usize, &Apart),
) {
    let input = &story.study.inputs[apart.input];
    let across = across(input);
    let [ready, others] = [0, 1].map(|side| steps((apart, side), input, &across));
    let heights = ready.iter().chain(&others).map(|point| point.1);
    let up = from_zero(heights, 1.0, STEPS);
    let floor: Vec<Point> = ready.iter().map(|point| (point.0, 0.0)).collect();
    let mut panel = Panel::new(small::frame(number_of_panel), across, up);
    panel.areas.push(Area {
        name: "tanks that are ready, of 100 per step".into(),
        upper: ready.clone(),
        lower: floor,
        colour: READY,
        alpha: COVER,
        edge: None,
    });
    panel
        .lines
        .push(Line::new("the others", others, others_pen()));
    panel.lines.push(Line::new("ready", ready, ready_pen()));
    let factor = &story.findings.factors[apart.input];
    small::add(sheet, panel, factor, input, &below(regions, apart, input));
}

/// The outline of a distribution, in runs of 100 of its side.
fn steps((apart, side): (&Apart, usize), input: &Input, across: &Axis) -> Vec<Point> {
    let bins = apart.ends.windows(2).zip(&apart.shares[side]);
    let clamp = |x: f64| input.shown(x).clamp(across.low, across.high);
    let outline =
        bins.flat_map(|(ends, share)| [ends[0], ends[1]].map(|x| (clamp(x), 100.0 * share)));
    outline.collect()
}

/// `middle 0.92, others 0.71`, or that it may be chance.
fn below(regions: &Regions, apart: &Apart, input: &Input) -> String {
    if apart.region.apart <= regions.by_chance {
        return "may be chance".into();
    }
    if let Spread::Settings(settings) = &input.spread {
        let (at, shares) = most_apart(apart);
        let of_hundred = |of: f64| share(of).trim_end_matches(" %").to_string();
        let [ready, others] = shares.map(of_hundred);
        let setting = settings.get(at).map_or("", String::as_str);
        let number = match are_numbered(settings) {
            true => format!("{} ", at + 1),
            false => String::new(),
        };
        return format!("{number}{setting}: {ready}, others {others}");
    }
    let [ready, others] = told_apart(middles(apart, input));
    format!("middle {ready}, others {others}")
}
