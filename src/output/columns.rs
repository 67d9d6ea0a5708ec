//! The columns of `series.csv`, each once: name with unit, meaning, how it is worked out, and how
//! it is read off a sample. `daily.csv`, `events.csv`, `columns.csv` and `explain` read this list.

use crate::engine::input::ModelInput;
use crate::engine::result::Reading;
use crate::model::group::{GROUPS, Group};

use super::column_list::fixed;

/// Where a row of a series stands: the tank, and what has been used up to then.
#[derive(Debug, Clone, Copy)]
pub struct Sample<'a> {
    /// The tank.
    pub reading: &'a Reading,
    /// Water taken out by changes so far, L.
    pub water_changed_l: f64,
}

/// How the value of a column is found.
#[derive(Debug, Clone)]
pub(super) enum Read {
    Reading(fn(&Reading) -> f64),
    Sample(fn(&Sample) -> f64),
    Stands(Vec<usize>),
}

/// One column of `series.csv`.
#[derive(Debug, Clone)]
pub struct Column {
    /// Name, with the unit in it.
    pub name: String,
    /// Unit in the usual spelling.
    pub unit: &'static str,
    /// What it is.
    pub meaning: String,
    /// How it is worked out.
    pub derived: &'static str,
    /// Whether `daily.csv` follows it.
    pub daily: bool,
    /// Whether `events.csv` shows it before and after.
    pub at_events: bool,
    pub(super) read: Read,
}

impl Column {
    /// The value of the column in a sample.
    pub fn value(&self, sample: &Sample) -> f64 {
        match &self.read {
            Read::Reading(read) => read(sample.reading),
            Read::Sample(read) => read(sample),
            Read::Stands(stands) => stands.iter().map(|&at| sample.reading.stands_g[at]).sum(),
        }
    }
    /// The value of the column in a reading, with nothing used so far.
    pub fn of(&self, reading: &Reading) -> f64 {
        self.value(&Sample {
            reading,
            water_changed_l: 0.0,
        })
    }
}

/// The columns of a tank after `day` and `time`: the fixed ones, and one per plant group present.
pub fn of(input: &ModelInput) -> Vec<Column> {
    let mut columns = fixed();
    columns.extend(GROUPS.iter().filter_map(|&group| {
        let stands: Vec<usize> = (0..input.stands.len())
            .filter(|&at| input.stands[at].group == group)
            .collect();
        (!stands.is_empty()).then(|| group_column(group, stands))
    }));
    columns
}

/// Every column there can be, for `explain columns`.
pub fn every() -> Vec<Column> {
    let mut columns = fixed();
    columns.extend(GROUPS.iter().map(|&group| group_column(group, vec![])));
    columns
}

fn group_column(group: Group, stands: Vec<usize>) -> Column {
    Column {
        name: format!("plants_{}_g", group.suffix()),
        unit: "g dry weight",
        meaning: format!("plants of the group {}", group.word()),
        derived: "sum over the stands of the group, out-of-water tissue included",
        daily: false,
        at_events: false,
        read: Read::Stands(stands),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::example::Example;
    use std::collections::BTreeSet;

    #[test]
    fn the_promised_names_are_there_and_no_name_twice() {
        let columns = of(&Example::default().input());
        let names: BTreeSet<&str> = columns.iter().map(|c| c.name.as_str()).collect();
        assert_eq!(names.len(), columns.len());
        for promised in
            "tan_mg_n_per_l free_ammonia_mg_n_per_l nitrite_mg_n_per_l nitrate_mg_n_per_l
            phosphate_mg_p_per_l potassium_mg_per_l iron_mg_per_l oxygen_mg_per_l
            oxygen_saturation_percent co2_mg_per_l ph alkalinity_meq_per_l kh_dkh
            inorganic_carbon_mmol_per_l temperature_c light_umol_per_m2_s
            ammonia_oxidisers_mg_cod nitrite_oxidisers_mg_cod soil_ammonium_mg_n detritus_g
            algae_g_per_m2 plants_g plants_stems_g plants_carpet_g"
                .split_whitespace()
        {
            assert!(names.contains(promised), "{promised}");
        }
        assert!(!names.contains("plants_moss_g"), "no moss is planted");
    }
}
