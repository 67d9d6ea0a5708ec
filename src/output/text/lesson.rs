//! A lesson on the terminal: the question, the words it needs, what the runs show, what to try.

use crate::analysis::lesson::claim::Unsupported;
use crate::analysis::lesson::taught::Taught;
use crate::analysis::lesson::{LESSONS, Lesson};
use crate::output::chart::words::number;
use crate::output::lesson::words::told;
use crate::output::text::words::capital;

use super::{Page, Tone};

/// Width of a column of numbers.
const COLUMN: usize = 8;

/// What the two commands that follow do.
pub const WRITE_FILES: &str =
    "The tanks of this lesson are files; write them, change them, and tell the lesson of yours:";
/// The folder for them in the commands.
const OWN_FOLDER: &str = "mine";

/// The command that writes the scenarios of a lesson.
pub fn write_command(lesson: &Lesson) -> String {
    format!(
        "firstfill lesson {} --scenarios --out {OWN_FOLDER}",
        lesson.key
    )
}

/// The command that tells a lesson of scenarios that were changed.
pub fn tell_command(lesson: &Lesson) -> String {
    format!(
        "firstfill lesson {} --from {OWN_FOLDER} --out {OWN_FOLDER}-told",
        lesson.key
    )
}

/// The list of lessons.
pub fn list() -> Page {
    let mut page = Page::default();
    page.block(
        "firstfill",
        Tone::Strong,
        "lessons; each takes seconds, and ten minutes to read",
    );
    page.gap();
    let widest = LESSONS.iter().map(|lesson| lesson.key.len()).max();
    let widest = widest.unwrap_or(0);
    for (place, lesson) in LESSONS.iter().enumerate() {
        let label = if place == 0 { "Lessons" } else { "" };
        let words = format!("{:widest$}  {}", lesson.key, lesson.title);
        page.block(label, Tone::Plain, words);
    }
    page.gap();
    page.block("Next", Tone::Plain, "firstfill lesson early-changes");
    page
}

/// A lesson that has been run, but for where the files are.
///
/// # Errors
/// When the numbers support no sentence.
pub fn page(taught: &Taught<'_>) -> Result<Page, Unsupported> {
    let lesson = taught.lesson;
    let mut page = Page::default();
    page.block("Lesson", Tone::Strong, lesson.title);
    page.line(Tone::Plain, lesson.question);
    page.gap();
    for (place, term) in lesson.terms.iter().enumerate() {
        let label = if place == 0 { "Words" } else { "" };
        page.block(
            label,
            Tone::Plain,
            format!("{}: {}.", term.word, term.meaning),
        );
    }
    page.gap();
    let (headline, sentences) = told(taught, lesson.shown)?;
    page.block("Shown", Tone::Strong, format!("{headline}."));
    for sentence in sentences {
        page.line(Tone::Plain, sentence);
    }
    page.gap();
    table(&mut page, taught);
    page.gap();
    page.block("Try", Tone::Plain, lesson.to_try);
    page.line(Tone::Plain, WRITE_FILES);
    page.line(Tone::Plain, format!("  {}", write_command(lesson)));
    page.line(Tone::Plain, format!("  {}", tell_command(lesson)));
    for (place, words) in lesson.cannot.iter().enumerate() {
        let label = if place == 0 { "Not shown" } else { "" };
        page.block(label, Tone::Plain, *words);
    }
    page.gap();
    Ok(page)
}

/// The facts of every step: a row per step, a lettered column per fact, and a line for each letter.
fn table(page: &mut Page, taught: &Taught<'_>) {
    let lesson = taught.lesson;
    page.block("Steps", Tone::Plain, capital(lesson.input));
    let widest = lesson.steps.iter().map(|step| step.label.chars().count());
    let widest = widest.max().unwrap_or(0);
    let letters = (0..lesson.facts.len()).map(|place| format!("{:>COLUMN$}", letter(place)));
    page.line(
        Tone::Faint,
        format!("{:widest$}{}", "", letters.collect::<String>()),
    );
    for place in 0..lesson.steps.len() {
        page.line(tone(lesson, place), row(taught, place, widest));
    }
    for (place, fact) in lesson.facts.iter().enumerate() {
        let unit = match fact.unit {
            "" => String::new(),
            unit => format!(", {unit}"),
        };
        page.line(
            Tone::Faint,
            format!("{} {}{unit}", letter(place), fact.name),
        );
    }
}

fn row(taught: &Taught<'_>, place: usize, widest: usize) -> String {
    let (lesson, seen) = (taught.lesson, taught.seen(place));
    let cells = lesson.facts.iter().map(|fact| {
        let value = fact.of(&seen);
        let words = value.map_or("–".into(), |read| number(read.value, fact.digits));
        format!("{words:>COLUMN$}")
    });
    format!(
        "{:widest$}{}",
        lesson.steps[place].label,
        cells.collect::<String>()
    )
}

fn tone(lesson: &Lesson, place: usize) -> Tone {
    match place == lesson.shown {
        true => Tone::Strong,
        false => Tone::Plain,
    }
}

fn letter(place: usize) -> char {
    char::from(b'a' + u8::try_from(place % 26).unwrap_or(0))
}
