//! Groups of inputs: what a keeper would call one thing.
//!
//! A parameter belongs where the process or the shared term that declares it belongs; a path of the scenario where
//! its section does. A study file may move an input to another group.

use crate::model::parameter::ParameterSpec;
use crate::model::{content, films, litter, observer, processes, start};

/// A group of inputs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Group {
    /// What lies in the soil, and how fast it comes out.
    Soil,
    /// Nitrifiers and other bacteria: how many come in, how fast they grow, what holds them back.
    Microbes,
    /// Gas exchange, air, carbon dioxide and oxygen.
    Gas,
    /// Plants and algae, and the light they live on.
    Plants,
    /// What is in tap water, its temperature, and what buffers it.
    Water,
    /// What the keeper does.
    Care,
}

/// Ids of sampled inputs that are no parameters.
const OWN: [(&str, Group); 2] = [("C_p0", Group::Soil), ("seed.level", Group::Microbes)];

/// Where processes belong.
#[rustfmt::skip]
const PROCESSES: [(Group, &[&str]); 6] = [
    (Group::Soil, &["acid_exchange", "denitrification", "phosphorus_exchange", "soil_exchange",
        "soil_mineralisation", "soil_respiration"]),
    (Group::Microbes, &["ammonia_oxidation", "nitrite_oxidation", "complete_oxidation", "nitrifier_loss",
        "mineralisation"]),
    (Group::Gas, &["gas_exchange", "bubbles", "co2_injection", "indicator"]),
    (Group::Plants, &["photosynthesis", "plant_respiration", "leaf_uptake", "root_uptake", "background_loss",
        "shedding", "algae_growth", "algae_loss"]),
    (Group::Water, &["evaporation", "heat", "top_up", "residual_decay", "iron_loss"]),
    (Group::Care, &["feeding", "fish_respiration"]),
];

/// Where sections of a scenario belong; those that are not named are what the keeper does.
const SECTIONS: [(Group, &[&str]); 5] = [
    (Group::Soil, &["soil"]),
    (Group::Microbes, &["filter", "seed", "start_up"]),
    (Group::Gas, &["surface", "gas", "air"]),
    (Group::Plants, &["light", "plants"]),
    (Group::Water, &["tank", "room", "water", "fill", "refill"]),
];

impl Group {
    /// All groups, in order.
    pub const ALL: [Group; 6] = [
        Group::Soil,
        Group::Microbes,
        Group::Gas,
        Group::Plants,
        Group::Water,
        Group::Care,
    ];

    /// The word for it, in tables and study files.
    pub fn word(self) -> &'static str {
        match self {
            Group::Soil => "soil",
            Group::Microbes => "microbes",
            Group::Gas => "gas",
            Group::Plants => "plants",
            Group::Water => "water",
            Group::Care => "care",
        }
    }

    /// The group of a word.
    pub fn named(word: &str) -> Option<Group> {
        Group::ALL.into_iter().find(|group| group.word() == word)
    }

    /// Where an input belongs: the id of a parameter, or a dotted path of the scenario.
    pub fn of(name: &str) -> Group {
        let own = OWN.iter().find(|(id, _)| *id == name);
        own.map(|(_, group)| *group)
            .or_else(|| of_process(name))
            .or_else(|| of_shared_term(name))
            .unwrap_or_else(|| of_section(name))
    }
}

fn declares(specs: &[ParameterSpec], id: &str) -> bool {
    specs.iter().any(|spec| spec.id == id)
}

fn of_process(id: &str) -> Option<Group> {
    let mut all = processes::IDS.iter().zip(processes::PARAMETERS);
    let (process, _) = all.find(|(_, specs)| declares(specs, id))?;
    let lists = PROCESSES.iter();
    let found = lists.clone().find(|(_, list)| list.contains(process));
    found.map(|(group, _)| *group)
}

/// Parameters that several processes share. What is declared by none of these belongs to the plants.
fn of_shared_term(id: &str) -> Option<Group> {
    let shared = [
        (Group::Microbes, films::PARAMETERS),
        (Group::Microbes, start::PARAMETERS),
        (Group::Plants, litter::PARAMETERS),
        (Group::Plants, content::PARAMETERS),
        (Group::Water, observer::PARAMETERS),
    ];
    let found = shared.into_iter().find(|(_, specs)| declares(specs, id));
    let is_parameter = crate::model::parameters::spec(id).is_some();
    found
        .map(|(group, _)| group)
        .or(is_parameter.then_some(Group::Plants))
}

fn of_section(path: &str) -> Group {
    let section = path.split('.').next().unwrap_or_default();
    let found = SECTIONS.iter().find(|(_, list)| list.contains(&section));
    found.map_or(Group::Care, |(group, _)| *group)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_process_has_one_group_and_every_listed_one_is_there() {
        let listed: Vec<&str> = PROCESSES
            .iter()
            .flat_map(|(_, list)| *list)
            .copied()
            .collect();
        for process in processes::IDS {
            let times = listed.iter().filter(|name| *name == process).count();
            assert_eq!(times, 1, "{process}");
        }
        assert_eq!(listed.len(), processes::IDS.len());
    }

    #[test]
    fn an_input_belongs_where_a_keeper_would_look_for_it() {
        let of = |name| Group::of(name).word();
        assert_eq!(of("C_p0"), "soil");
        assert_eq!(of("mu_NOB"), "microbes");
        assert_eq!(of("k_600_ripple"), "gas");
        assert_eq!(of("P_max_stems"), "plants");
        assert_eq!(of("I_medium"), "plants");
        assert_eq!(of("water.tap.alkalinity"), "water");
        assert_eq!(of("changes.early.share"), "care");
        assert_eq!(of("scenario"), "care");
    }
}
