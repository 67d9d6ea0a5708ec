//! `[air]`: the air stone.

use crate::analysis::case::PlanStep;
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
    let flow = section.quantity("flow", &everyday::FLOW, FLOWS);
    let last_day = i64::from(draft.calendar.last_day);
    let first_day = section.count("first_day", (0, last_day));
    let steps = steps::steps(&section, &draft.calendar, |entry| {
        entry.quantity("flow", &everyday::FLOW, FLOWS)
    });
    section.close();
    let flow_l_per_min = flow.seen().copied();
    if !section.is_there() {
        return Air {
            lines: Vec::new(),
            flow_l_per_min,
        };
    }
    for (read, key) in [(window.is_absent(), "on"), (flow.is_absent(), "flow")] {
        if read {
            section.missing(key);
        }
    }
    let (Read::Given(window, _), Read::Given(value, _)) = (window, flow) else {
        return Air {
            lines: Vec::new(),
            flow_l_per_min,
        };
    };
    if first_day.is_absent() {
        section.note_default("first_day");
    }
    let first = Line {
        name: "air".to_string(),
        day: first_day.or(0),
        window,
        value,
    };
    let lines = steps::lines(draft, first, &steps);
    for line in &lines {
        draft.switches.push(PlanStep {
            day: line.day,
            name: line.name.clone(),
            what: format!("air {} at {} L/min", line.window, digits(line.value)),
        });
    }
    draft.fact("Air", format!("{window} at {} L/min", digits(value)));
    Air {
        lines: steps::timer_lines(&lines),
        flow_l_per_min,
    }
}
