//! `[light]`: hours, and light at the soil.

use crate::analysis::case::PlanStep;
use crate::analysis::uncertain::moves::Place as To;
use crate::analysis::uncertain::unsure::Known;
use crate::base::units::{digits, everyday};
use crate::engine::input::TimerLine;
use crate::scenario::draft::Draft;
use crate::scenario::problem::Problem;
use crate::scenario::reader::{Read, Reader, Said};
use crate::scenario::steps::{self, Line};
use crate::scenario::timer;

const WORDS: [&str; 3] = ["low", "medium", "high"];
const STRENGTHS: [&str; 3] = ["I_low", "I_medium", "I_high"];

/// Reads `[light]`; without it the tank stays dark.
pub fn read(file: &Reader<'_>, draft: &mut Draft<'_>) -> Vec<TimerLine> {
    let section = file.section("light");
    let window = timer::timer(&section, "on");
    let at_soil = at_soil(&section, draft);
    let steps = steps::steps(&section, &draft.calendar, |entry| at_soil_of(entry, draft));
    section.close();
    if !section.is_there() {
        draft.fact("Light", "none");
        return Vec::new();
    }
    if window.is_absent() {
        section.missing("on");
    }
    steps::never_on(&section, &window);
    let Some(window) = window.value() else {
        return Vec::new();
    };
    let first = Line {
        name: "light".to_string(),
        day: draft.dark_days,
        window,
        value: at_soil,
    };
    let lines = steps::lines(draft, first, &steps);
    for (at, line) in lines.iter().enumerate() {
        line.value.moves(draft.desk, To::Light(at));
    }
    let lines = steps::plain(&lines);
    for line in &lines {
        let what = format!("light {} at {} µmol/m²/s", line.window, digits(line.value));
        draft.switches.push(PlanStep {
            day: line.day,
            name: line.name.clone(),
            what,
        });
    }
    tell(draft, &lines);
    steps::timer_lines(&lines)
}

fn at_soil(section: &Reader<'_>, draft: &Draft<'_>) -> Said {
    let given = at_soil_of(section, draft);
    if !given.is_absent() || !section.is_there() {
        return given.or(Said::known(draft.parameter(STRENGTHS[1])));
    }
    let usual = by_word(section, draft, 1);
    section.assumed("at_soil", everyday::LIGHT.print(usual.value), "medium");
    usual
}

/// What a word for the light stands for.
fn by_word(section: &Reader<'_>, draft: &Draft<'_>, at: usize) -> Said {
    let known = Known::Word(STRENGTHS[at]);
    let unsure = draft.desk.unsure(section.path_of("at_soil"), known);
    Said::unsure(draft.parameter(STRENGTHS[at]), unsure)
}

/// A word or a measured intensity, µmol/m²/s.
fn at_soil_of(section: &Reader<'_>, draft: &Draft<'_>) -> Read<Said> {
    if section.is_word("at_soil") {
        let value = |word: &str| draft.parameter(&format!("I_{word}"));
        let word = section.word_of("at_soil", &WORDS, value, |v| everyday::LIGHT.print(v));
        return word.map(|at| by_word(section, draft, at));
    }
    match section.said("at_soil", &everyday::LIGHT, (0.0, 2500.0)) {
        Read::Given(said, place) if said.value <= 0.0 => {
            let path = section.path_of("at_soil");
            section.desk.problem(
                Problem::at(&place, format!("{path} is 0: the light is never on"))
                    .help("leave [light] out for a dark tank, or use start_up.dark"),
            );
            Read::Bad(place)
        }
        read => read,
    }
}

fn tell(draft: &mut Draft<'_>, lines: &[Line<f64>]) {
    let first = &lines[0];
    let more = match lines.len() {
        1 => String::new(),
        count => format!(
            ", then {}",
            crate::scenario::words::counted(count - 1, "step")
        ),
    };
    let from = if first.day > 0 {
        format!("from day {}: ", first.day)
    } else {
        String::new()
    };
    draft.fact(
        "Light",
        format!(
            "{from}{} at {} µmol/m²/s{more}",
            first.window,
            digits(first.value)
        ),
    );
}
