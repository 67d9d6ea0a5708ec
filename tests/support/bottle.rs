//! Bottles of nitrifiers for batch tests: 20 °C, and nothing limits them but what a test is about.

use firstfill::engine::event::{Animals, EventKind};
use firstfill::engine::laboratory::Laboratory;
use firstfill::model::parameter_set::ParameterSet;
use firstfill::model::pool::Pool;
use firstfill::model::setup::Tank;

/// So large that nothing in a bottle comes near it.
const NEVER_REACHED: f64 = 1e12;
/// Share of protein in the feed by which ammonia is brought in; any.
const PROTEIN: f64 = 0.4;

/// Switches off what pH, inorganic carbon, nitrous acid and crowding do to nitrifiers: a lower pH
/// limit of 0 leaves 1e-7 of their speed away, at pH 7.
pub fn knowing_no_other_limit(laboratory: Laboratory) -> Laboratory {
    laboratory
        .parameter("pK1_A", 0.0)
        .parameter("pK1_K", 0.0)
        .parameter("pK2", 100.0)
        .parameter("K_C", 0.0)
        .parameter("K_I_FNA_A", NEVER_REACHED)
        .parameter("q_area", NEVER_REACHED)
}

/// So many litres under open air at 20 °C, without bed and soil.
pub fn open_vessel(litres: f64, surface_m2: f64) -> Laboratory {
    Laboratory::vessel(Tank {
        volume_l: litres,
        surface_m2,
        bed_m2: 0.0,
        wall_m2: 0.0,
        soil_l: 0.0,
        film_m2: None,
        altitude_m: 0.0,
    })
}

/// A litre with oxygen and pH held, in which ammonia oxidisers know no limit but ammonia.
pub fn limited_by_ammonia_alone() -> Laboratory {
    knowing_no_other_limit(Laboratory::bottle(1.0))
        .temperature(20.0)
        .dissolved(Pool::Oxygen, 8.0)
        .hold(&[Pool::Oxygen])
        .hold_ph(8.0)
        .parameter("K_O_AOB", 0.0)
        .parameter("K_OD", 0.0)
}

/// Ammonia brought in evenly, mg N/day, by animals that weigh nothing and excrete all nitrogen of
/// their feed; `feeding` must be at work.
pub fn fed_evenly(laboratory: Laboratory, mg_n_per_day: f64) -> Laboratory {
    let nitrogen = ParameterSet::default().get("N_feed");
    laboratory
        .parameter("e_N", 1.0)
        .parameter("fec_N", 0.0)
        .parameter("feces", 0.0)
        .at(
            0.0,
            EventKind::Stock(Animals {
                mass_g: 0.0,
                feed_g_per_day: mg_n_per_day / (PROTEIN * nitrogen),
                protein_frac: PROTEIN,
                shrimp: false,
            }),
        )
}
