//! Which parameters can matter in a tank at all, and why the others need not be varied.

use crate::base::sources::Evidence;
use crate::engine::event::EventKind;
use crate::engine::input::{GasPlan, ModelInput};
use crate::model::group::{GROUPS, Group};
use crate::model::parameter::ParameterSpec;
use crate::model::processes;

/// Fixed by definition of the unit, of the scale or of the reference.
const BY_DEFINITION: &str = "fixed by definition";
/// Numbers of the method or of a plausibility check.
const METHOD: (&[&str], &str) = (
    &["dt_stiff", "phi_max", "f_rated", "cut_band"],
    "of the method or of a check, not of the tank",
);
const SPECIFIED: (&[&str], &str) = (
    &["K_K_G", "K_Fe_G", "K_boost"],
    "fixed: nothing is known to spread it by",
);
const PLANNED: (&[&str], &str) = (&["feed", "protein"], "yours to say: part of the plan");
const CLASS_WORDS: (&[&str], &str) = (
    &["soil_mild", "soil_rich", "seed_little", "seed_live"],
    "the word's spread is that of what it scales (q0, N_o0, P0, E_H0, seed.level)",
);

/// What stands behind a condition: processes whose parameters it switches, and parameters by id.
struct Needs {
    is_there: fn(&ModelInput) -> bool,
    processes: &'static [&'static str],
    ids: &'static [&'static str],
    why: &'static str,
}

#[rustfmt::skip]
const NEEDS: [Needs; 15] = [
    Needs { is_there: |input| input.tank.soil_l > 0.0, why: "no active soil",
        processes: &["soil_exchange", "phosphorus_exchange", "soil_mineralisation", "soil_respiration",
            "acid_exchange", "denitrification"],
        ids: &["C_p0", "K_rN", "K_rP"] },
    Needs { is_there: |input| !input.stands.is_empty(), why: "no plants",
        processes: &["photosynthesis", "plant_respiration", "leaf_uptake", "root_uptake",
            "background_loss", "shedding"],
        ids: &["th_P", "Q0"] },
    Needs { is_there: |input| input.stands.iter().any(|stand| stand.acclimates),
        why: "no plants grown out of water", processes: &[], ids: &["acc0", "t_acc"] },
    Needs { is_there: |input| input.stands.iter().any(|stand| stand.melt_frac > 0.0),
        why: "no plants that melt", processes: &["shedding"], ids: &[] },
    Needs { is_there: |input| input.stands.iter().any(|stand| stand.uses_bicarbonate),
        why: "no plants that use bicarbonate", processes: &[], ids: &["v_b", "K_b"] },
    Needs { is_there: ModelInput::has_animals, why: "no animals planned",
        processes: &["feeding", "fish_respiration"], ids: &[] },
    Needs { is_there: |input| !matches!(input.gas, GasPlan::None), why: "no gas",
        processes: &["co2_injection"], ids: &[] },
    Needs { is_there: has_air, why: "no air stone", processes: &[], ids: &["a_air", "r_air"] },
    Needs { is_there: |input| !input.power_cuts.is_empty(), why: "no power cut",
        processes: &[], ids: &["k_cut"] },
    Needs { is_there: minds_the_filter, why: "no power cut and no cleaning of the filter",
        processes: &[], ids: &["phi_filt"] },
    Needs { is_there: has_residual, why: "no chlorine in the water",
        processes: &["residual_decay"], ids: &["k_kill"] },
    Needs { is_there: |input| input.dry_days > 0.0, why: "no dry start",
        processes: &[], ids: &["k_dry", "y_dry", "surv_dry"] },
    Needs { is_there: |input| input.heating.set_c.is_some(), why: "no heater",
        processes: &[], ids: &["heater", "band"] },
    Needs { is_there: |input| !input.light.is_empty(), why: "no light",
        processes: &[], ids: &["lamp", "mu_G", "K_I_G"] },
    Needs { is_there: has_media, why: "no mature medium brought in",
        processes: &[], ids: &["seed_XA", "seed_XN", "seed_XK"] },
];

fn has_air(input: &ModelInput) -> bool {
    let by_battery = |cut: &crate::engine::input::PowerCut| cut.battery_air_l_per_min > 0.0;
    !input.air.is_empty() || input.power_cuts.iter().any(by_battery)
}

fn minds_the_filter(input: &ModelInput) -> bool {
    let cleans = |kind: &EventKind| matches!(kind, EventKind::CleanFilter { .. });
    !input.power_cuts.is_empty() || input.events.iter().any(|event| cleans(&event.kind))
}

fn has_residual(input: &ModelInput) -> bool {
    [&input.fill, &input.refill]
        .iter()
        .any(|water| water.chlorine_mg_cl2_per_l + water.chloramine_mg_cl2_per_l > 0.0)
}

fn has_media(input: &ModelInput) -> bool {
    let seeds = |kind: &EventKind| matches!(kind, EventKind::Seed { .. });
    input.events.iter().any(|event| seeds(&event.kind))
}

/// Why a parameter is not varied in this tank whatever is believed of it; none when it can matter.
pub fn why_not(input: &ModelInput, spec: &ParameterSpec) -> Option<&'static str> {
    if spec.source.evidence == Evidence::Definition || spec.low == spec.high {
        return Some(BY_DEFINITION);
    }
    let listed = [METHOD, SPECIFIED, PLANNED, CLASS_WORDS];
    let lists = listed.into_iter().find(|(ids, _)| ids.contains(&spec.id));
    lists.map(|(_, why)| why).or_else(|| misses(input, spec.id))
}

/// What the tank lacks for an input to matter, if it lacks something.
pub fn misses(input: &ModelInput, id: &str) -> Option<&'static str> {
    if let Some(group) = group_of(id)
        && !input.stands.iter().any(|stand| stand.group == group)
    {
        return Some("no such plants");
    }
    let switches = |needs: &Needs| {
        needs.ids.contains(&id) || needs.processes.iter().any(|process| declares(process, id))
    };
    NEEDS
        .iter()
        .find(|needs| switches(needs) && !(needs.is_there)(input))
        .map(|needs| needs.why)
}

/// The plant group whose number it is.
fn group_of(id: &str) -> Option<Group> {
    // "tied_rhizome" ends in no other group's name
    let ends = |group: &Group| {
        let stem = id.strip_suffix(group.suffix());
        stem.is_some_and(|stem| stem.ends_with('_'))
    };
    GROUPS.into_iter().find(ends)
}

/// Whether a process declares a parameter.
fn declares(process: &str, id: &str) -> bool {
    let all = processes::IDS.iter().zip(processes::PARAMETERS);
    all.filter(|(known, _)| **known == process)
        .any(|(_, specs)| specs.iter().any(|spec| spec.id == id))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::parameters;

    #[test]
    fn every_name_of_the_lists_is_known() {
        let listed = [METHOD, SPECIFIED, PLANNED, CLASS_WORDS].map(|(ids, _)| ids);
        let needed = NEEDS.iter().map(|needs| needs.ids);
        for id in listed.into_iter().chain(needed).flatten() {
            assert!(parameters::spec(id).is_some() || *id == "C_p0", "{id}");
        }
        for process in NEEDS.iter().flat_map(|needs| needs.processes) {
            assert!(processes::IDS.contains(process), "{process}");
        }
    }
}
