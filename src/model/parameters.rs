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

/// Every parameter, in the order of declaration.
pub fn all() -> &'static [&'static ParameterSpec] {
    &ALL
}

/// Place of a parameter in [`all`].
pub fn index(id: &str) -> Option<usize> {
    ALL.iter().position(|spec| spec.id == id)
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
