//! Which inputs vary: names are looked up among what a scenario knows, and each gets its spread.

use std::path::Path;

use crate::analysis::case::Case;
use crate::analysis::study::group::Group;
use crate::analysis::study::input::{Input, Spread};
use crate::analysis::sweep::axis::Axis;
use crate::analysis::uncertain::{Kept, Uncertain, Varied};
use crate::model::parameters;
use crate::scenario::keys::{self, KEYS};
use crate::scenario::problem::{Place, Problem};
use crate::scenario::varied::paths;
use crate::scenario::varied::spec::Spec;
use crate::scenario::words::closest;

use super::head::Head;
use super::laid::Ground;
use super::wishes::{Values, WAYS, Wish, Wishes};

/// Name of the input that is the scenario itself.
pub const SCENARIO: &str = "scenario";
/// Where the values of a line of the study are from.
const GIVEN: &str = "given in the study";

/// What can be uncertain in any of the scenarios.
struct Known {
    rows: Vec<Varied>,
    kept: Vec<Kept>,
}

impl Known {
    fn of(cases: &[Case]) -> Known {
        let mut known = Known {
            rows: Vec::new(),
            kept: Vec::new(),
        };
        for uncertain in cases.iter().map(Uncertain::of) {
            for row in uncertain.rows() {
                if known.row(&row.name).is_none() {
                    known.rows.push(row.clone());
                }
            }
            known.kept.extend(uncertain.kept().iter().cloned());
        }
        known
    }
    fn row(&self, name: &str) -> Option<&Varied> {
        self.rows.iter().find(|row| row.name == name)
    }
    fn why_kept(&self, name: &str) -> Option<&'static str> {
        let kept = self.kept.iter().find(|kept| kept.name == name);
        kept.map(|kept| kept.why)
    }
}

/// Every input that is to vary, once, in the order of the file; names that nobody knows are problems.
pub fn wanted(
    wishes: &Wishes,
    grounds: &[Ground],
    plain: &[Case],
    problems: &mut Vec<Problem>,
) -> Vec<Wish> {
    let known = Known::of(plain);
    let mut list: Vec<Wish> = Vec::new();
    for (name, place) in &wishes.usual {
        let names = names_of(name, wishes, &known);
        problems.extend(names.is_empty().then(|| nothing_usual(name, place, &known)));
        for name in names {
            add(
                &mut list,
                Wish {
                    name,
                    place: place.clone(),
                    values: Values::Usual,
                },
            );
        }
    }
    for wish in &wishes.list {
        problems.extend(unknown(wish, grounds, &known));
        match wish.values {
            Values::Kept => list.retain(|other| other.name != wish.name),
            _ => add(&mut list, wish.clone()),
        }
    }
    for (name, place, _) in &wishes.groups {
        if !list.iter().any(|wish| wish.name == *name) {
            problems.push(no_input(name, place, &list));
        }
    }
    if list.is_empty() && grounds.len() < 2 && problems.is_empty() {
        problems.push(nothing(wishes.place.as_ref()));
    }
    list
}

/// Adds a wish, or puts it in the place of an earlier one of the same name.
fn add(list: &mut Vec<Wish>, wish: Wish) {
    match list.iter_mut().find(|other| other.name == wish.name) {
        Some(earlier) => *earlier = wish,
        None => list.push(wish),
    }
}

/// What `usual = [...]` means by a name: all, a group, one input.
fn names_of(name: &str, wishes: &Wishes, known: &Known) -> Vec<String> {
    let group = Group::named(name);
    let is_meant = |row: &&Varied| match group {
        _ if name == "all" => true,
        Some(group) => group_of(&row.name, wishes) == group,
        None => row.name == name,
    };
    let rows = known.rows.iter().filter(is_meant);
    rows.map(|row| row.name.clone()).collect()
}

fn group_of(name: &str, wishes: &Wishes) -> Group {
    let moved = wishes.groups.iter().find(|(known, ..)| known == name);
    moved.map_or_else(|| Group::of(name), |(_, _, group)| *group)
}

fn nothing_usual(name: &str, place: &Place, known: &Known) -> Problem {
    match known.why_kept(name) {
        Some(why) => kept(name, place, why),
        None => {
            let words = ["all"].into_iter().chain(Group::ALL.map(Group::word));
            let rows = known.rows.iter().map(|row| row.name.as_str());
            let problem = Problem::at(place, format!("nothing that varies is called {name}"));
            let problem = problem.label("neither \"all\", nor a group, nor an input");
            match closest(name, words.chain(rows)) {
                Some(near) => problem.help(format!("did you mean \"{near}\"?")),
                None => problem.help("all of them: firstfill check SCENARIO --uncertain"),
            }
        }
    }
}

fn kept(name: &str, place: &Place, why: &str) -> Problem {
    Problem::at(place, format!("{name} does not vary in this tank"))
        .label(why)
        .help("take it out, or give a range of your own where that makes sense")
}

/// The problem of a name that nobody knows, or that cannot vary as it is asked.
fn unknown(wish: &Wish, grounds: &[Ground], known: &Known) -> Option<Problem> {
    let (name, place) = (wish.name.as_str(), &wish.place);
    match wish.values {
        Values::Kept => None,
        Values::Usual if known.row(name).is_some() => None,
        Values::Usual => Some(match known.why_kept(name) {
            Some(why) => kept(name, place, why),
            None if is_a_path(name, grounds) => Problem::at(
                place,
                format!("{name} has no usual spread: the scenario gives one value"),
            )
            .help(WAYS),
            None => no_such(name, place, known),
        }),
        _ if parameters::spec(name).is_some() => None,
        _ if known.row(name).is_some() && !name.contains('.') || name == "seed.level" => Some(
            Problem::at(place, format!("{name} takes its usual spread only"))
                .help(format!("write {name} = \"usual\"")),
        ),
        _ if !name.contains('.') && !is_a_path(name, grounds) => Some(no_such(name, place, known)),
        _ => grounds
            .iter()
            .find_map(|ground| paths::unknown(&spec(wish), &ground.merged)),
    }
}

fn spec(wish: &Wish) -> Spec {
    Spec {
        axis: Axis {
            path: wish.name.clone(),
            unit: String::new(),
            settings: Vec::new(),
        },
        place: wish.place.clone(),
    }
}

fn is_a_path(name: &str, grounds: &[Ground]) -> bool {
    let wish = Wish {
        name: name.to_string(),
        place: Place::new(0, 0..0),
        values: Values::Usual,
    };
    grounds
        .iter()
        .any(|ground| paths::unknown(&spec(&wish), &ground.merged).is_none())
}

fn no_such(name: &str, place: &Place, known: &Known) -> Problem {
    let rows = known.rows.iter().map(|row| row.name.as_str());
    let ids = parameters::all().iter().map(|spec| spec.id);
    let paths = KEYS.iter().map(|key| key.path);
    let problem = Problem::at(place, format!("there is no input {name}"))
        .label("neither a parameter nor a path of the scenario");
    match closest(name, rows.chain(ids).chain(paths)) {
        Some(near) => problem.help(format!("did you mean {near}?")),
        None => problem.help("all of them: firstfill explain parameters, firstfill explain keys"),
    }
}

fn no_input(name: &str, place: &Place, list: &[Wish]) -> Problem {
    let problem = Problem::at(place, format!("{name} is no input of this study"));
    match closest(name, list.iter().map(|wish| wish.name.as_str())) {
        Some(near) => problem.help(format!("did you mean {near}?")),
        None => problem.help("groups are of inputs that stand under [inputs]"),
    }
}

fn nothing(place: Option<&Place>) -> Problem {
    let place = place.cloned().unwrap_or(Place::new(0, 0..0));
    Problem::at(&place, "nothing varies in this study")
        .help("write usual = \"all\", or an input: mu_NOB = \"usual\", water.tap.alkalinity = \"3..5 dKH\"")
}

/// The inputs as the cases have them.
pub fn inputs(
    head: &Head,
    wishes: &Wishes,
    list: &[Wish],
    cases: &[Case],
) -> Result<Vec<Input>, Vec<Problem>> {
    let known = Known::of(cases);
    let mut problems = Vec::new();
    let scenarios = (head.scenarios.len() > 1).then(|| of_scenarios(head));
    let mut inputs: Vec<Input> = scenarios.into_iter().collect();
    for wish in list {
        let group = group_of(&wish.name, wishes);
        match (&wish.values, known.row(&wish.name)) {
            (Values::Settings(_), _) => inputs.push(of_settings(wish, group)),
            (_, Some(row)) => inputs.push(of_row(wish, row, group)),
            (_, None) => problems.push(stays(wish, &known)),
        }
    }
    match problems.is_empty() {
        true => Ok(inputs),
        false => Err(problems),
    }
}

fn stays(wish: &Wish, known: &Known) -> Problem {
    let title = format!("{} cannot be uncertain here", wish.name);
    let why = known.why_kept(&wish.name);
    Problem::at(&wish.place, title)
        .label(why.unwrap_or("it takes single values only"))
        .help("give settings instead: { settings = [...] } or { settings = \"FROM..TO:N\" }")
}

fn of_scenarios(head: &Head) -> Input {
    Input {
        name: SCENARIO.into(),
        words: SCENARIO.into(),
        unit: String::new(),
        group: Group::of(SCENARIO),
        source: GIVEN.into(),
        spread: Spread::Settings(short_names(head)),
    }
}

/// The scenarios by the names of their files alone; as they are written where two files of one name are in two folders.
fn short_names(head: &Head) -> Vec<String> {
    let names = || head.scenarios.iter().map(|(name, _)| name);
    let stem = |name: &String| {
        Path::new(name)
            .file_stem()
            .map(|stem| stem.to_string_lossy().into_owned())
    };
    let stems: Option<Vec<String>> = names().map(stem).collect();
    let apart = |stems: &Vec<String>| (1..stems.len()).all(|at| !stems[..at].contains(&stems[at]));
    stems
        .filter(apart)
        .unwrap_or_else(|| names().cloned().collect())
}

fn of_settings(wish: &Wish, group: Group) -> Input {
    let Values::Settings(settings) = &wish.values else {
        unreachable!("asked for settings only");
    };
    let spec = parameters::spec(&wish.name).map(|spec| spec.meaning);
    let key = keys::key(&wish.name).map(|key| key.meaning);
    Input {
        name: wish.name.clone(),
        words: spec.or(key).unwrap_or("as you wrote it").into(),
        unit: String::new(),
        group,
        source: GIVEN.into(),
        spread: Spread::Settings(settings.iter().map(|node| node.value.written()).collect()),
    }
}

fn of_row(wish: &Wish, row: &Varied, group: Group) -> Input {
    let spread = match wish.values {
        Values::Even(_) => Spread::Even {
            low: row.shape.low,
            high: row.shape.high,
        },
        _ => Spread::Shape(row.shape),
    };
    let key = keys::key(&wish.name).map(|key| key.meaning);
    Input {
        name: wish.name.clone(),
        words: key.unwrap_or(&row.words).into(),
        unit: row.unit.clone(),
        group,
        source: row.source.clone(),
        spread,
    }
}
