//! What the files of plans say otherwise, from what to what.
//!
//! Every value that a run uses is in the list of its case, what was written and what was assumed alike; so two
//! files that do the same by other words differ in nothing, and a default that changes with another key shows.

use crate::analysis::case::{Case, Resolved};

use super::strategy::Strategy;

/// The name of a scenario is no difference of the tank.
const NAME: &str = "name";

/// Sections of a scenario, those first that change the outcome most (a judgement); sections that are not named come
/// after them.
const WEIGHTIEST: [&str; 17] = [
    "soil",
    "seed",
    "start_up",
    "air",
    "stock",
    "gas",
    "changes",
    "doses",
    "water",
    "fill",
    "refill",
    "light",
    "plants",
    "tank",
    "surface",
    "filter",
    "parameters",
];
/// Last names of paths that hardly matter: hours of the day, and days on which a valve is set anew.
const LITTLE: [&str; 3] = ["time", "from", "tuned_on"];
/// Sections that do nothing to the tank.
const TOLD_ONLY: [&str; 5] = ["start", "prices", "limits", "test_kit", "calendar"];

/// A value that is not the same in all files.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Difference {
    /// Dotted path in the scenario.
    pub path: String,
    /// The value in each file; none where the file has no such thing.
    pub values: Vec<Option<String>>,
}

/// The values that are not the same in all plans, in the order of the documentation.
pub fn differences(strategies: &[Strategy<'_>]) -> Vec<Difference> {
    let cases: Vec<&Case> = strategies.iter().map(|strategy| strategy.case).collect();
    between(&cases)
}

/// The same, what changes the outcome most first; of one section as they were.
pub fn weightiest_first(differences: &[Difference]) -> Vec<&Difference> {
    let mut sorted: Vec<&Difference> = differences.iter().collect();
    sorted.sort_by_key(|one| weight(&one.path));
    sorted
}

/// The differences of every section of the scenario in which plans differ, the weightiest sections first, so that none
/// is passed over; at least one each.
pub fn by_section(differences: &[Difference]) -> Vec<Vec<&Difference>> {
    let mut sections: Vec<Vec<&Difference>> = Vec::new();
    for one in weightiest_first(differences) {
        let is_own = |known: &&mut Vec<&Difference>| section(&known[0].path) == section(&one.path);
        match sections.iter_mut().find(is_own) {
            Some(known) => known.push(one),
            None => sections.push(vec![one]),
        }
    }
    sections
}

/// Name of the section of a path.
fn section(path: &str) -> &str {
    path.split_once('.').map_or(path, |(section, _)| section)
}

/// Place of a path among those that change the outcome, the first most.
fn weight(path: &str) -> usize {
    let mut names = path.split('.');
    let section = names.next().unwrap_or(path);
    let unnamed = WEIGHTIEST.len();
    if names.next_back().is_some_and(|last| LITTLE.contains(&last)) {
        return unnamed + 1;
    }
    if TOLD_ONLY.contains(&section) {
        return unnamed + 2;
    }
    let place = WEIGHTIEST.iter().position(|known| *known == section);
    place.unwrap_or(unnamed)
}

/// The same for cases that have not been run.
pub fn between(cases: &[&Case]) -> Vec<Difference> {
    let different = paths(cases).into_iter().map(|path| Difference {
        values: cases.iter().map(|case| value(case, path)).collect(),
        path: path.to_string(),
    });
    different
        .filter(|difference| difference.values.windows(2).any(|two| two[0] != two[1]))
        .collect()
}

/// All paths of all cases, each once: those of a later case go where its neighbours stand.
fn paths<'a>(cases: &[&'a Case]) -> Vec<&'a str> {
    let mut paths: Vec<&str> = Vec::new();
    for case in cases {
        let mut at = 0;
        for Resolved { path, .. } in case.resolved.iter().filter(|one| one.path != NAME) {
            match paths.iter().position(|known| known == path) {
                Some(place) => at = place + 1,
                None => {
                    paths.insert(at, path);
                    at += 1;
                }
            }
        }
    }
    paths
}

fn value(case: &Case, path: &str) -> Option<String> {
    let of_path = case.resolved.iter().find(|one| one.path == path);
    of_path.map(|one| one.value.clone())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::case::SetBy;
    use crate::analysis::example::Example;

    fn case(values: &[(&str, &str)]) -> Case {
        let resolved = |&(path, value): &(&str, &str)| Resolved {
            path: path.into(),
            value: value.into(),
            set_by: SetBy::Given,
        };
        Case {
            resolved: values.iter().map(resolved).collect(),
            ..Example::default().case()
        }
    }

    #[test]
    fn what_differs_is_told_from_what_to_what_and_in_order() {
        let a = case(&[
            ("name", "a"),
            ("tank.x", "1"),
            ("changes.a", "50 %"),
            ("z", "1"),
        ]);
        let b = case(&[
            ("name", "b"),
            ("tank.x", "1"),
            ("changes.b", "30 %"),
            ("z", "2"),
        ]);
        let told: Vec<(String, Vec<Option<String>>)> = between(&[&a, &b])
            .into_iter()
            .map(|one| (one.path, one.values))
            .collect();
        let some = |value: &str| Some(value.to_string());
        assert_eq!(
            told,
            [
                ("changes.b".to_string(), vec![None, some("30 %")]),
                ("changes.a".to_string(), vec![some("50 %"), None]),
                ("z".to_string(), vec![some("1"), some("2")]),
            ]
        );
        assert!(between(&[&a, &a]).is_empty());
    }

    #[test]
    fn every_section_that_differs_is_named_with_its_weightiest() {
        let paths = [
            "changes.a.days",
            "changes.time",
            "gas.tuned_on",
            "soil.kind",
            "soil.amount",
            "start",
        ];
        let all: Vec<Difference> = (paths.iter())
            .map(|path| Difference {
                path: path.to_string(),
                values: Vec::new(),
            })
            .collect();
        let told: Vec<(&str, usize)> = (by_section(&all).into_iter())
            .map(|one| (one[0].path.as_str(), one.len()))
            .collect();
        let wanted = [
            ("soil.kind", 2),
            ("changes.a.days", 2),
            ("gas.tuned_on", 1),
            ("start", 1),
        ];
        assert_eq!(told, wanted);
    }

    #[test]
    fn soil_seed_and_air_come_before_plants_and_these_before_hours_and_prices() {
        let paths = [
            "start",
            "tank.inside",
            "soil.kind",
            "water.tap.alkalinity",
            "changes.time",
            "changes.early.share",
            "light.on.from",
            "light.on.for",
            "air.flow",
            "plants.stems.cover",
            "trims.first.share",
            "seed.sponge.amount",
        ];
        let of_path = |path: &&str| Difference {
            path: path.to_string(),
            values: Vec::new(),
        };
        let all: Vec<Difference> = paths.iter().map(of_path).collect();
        let sorted: Vec<&str> = (weightiest_first(&all).into_iter())
            .map(|one| one.path.as_str())
            .collect();
        let wanted = [
            "soil.kind",
            "seed.sponge.amount",
            "air.flow",
            "changes.early.share",
            "water.tap.alkalinity",
            "light.on.for",
            "plants.stems.cover",
            "tank.inside",
            "trims.first.share",
            "changes.time",
            "light.on.from",
            "start",
        ];
        assert_eq!(sorted, wanted);
    }
}
