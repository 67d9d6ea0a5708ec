//! What a study cannot be, though every line of it can be read.

use crate::analysis::case::Case;
use crate::analysis::study::family::Family;
use crate::analysis::study::input::Input;
use crate::analysis::study::tied;
use crate::base::sobol::DIMENSIONS;
use crate::scenario::problem::Problem;
use crate::scenario::reader::Read;
use crate::scenario::tree::Table;
use crate::scenario::words::list_or;

use super::head::Head;
use super::wishes::Wish;

type Answer = Result<(), Vec<Problem>>;

fn one(problem: Problem) -> Answer {
    Err(vec![problem])
}

/// A scenario where a study is read: one answer, not one for each of its lines.
pub fn scenario(table: &Table) -> Answer {
    let first = table.entries.first();
    match first.filter(|_| table.get("study").is_none() && table.get("inputs").is_none()) {
        Some(entry) if ["based_on", "tank"].iter().any(|key| table.get(key).is_some()) => one(
            Problem::at(&entry.key_place, "this is a scenario, not a study")
                .label("a study has [study] and [inputs]")
                .help("write a study file that names it: [study] with scenario = \"…\", [inputs] with what varies")
                .help("two are in scenarios/studies/; firstfill run takes a scenario itself"),
        ),
        _ => Ok(()),
    }
}

/// More combinations of settings than are kept.
pub fn too_many(head: &Head, counts: &[usize], most: usize) -> Answer {
    let combinations = counts
        .iter()
        .fold(1, |all: usize, &count| all.saturating_mul(count));
    if combinations <= most {
        return Ok(());
    }
    let title = format!("the settings make {combinations} combinations, and {most} are the most");
    one(Problem::at(&head.place, title)
        .help("take fewer settings, or ranges where an input can be uncertain"))
}

/// Scenarios of different length.
pub fn lengths(head: &Head, cases: &[Case]) -> Answer {
    let days = cases.iter().map(|case| case.input.last_day);
    if days.clone().min() == days.max() {
        return Ok(());
    }
    let title = "the tanks of the study run for different numbers of days";
    one(Problem::at(&head.place, title)
        .help("weeks that are not there cannot be held against others: leave length as it is"))
}

/// Fewer members than say anything, or more inputs than there are dimensions.
pub fn few_members(head: &Head, inputs: usize) -> Answer {
    let method = head.method;
    if 2 * inputs > DIMENSIONS {
        let title = format!("{inputs} inputs vary, and {} are the most", DIMENSIONS / 2);
        return one(Problem::at(&head.place, title).help("leave out those that can hardly matter"));
    }
    let (fewest, why) = method.fewest_members(inputs);
    if head.members >= fewest {
        return Ok(());
    }
    let place = head.members_place.as_ref().unwrap_or(&head.place);
    let of = match inputs {
        1 => "1 input".to_string(),
        several => format!("{several} inputs"),
    };
    let title = format!(
        "{} too few for method = \"{}\"",
        match head.members {
            1 => "1 member is".to_string(),
            several => format!("{several} members are"),
        },
        method.word()
    );
    one(Problem::at(place, title)
        .label(format!("at least {fewest}"))
        .help(format!("with {of} it takes {fewest}: {why}")))
}

/// Inputs that cannot vary on their own, where each is to have a share of its own.
pub fn tied(head: &Head, family: &Family, inputs: &[Input], list: &[Wish]) -> Answer {
    if !head.method.needs_free_inputs() {
        return Ok(());
    }
    let problem = |tied: tied::Tied| {
        let of = |name: &String| list.iter().find(|wish| wish.name == *name);
        let place = tied
            .names
            .iter()
            .find_map(of)
            .map_or(&head.place, |wish| &wish.place);
        let names = list_or(&tied.names).replace(" or ", " and ");
        Problem::at(place, format!("{names} cannot vary on their own"))
            .label(tied.why)
            .help("take one of them out, or use method = \"points\" or \"latin\", which bear it")
    };
    let problems: Vec<Problem> = tied::tied(family, inputs)
        .into_iter()
        .map(problem)
        .collect();
    match problems.is_empty() {
        true => Ok(()),
        false => Err(problems),
    }
}

/// A day of `ready_by` that no run comes to.
pub fn late(head: &Head, last_day: u32) -> Answer {
    match &head.ready_by {
        Read::Given(day, place) if *day > last_day => one(Problem::at(
            place,
            format!("study.ready_by is day {day}, after the run ends"),
        )
        .label(format!("the last day is {last_day}"))),
        _ => Ok(()),
    }
}
