//! The inorganic carbon of a water, from its alkalinity and either `co2` or `ph`.

use crate::analysis::uncertain::moves::Place as To;
use crate::analysis::uncertain::waters::{Carbon, Matter};
use crate::base::units::everyday;
use crate::chemistry::activity::ionic_strength_mol_per_l;
use crate::chemistry::still_water::StillWater;
use crate::model::composition::Composition;
use crate::scenario::problem::{Place, Problem};
use crate::scenario::reader::{Read, Reader};

/// The number of tap water, whose defaults are noted.
pub(super) const TAP: usize = 0;
/// Stands in where the problem is told.
const NO_CARBON: (f64, Carbon) = (0.0, Carbon::Co2(0.0));
/// Carbon dioxide of pure water, mg/L: in balance with the air of a lived-in room.
pub(super) const PURE_CO2_MG_PER_L: f64 = 0.9;

/// A water at rest, from its temperature, hardness and alkalinity.
pub(super) fn still(t_c: f64, hardness_meq_per_l: f64, alkalinity_meq_per_l: f64) -> StillWater {
    StillWater {
        t_c,
        ionic_strength_mol_per_l: ionic_strength_mol_per_l(
            hardness_meq_per_l,
            alkalinity_meq_per_l,
        ),
        alkalinity_meq_per_l,
    }
}

/// Inorganic carbon from alkalinity and either CO2 or pH, mmol/L, with which of the two it follows from.
pub(super) fn carbon_of(section: &Reader<'_>, number: usize, water: &Composition) -> (f64, Carbon) {
    let still = still(
        water.temperature_c,
        water.hardness_meq_per_l,
        water.alkalinity_meq_per_l,
    );
    let ph = section.number("ph", (4.0, 11.0));
    match (&ph, section.wanted("co2")) {
        (Read::Absent, _) => {
            let co2 = co2(section, number);
            (still.carbon_at_co2(co2), Carbon::Co2(co2))
        }
        (_, Some(co2)) => {
            both_co2_and_ph(section, &ph, &co2.key_place);
            NO_CARBON
        }
        (Read::Given(ph, place), None) => {
            let carbon = still.carbon_at_ph(*ph);
            if carbon <= 0.0 || (water.alkalinity_meq_per_l <= 0.0 && *ph > 7.0) {
                section.desk.problem(
                    Problem::at(
                        place,
                        format!(
                            "{} has a pH of {ph} without alkalinity to hold it",
                            section.path
                        ),
                    )
                    .help("give the alkalinity as well, or leave the pH out"),
                );
            }
            (carbon, Carbon::Ph(*ph))
        }
        (Read::Bad(_), None) => NO_CARBON,
    }
}

fn co2(section: &Reader<'_>, number: usize) -> f64 {
    let bounds = (0.0, 200.0);
    let to = To::Water(number, Matter::CarbonDioxide);
    if number == TAP {
        let said = section.said_or_default("co2", &everyday::CO2, bounds);
        said.moves(section.desk, to);
        return said.value;
    }
    let co2 = section.said_for("co2", &everyday::CO2, bounds, to);
    if co2.is_absent() {
        let usual = everyday::CO2.print(PURE_CO2_MG_PER_L);
        section.assumed("co2", usual, "pure water in the air of a room");
    }
    co2.or(PURE_CO2_MG_PER_L)
}

fn both_co2_and_ph(section: &Reader<'_>, ph: &Read<f64>, co2: &Place) {
    if let Some(ph) = ph.place() {
        section.desk.problem(
            Problem::at(ph, format!("{} has both co2 and ph", section.path))
                .label("one of the two")
                .also(co2, "and here")
                .help("with the alkalinity, each follows from the other"),
        );
    }
}
