//! The page of a lesson: a slider over its steps that moves curves and sentences together.

use maud::{Markup, PreEscaped, html};

use crate::analysis::lesson::Lesson;
use crate::analysis::lesson::claim::Unsupported;
use crate::analysis::lesson::fact::{Fact, Read};
use crate::analysis::lesson::taught::Taught;
use crate::output::chart::words::number;
use crate::output::lesson::words::told;
use crate::output::text::lesson::{WRITE_FILES, tell_command, write_command};
use crate::output::text::words::capital;

use super::frame;
use super::lesson_data::Drawn;
use super::plot::Plot;
use super::table::{NOTHING, Words};

/// Moves curves, sentences and readings.
const SCRIPT: &str = include_str!("lesson.js");
const HOURS_A_DAY: u32 = 24;
/// How a fact names the day that is looked at closely.
const THAT_DAY: &str = "that day";

/// The whole page.
///
/// # Errors
/// When the numbers of a step support no sentence.
pub fn page(taught: &Taught<'_>, files: &[(String, String)]) -> Result<String, Unsupported> {
    let drawn = Drawn::of(taught);
    let lesson = taught.lesson;
    let (headline, sentences) = told(taught, lesson.shown)?;
    // inside a script only this sign could end it
    let data = drawn.data()?.to_string().replace('<', "\\u003c");
    let main = html! {
        header {
            p class="over" { "A lesson of firstfill" }
            h1 { (lesson.title) }
            p class="lead" { (lesson.question) }
        }
        (terms(taught))
        section aria-labelledby="look" {
            h2 id="look" { "What the runs show" }
            (controls(&drawn))
            div id="told" aria-live="polite" aria-atomic="true" {
                p class="headline" id="headline" { (unbroken(&headline)) "." }
                ul id="sentences" { @for sentence in &sentences { li { (unbroken(sentence)) } } }
            }
            p id="reading" class="reading" aria-live="polite" {}
            div class="plots" {
                @for place in 0..lesson.panels.len() {
                    (Plot { drawn: &drawn, place, step: lesson.shown }.markup())
                }
            }
            p class="aside" { (under(&drawn)) }
        }
        (numbers(taught))
        section aria-labelledby="try" {
            h2 id="try" { "One thing to try" }
            p { (lesson.to_try) }
            p { (WRITE_FILES) }
            pre { code { (write_command(lesson)) "\n" (tell_command(lesson)) } }
        }
        section aria-labelledby="cannot" {
            h2 id="cannot" { "What the model cannot show here" }
            ul { @for words in lesson.cannot { li { (words) } } }
        }
        (frame::computed(&how(taught), &in_short(taught, files)))
        (frame::cautions())
        script type="application/json" id="data" { (PreEscaped(data)) }
    };
    Ok(frame::page(lesson.title, &main, "", SCRIPT))
}

fn terms(taught: &Taught<'_>) -> Markup {
    html! {
        section aria-labelledby="words" {
            h2 id="words" { "Words you will need" }
            dl { @for term in taught.lesson.terms { div { dt { (capital(term.word)) } dd { (capital(term.meaning)) "." } } } }
        }
    }
}

fn controls(drawn: &Drawn<'_>) -> Markup {
    let lesson = drawn.taught.lesson;
    let step = &lesson.steps[lesson.shown];
    let (first, last) = (lesson.window.first_day, lesson.window.last_day + 1);
    let (least, most, at) = match drawn.is_by_the_hour() {
        true => (
            0,
            (last - first) * HOURS_A_DAY,
            (lesson.day - first) * HOURS_A_DAY,
        ),
        false => (first, last, lesson.day),
    };
    html! {
        form class="controls" id="controls" onsubmit="return false" {
            div {
                label for="step" { (capital(lesson.input)) }
                output id="step-words" for="step" { (step.label) }
                input type="range" id="step" min="0" max=(lesson.steps.len() - 1) step="1" value=(lesson.shown) aria-valuetext=(step.label);
            }
            div {
                label for="day" { @if drawn.is_by_the_hour() { "Time to look at" } @else { "Day to look at" } }
                output id="day-words" for="day" { "day " (lesson.day) }
                input type="range" id="day" min=(least) max=(most) step="1" value=(at);
            }
        }
        p class="only-print" { (capital(lesson.input)) ": " b id="print-step" { (step.label) } "." }
    }
}

/// The words with units that stay with their numbers.
pub(super) fn unbroken(words: &str) -> String {
    words
        .replace(" mg N/L", "\u{a0}mg\u{a0}N/L")
        .replace(" mg/L", "\u{a0}mg/L")
}

/// What lies under the plots, in words.
fn under(drawn: &Drawn<'_>) -> String {
    let lesson = drawn.taught.lesson;
    let base = lesson.steps[lesson.base].label;
    let time = match drawn.is_by_the_hour() {
        true => "Time runs from left to right, pale fields are the dark hours",
        false if drawn.taught.has_changes() => {
            "Days run from left to right, fine blue lines are changes of water"
        }
        false => "Days run from left to right",
    };
    format!(
        "{time}. Solid or dashed: the setting of the slider. Dotted: {base}. Numbers on a curve are explained under it. \
         Point at a curve, or move the second slider, to read values."
    )
}

/// The facts of every step.
fn numbers(taught: &Taught<'_>) -> Markup {
    let lesson = taught.lesson;
    let head = |fact: &Fact| match fact.unit {
        "" => capital(fact.name),
        unit => format!("{}, {unit}", capital(fact.name)),
    };
    let mut heads = vec!["Setting".to_string()];
    heads.extend(lesson.facts.iter().map(head));
    let row = |place: usize| {
        let seen = taught.seen(place);
        let mut cells = vec![lesson.steps[place].label.to_string()];
        cells.extend(lesson.facts.iter().map(|fact| {
            let read = fact.of(&seen);
            read.map_or_else(|| NOTHING.into(), |read| cell(fact, read))
        }));
        cells
    };
    let table = Words {
        caption: caption(lesson),
        heads,
        rows: (0..lesson.steps.len()).map(row).collect(),
    };
    html! {
        section aria-labelledby="numbers" {
            h2 id="numbers" { "All settings in numbers" }
            (table.markup(Some(lesson.shown)))
        }
    }
}

/// A number, with its standard error where it is a mean that has one.
fn cell(fact: &Fact, read: Read) -> String {
    let value = number(read.value, fact.digits);
    match fact.is_mean() && read.error > 0.0 {
        true => format!("{value} ± {}", number(read.error, fact.digits)),
        false => value,
    }
}

/// What the rows of the table are, and which day its columns speak of, if any.
fn caption(lesson: &Lesson) -> String {
    let input = capital(lesson.input);
    match lesson.facts.iter().any(|fact| fact.name.contains(THAT_DAY)) {
        true => format!("{input}. That day is day {}.", lesson.day),
        false => format!("{input}."),
    }
}

/// The scenarios: the shared ones as they stand, those of the settings in one piece.
fn in_short(taught: &Taught<'_>, files: &[(String, String)]) -> Vec<(String, String)> {
    let of_step = |name: &str| name.starts_with(&format!("{}-", taught.lesson.key));
    let (steps, mut shared): (Vec<_>, Vec<_>) =
        files.iter().cloned().partition(|(name, _)| of_step(name));
    let texts: Vec<&str> = steps.iter().map(|(_, text)| text.trim_end()).collect();
    shared.push(("settings, one file each".into(), texts.join("\n\n\n")));
    shared
}

fn how(taught: &Taught<'_>) -> Vec<String> {
    vec![
        format!(
            "firstfill {} ran every setting of the slider beforehand, in steps of an hour or less: once as the central run, \
             whose curves are shown, and on the same {} plausible tanks like it (seed {}), over which counts and means are made.",
            env!("CARGO_PKG_VERSION"),
            taught.common.members,
            taught.common.seed
        ),
        "Each sentence on an effect is tied to two numbers of these runs and is chosen by how they stand to each other; a mean \
         counts as different when it is two standard errors away. The curves are in curves.csv, the numbers in steps.csv."
            .into(),
    ]
}
