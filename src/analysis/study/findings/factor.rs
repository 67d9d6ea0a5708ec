//! What an index is about: an input, or a group of them.

use crate::analysis::study::Study;
use crate::analysis::study::group::Group;
use crate::analysis::study::method::{By, Method};

/// What an index is about.
#[derive(Debug, Clone, PartialEq)]
pub struct Factor {
    /// Name of the input, or word of the group.
    pub name: String,
    /// What it is.
    pub words: String,
    /// What it belongs to.
    pub group: Group,
    /// How many inputs it stands for.
    pub inputs: usize,
}

/// Whether shares are told of groups.
pub fn is_by_group(study: &Study) -> bool {
    matches!(study.method, Method::Variance { by: By::Group, .. })
}

/// The inputs in their order, then the groups where shares are told of them.
pub fn all(study: &Study) -> Vec<Factor> {
    let inputs = study.inputs.iter().map(|input| Factor {
        name: input.name.clone(),
        words: input.words.clone(),
        group: input.group,
        inputs: 1,
    });
    let groups = match is_by_group(study) {
        true => study.groups(),
        false => Vec::new(),
    };
    let members = |group: Group| {
        study
            .inputs
            .iter()
            .filter(move |input| input.group == group)
    };
    let groups = groups.into_iter().map(|group| Factor {
        name: group.word().to_string(),
        words: group.word().to_string(),
        group,
        inputs: members(group).count(),
    });
    inputs.chain(groups).collect()
}

/// Where the factors of shares of variance begin.
pub fn first_of_shares(study: &Study) -> usize {
    match is_by_group(study) {
        true => study.inputs.len(),
        false => 0,
    }
}
