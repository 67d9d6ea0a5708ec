//! One worked state of the whole model, to all printed digits.
//!
//! Source: an independent implementation of the same specification (reference library NumPy),
//! printed to six digits; each value is held to one unit of its last.

mod support;

use firstfill::base::units::MEQ_PER_DKH;
use firstfill::chemistry::activity::ionic_strength_mol_per_l;
use firstfill::model::composition::Composition;
use firstfill::model::group::Group;
use firstfill::model::held::Held;
use firstfill::model::matrix::MAX_ROWS;
use firstfill::model::parameter_set::{ParameterSet, Values};
use firstfill::model::pool::Pool;
use firstfill::model::setup::{Setup, StandPlan, Surroundings, Tank};
use firstfill::model::state::State;
use firstfill::model::tank_model::TankModel;
use firstfill::model::water::Water;
use support::check::{Check, digits_apart};

const STATE: [(Pool, f64); 31] = [
    (Pool::Volume, 50.0),
    (Pool::Temperature, 24.0),
    (Pool::Indicator, 12.0),
    (Pool::Tan, 1.5 * 50.0),
    (Pool::Nitrite, 0.8 * 50.0),
    (Pool::Nitrate, 3.0 * 50.0),
    (Pool::Phosphate, 0.08 * 50.0),
    (Pool::Potassium, 3.0 * 50.0),
    (Pool::Iron, 0.02 * 50.0),
    (Pool::Oxygen, 7.5 * 50.0),
    (Pool::Chlorine, 0.05 * 50.0),
    (Pool::Chloramine, 0.10 * 50.0),
    (Pool::Dic, 1.5 * 50.0),
    (Pool::Alkalinity, 0.9 * 50.0),
    (Pool::Chloride, 0.0),
    (Pool::Hardness, 0.0),
    (Pool::SoilAmmonium, 600.0),
    (Pool::SoilOrganicN, 1500.0),
    (Pool::SoilPhosphorus, 150.0),
    (Pool::SoilAcid, 400.0),
    (Pool::AmmoniaOxidisers, 4.0),
    (Pool::NitriteOxidisers, 0.5),
    (Pool::CompleteOxidisers, 0.2),
    (Pool::Algae, 0.05),
    (Pool::FastDetritus, 0.3),
    (Pool::SlowDetritus, 0.6),
    (Pool::FastDetritusN, 9.0),
    (Pool::SlowDetritusN, 15.0),
    (Pool::Biomass(0), 3.0),
    (Pool::TissueN(0), 90.0),
    (Pool::Emersed(0), 0.5),
];

const CHANGES_PER_DAY: [(Pool, &str); 29] = [
    (Pool::Tan, "46.3609"),
    (Pool::Nitrite, "7.83848"),
    (Pool::Nitrate, "3.30386"),
    (Pool::Phosphate, "0.277446"),
    (Pool::Potassium, "-4.34615"),
    (Pool::Iron, "-0.192141"),
    (Pool::Oxygen, "503.118"),
    (Pool::Dic, "-80.9053"),
    (Pool::Alkalinity, "-7.10358"),
    (Pool::Chlorine, "-25.0000"),
    (Pool::Chloramine, "-50.0000"),
    (Pool::Temperature, "12.6229"),
    (Pool::Indicator, "230.391"),
    (Pool::SoilAmmonium, "-41.3710"),
    (Pool::SoilOrganicN, "-7.14257"),
    (Pool::SoilPhosphorus, "-0.618985"),
    (Pool::SoilAcid, "-6.54422"),
    (Pool::AmmoniaOxidisers, "-4.23022"),
    (Pool::NitriteOxidisers, "-0.519124"),
    (Pool::CompleteOxidisers, "-0.222307"),
    (Pool::Algae, "0.0358494"),
    (Pool::FastDetritus, "-0.160310"),
    (Pool::SlowDetritus, "0.0290418"),
    (Pool::FastDetritusN, "-4.41306"),
    (Pool::SlowDetritusN, "0.986044"),
    (Pool::Biomass(0), "0.331265"),
    (Pool::TissueN(0), "6.24547"),
    (Pool::Emersed(0), "-0.0500000"),
    (Pool::Volume, "0.000000000000"),
];

fn stems() -> StandPlan {
    StandPlan {
        name: "stems".into(),
        group: Group::Stems,
        cover_frac: 0.5,
        density_g_per_m2: 30.0,
        melt_frac: 0.25,
        acclimates: true,
        uses_bicarbonate: false,
        planted_at: 0,
    }
}

#[test]
fn the_worked_state_comes_out_to_all_printed_digits() {
    let set = ParameterSet::default();
    let values = Values::<f64>::of(&set);
    let tank = Tank {
        volume_l: 50.0,
        surface_m2: 0.18,
        bed_m2: 0.18,
        wall_m2: 0.83,
        soil_l: 9.4,
        film_m2: None,
        altitude_m: 0.0,
    };
    let stands = [stems()];
    let ionic = ionic_strength_mol_per_l(8.0 * MEQ_PER_DKH, 4.0 * MEQ_PER_DKH);
    let setup = Setup {
        values: &values,
        tank: &tank,
        stands: &stands,
        surroundings: Surroundings {
            room_c: 22.0,
            humidity_frac: 0.5,
            heater_set_c: 25.0,
            ionic_strength_mol_per_l: ionic,
            top_up: Some(Composition::PURE),
        },
    };
    let model = TankModel::new(&setup);
    let mut state = State::default();
    for (pool, amount) in STATE {
        state[pool] = amount;
    }
    let mut held = Held::quiet();
    held.light_umol_per_m2_s = 100.0;
    held.lit = true;
    held.gas_mmol_per_day = 24.0 * 300.0 / 44.0095;
    held.air_l_per_min = 0.5;
    held.airing = true;
    held.shedding[0] = 1.0;
    held.animals_g = 3.0;
    held.feed_g_per_day = 0.06;
    held.feed_mg_n_per_day = 0.06 * 160.0 * 0.4;
    let mut water = Water::blank();
    model.look(&state, &held, 10.5, &mut water);
    let mut check = Check::of("The worked state: pH, CO2, all rates of change, some rates");
    let mut see = |what: &str, found: f64, printed: &str| {
        check.see(digits_apart(found, printed), what);
    };
    see("pH", -water.hydrogen.log10(), "6.50283");
    see("CO2", water.co2_mg_per_l(), "26.3994");

    let mut rates = [0.0; MAX_ROWS];
    let rows = model.matrix().rows();
    model.rates(&water, &mut rates[..rows]);
    let mut change = State::default();
    model.matrix().apply(&mut rates, &mut change);
    for (pool, printed) in CHANGES_PER_DAY {
        see(&format!("{pool:?}"), change[pool], printed);
    }
    let row = |name: &str| {
        let at = (0..rates.len())
            .find(|&at| model.row_name(at) == name)
            .unwrap_or_else(|| panic!("no row {name}"));
        rates[at]
    };
    see(
        "CO2 out",
        -row("gas_exchange (carbon dioxide out)"),
        "-242.29",
    );
    see("O2 in", row("gas_exchange (oxygen in)"), "478.95");
    see("injection", row("co2_injection"), "163.601");
    see(
        "soil carbon",
        row("soil_respiration") / 12.011 + row("denitrification") * 1.25 / 14.007,
        "2.0632",
    );
    see("N2", row("denitrification"), "0.6297");
    check.holds(2 + CHANGES_PER_DAY.len() + 5);
}
