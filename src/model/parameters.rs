//! The list of all parameters, gathered from where each is declared.

use std::sync::LazyLock;

use super::parameter::ParameterSpec;
use super::parameter_set::ParameterSet;
use super::{content, films, group, litter, observer, processes, start};

static ALL: LazyLock<Vec<&'static ParameterSpec>> = LazyLock::new(|| {
    let shared: [&'static [ParameterSpec]; 5] = [
        observer::PARAMETERS,
        content::PARAMETERS,
        films::PARAMETERS,
        litter::PARAMETERS,
        start::PARAMETERS,
    ];
    let groups: [&'static [ParameterSpec]; 6] = [
        group::PARAMETERS,
        &group::STEMS,
        &group::CARPET,
        &group::ROSETTE,
        &group::TIED_RHIZOME,
        &group::MOSS,
    ];
    shared
        .into_iter()
        .chain(processes::PARAMETERS.iter().copied())
        .chain(groups)
        .flatten()
        .collect()
});

/// Ids in order, each with its place.
static BY_ID: LazyLock<Vec<(&'static str, usize)>> = LazyLock::new(|| {
    let ids = ALL.iter().enumerate().map(|(at, spec)| (spec.id, at));
    let mut by_id: Vec<_> = ids.collect();
    by_id.sort_unstable();
    by_id
});

/// Every parameter, in the order of declaration.
pub fn all() -> &'static [&'static ParameterSpec] {
    &ALL
}

/// Place of a parameter in [`all`].
pub fn index(id: &str) -> Option<usize> {
    let at = BY_ID.binary_search_by_key(&id, |&(known, _)| known).ok()?;
    Some(BY_ID[at].1)
}

/// The declaration of a parameter.
pub fn spec(id: &str) -> Option<&'static ParameterSpec> {
    index(id).map(|at| ALL[at])
}

impl Default for ParameterSet {
    fn default() -> Self {
        ParameterSet::defaults(all())
    }
}
