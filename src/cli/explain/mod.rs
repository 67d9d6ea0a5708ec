//! `explain`: tables made from the code itself.

mod columns;
mod keys;
mod limits;
mod milestones;
mod parameters;
mod processes;
mod sheet;
mod sources;
mod units;

use clap::ValueEnum;

use super::args::{Explain, Topic};
use super::exit::Failure;
use super::say;
use sheet::Sheet;

/// Prints one topic, or the list of topics.
pub fn explain(options: &Explain) -> Result<(), Failure> {
    let Some(topic) = options.topic else {
        return say::out(&topics().table(say::width()));
    };
    match (topic, options.csv) {
        (Topic::Processes, true) => say::out(&processes::matrix().csv()),
        (_, true) => say::out(&sheet_of(topic).csv()),
        (_, false) => say::out(&sheet_of(topic).table(say::width())),
    }
}

fn sheet_of(topic: Topic) -> Sheet {
    match topic {
        Topic::Processes => processes::sheet(),
        Topic::Parameters => parameters::sheet(),
        Topic::Columns => columns::sheet(),
        Topic::Units => units::sheet(),
        Topic::Sources => sources::sheet(),
        Topic::Limits => limits::sheet(),
        Topic::Keys => keys::sheet(),
        Topic::Milestones => milestones::sheet(),
        Topic::Study => keys::of_studies(),
    }
}

fn topics() -> Sheet {
    let mut sheet = Sheet::new(&["topic", "what it lists"]);
    for topic in Topic::value_variants() {
        let Some(value) = topic.to_possible_value() else {
            continue;
        };
        let help = value.get_help().map_or(String::new(), ToString::to_string);
        sheet.row([value.get_name().to_string(), help]);
    }
    sheet.foot("firstfill explain TOPIC prints one; add --csv for a spreadsheet.");
    sheet
}
