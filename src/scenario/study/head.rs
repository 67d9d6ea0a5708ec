//! `[study]`: the scenarios, how runs are laid out, and what is looked at.

use std::path::{Component, Path, PathBuf};

use crate::analysis::study::method::{By, Method};
use crate::analysis::study::milestone::{self, Milestone};
use crate::scenario::problem::{Place, Problem};
use crate::scenario::reader::{Read, Reader};
use crate::scenario::tree::{Node, Value};
use crate::scenario::words::list_or;

use super::Asking;
use super::near::near;

/// Most members of any study.
pub const MOST_MEMBERS: i64 = 100_000_000;
/// Most levels of a trajectory.
const MOST_LEVELS: i64 = 100;
/// The day of `ready_by` when nothing is said: four weeks.
pub const USUAL_READY_BY: u32 = 28;

/// A text of the file and where it stands.
pub type Said = (String, Place);

/// What `[study]` says.
pub struct Head {
    pub place: Place,
    pub scenarios: Vec<Said>,
    pub method: Method,
    pub members: usize,
    pub members_place: Option<Place>,
    pub seed: u64,
    pub milestones: Vec<Milestone>,
    pub ready_by: Read<u32>,
}

/// Reads `[study]`; what the command line asks for goes before the file.
pub fn read(file: &Reader<'_>, asking: Asking) -> Head {
    let section = file.section("study");
    let place = section.place.clone().unwrap_or(Place::new(0, 0..0));
    if !section.is_there() {
        file.missing("study");
    }
    let scenarios = scenarios(&section);
    let method = method(&section);
    let members = section.count("members", (1, MOST_MEMBERS));
    let members_place = members
        .place()
        .filter(|_| asking.members.is_none())
        .cloned();
    let members = members.value().map(|members| members as usize);
    let seed = section.count("seed", (0, i64::from(u32::MAX))).or(1);
    let head = Head {
        place,
        scenarios,
        method,
        members: asking.members.or(members).unwrap_or(method.usual_members()),
        members_place,
        seed: asking.seed.unwrap_or(u64::from(seed)),
        milestones: milestones(&section),
        ready_by: section.count("ready_by", (0, 10_000)),
    };
    section.close();
    head
}

fn scenarios(section: &Reader<'_>) -> Vec<Said> {
    let scenarios = texts(section, "scenario");
    for (at, (name, place)) in scenarios.iter().enumerate() {
        let same = scenarios[..at]
            .iter()
            .find(|(earlier, _)| is_the_same(earlier, name));
        if let Some((_, earlier)) = same {
            let problem = Problem::at(place, format!("the scenario {name} is listed twice"));
            let problem = problem.also(earlier, "here it is already");
            section
                .desk
                .problem(problem.help("list each once: settings of an input are equally likely"));
        }
    }
    if section.is_there() && section.entry("scenario").is_none() {
        section.missing("scenario");
    }
    scenarios
}

/// Whether two names are of one file, with or without a dot in front.
fn is_the_same(one: &str, other: &str) -> bool {
    let parts = |name| {
        let parts = Path::new(name).components();
        parts
            .filter(|part| *part != Component::CurDir)
            .collect::<PathBuf>()
    };
    parts(one) == parts(other)
}

/// A text, or a list of them, with their places.
fn texts(section: &Reader<'_>, key: &'static str) -> Vec<Said> {
    let Some(entry) = section.wanted(key) else {
        return Vec::new();
    };
    let nodes = match &entry.node.value {
        Value::List(list) if !list.is_empty() => list.as_slice(),
        _ => std::slice::from_ref(&entry.node),
    };
    let text = |node: &Node| match &node.value {
        Value::Text(text) => Some((text.clone(), node.place.clone())),
        _ => {
            let _: Read<()> = section.wrong_type(key, node, "a text in quotes, or a list of them");
            None
        }
    };
    nodes.iter().filter_map(text).collect()
}

fn method(section: &Reader<'_>) -> Method {
    let said = section.choice("method", &Method::WORDS);
    if section.is_there() && said.is_absent() {
        section.missing("method");
    }
    let by = section.choice("by", &["input", "group"]);
    let second_order = section.truth("second_order");
    let levels = section.count("levels", (2, MOST_LEVELS));
    let method = Method::usual()[said.or(0)];
    let of = [
        ("by", by.place().cloned(), 0),
        ("second_order", second_order.place().cloned(), 0),
        ("levels", levels.place().cloned(), 1),
    ];
    for (key, place, owner) in of {
        if let Some(place) = place.filter(|_| method.word() != Method::WORDS[owner]) {
            let title = format!(
                "study.{key} belongs to method = \"{}\"",
                Method::WORDS[owner]
            );
            let problem = Problem::at(&place, title);
            section
                .desk
                .problem(problem.help("take the line out, or use that method"));
        }
    }
    match method {
        Method::Variance { .. } => Method::Variance {
            second_order: second_order.or(false),
            by: [By::Input, By::Group][by.or(0)],
        },
        Method::Trajectories { levels: usual } => Method::Trajectories {
            levels: even(section, levels).unwrap_or(usual),
        },
        other => other,
    }
}

fn even(section: &Reader<'_>, levels: Read<u32>) -> Option<usize> {
    let Read::Given(levels, place) = levels else {
        return None;
    };
    if !levels.is_multiple_of(2) {
        let title = format!("study.levels is {levels}, an odd number");
        let problem = Problem::at(&place, title).label("an even number of levels");
        section
            .desk
            .problem(problem.help("with an even number every level is met equally often"));
    }
    Some(levels as usize)
}

fn milestones(section: &Reader<'_>) -> Vec<Milestone> {
    let said = texts(section, "milestones");
    if said.is_empty() {
        return milestone::USUAL
            .into_iter()
            .filter_map(Milestone::named)
            .collect();
    }
    let mut found: Vec<Milestone> = Vec::new();
    for (name, place) in said {
        match Milestone::named(&name) {
            Some(one) if found.contains(&one) => {
                let title = format!("the milestone {name} is named twice");
                section.desk.problem(Problem::at(&place, title));
            }
            Some(one) => found.push(one),
            None => section.desk.problem(unknown_milestone(&name, &place)),
        }
    }
    found
}

fn unknown_milestone(name: &str, place: &Place) -> Problem {
    let problem = Problem::at(place, format!("there is no milestone {name}")).label("unknown name");
    let near: Vec<String> = near(name).iter().map(|one| format!("\"{one}\"")).collect();
    let problem = match near.is_empty() {
        false => problem.help(format!("did you mean {}?", list_or(&near))),
        true => problem,
    };
    problem.help("all of them: firstfill explain milestones")
}
