//! `[air]`: the air stone.

use crate::analysis::case::PlanStep;
use crate::analysis::uncertain::moves::Place as To;
use crate::base::units::{digits, everyday};
use crate::engine::input::TimerLine;
use crate::scenario::draft::Draft;
use crate::scenario::reader::{Read, Reader};
use crate::scenario::steps::{self, Line};
use crate::scenario::timer;

const FLOWS: (f64, f64) = (0.01, 100.0);

/// What `[air]` says.
pub struct Air {
    /// Timer, L/min.
    pub lines: Vec<TimerLine>,
    /// The flow given, L/min.
    pub flow_l_per_min: Option<f64>,
}

/// Reads `[air]`.
pub fn read(file: &Reader<'_>, draft: &mut Draft<'_>) -> Air {
    let section = file.section("air");
    let window = timer::timer(&section, "on");
    steps::never_on(&section, &window);
    let flow = section.said("flow", &everyday::FLOW, FLOWS);
    let flow_l_per_min = flow.seen().map(|said| said.value);
    let day = first_day(&section, draft);
    let steps = steps::steps(&section, &draft.calendar, |entry| {
        entry.said("flow", &everyday::FLOW, FLOWS)
    });
    section.close();
    for (is_absent, key) in [(window.is_absent(), "on"), (flow.is_absent(), "flow")] {
        if section.is_there() && is_absent {
            section.missing(key);
        }
    }
    let lines = match (window, flow) {
        (Read::Given(window, _), Read::Given(value, _)) => {
            let name = "air".to_string();
            let first = Line {
                name,
                day,
                window,
                value,
            };
            let lines = steps::lines(draft, first, &steps);
            for (at, line) in lines.iter().enumerate() {
                line.value.moves(draft.desk, To::Air(at));
            }
            plan(draft, &steps::plain(&lines))
        }
        _ => Vec::new(),
    };
    Air {
        lines,
        flow_l_per_min,
    }
}

fn first_day(section: &Reader<'_>, draft: &Draft<'_>) -> u32 {
    let last_day = i64::from(draft.calendar.last_day);
    if section.is_there() {
        section.count_or_default("first_day", (0, last_day))
    } else {
        0
    }
}

/// Notes the lines as steps of the plan.
fn plan(draft: &mut Draft<'_>, lines: &[Line<f64>]) -> Vec<TimerLine> {
    for line in lines {
        let what = format!("{} at {} L/min", line.window, digits(line.value));
        if line.name == "air" {
            draft.fact("Air", what.clone());
        }
        draft.switches.push(PlanStep {
            day: line.day,
            name: line.name.clone(),
            what: format!("air {what}"),
        });
    }
    steps::timer_lines(lines)
}
