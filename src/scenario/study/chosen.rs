//! Which inputs vary: names are looked up among what a scenario knows.

use crate::analysis::case::Case;
use crate::analysis::study::group::Group;
use crate::analysis::sweep::axis::Axis;
use crate::analysis::uncertain::Varied;
use crate::model::parameters;
use crate::scenario::keys::KEYS;
use crate::scenario::problem::{Place, Problem};
use crate::scenario::varied::paths;
use crate::scenario::varied::spec::Spec;
use crate::scenario::words::closest;

use super::advice::{instead_of_usual, takes_no_range};
use super::known::Known;
use super::laid::Ground;
use super::values::Values;
use super::wishes::{Wish, Wishes};

/// Every input that is to vary, once, in the order of the file; names that nobody knows are problems, and left out.
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
    let mut spoilt: Vec<&str> = Vec::new();
    for wish in &wishes.list {
        if let Some(problem) = unknown(wish, grounds, &known) {
            problems.push(problem);
            spoilt.push(&wish.name);
        }
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
    list.retain(|wish| !spoilt.contains(&wish.name.as_str()));
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

/// The group of an input: its own, or the one the file moves it to.
pub fn group_of(name: &str, wishes: &Wishes) -> Group {
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
            .help(instead_of_usual(name, grounds)),
            None => no_such(name, place, known),
        }),
        _ if parameters::spec(name).is_some() => None,
        _ if known.row(name).is_some() && !name.contains('.') || name == "seed.level" => Some(
            Problem::at(place, format!("{name} takes its usual spread only"))
                .help(format!("write {name} = \"usual\"")),
        ),
        _ if !name.contains('.') && !is_a_path(name, grounds) => Some(no_such(name, place, known)),
        _ => grounds.iter().find_map(|ground| {
            paths::unknown(&spec(wish), &ground.merged).or_else(|| takes_no_range(wish, ground))
        }),
    }
}

fn spec(wish: &Wish) -> Spec {
    Spec {
        axis: Axis {
            path: wish.name.clone(),
            name: None,
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
