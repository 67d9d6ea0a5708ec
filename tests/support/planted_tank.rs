//! A tank with soil and one stand of each of the five plant groups, and a busy state of it.

use firstfill::base::real::Real;
use firstfill::model::composition::Composition;
use firstfill::model::group::{GROUPS, Group};
use firstfill::model::held::Held;
use firstfill::model::parameter::ParameterSpec;
use firstfill::model::parameter_set::{ParameterSet, Values};
use firstfill::model::parameters;
use firstfill::model::pool::Pool;
use firstfill::model::setup::{Setup, StandPlan, Surroundings, Tank};
use firstfill::model::state::State;
use firstfill::model::tank_model::TankModel;

/// Dimensions: 60 × 30 cm, 50 L of free water over 9.4 L of soil.
pub const TANK: Tank = Tank {
    volume_l: 50.0,
    surface_m2: 0.18,
    bed_m2: 0.18,
    wall_m2: 0.83,
    soil_l: 9.4,
    film_m2: None,
    altitude_m: 0.0,
};

/// One stand of each group; the second can use bicarbonate.
pub fn stands() -> Vec<StandPlan> {
    let stand = |(place, group): (usize, Group)| StandPlan {
        name: group.word().into(),
        group,
        cover_frac: 0.18,
        density_g_per_m2: 30.0,
        melt_frac: 0.25,
        acclimates: true,
        uses_bicarbonate: place == 1,
        planted_at: 0,
    };
    GROUPS.into_iter().enumerate().map(stand).collect()
}

/// The model of that tank.
pub fn model<R: Real>(parameters: &ParameterSet) -> TankModel<R> {
    let values = Values::<R>::of(parameters);
    let stands: Vec<StandPlan<R>> = stands()
        .iter()
        .map(|stand| StandPlan::abreast(&vec![stand; R::LANES]))
        .collect();
    TankModel::new(&Setup {
        values: &values,
        tank: &Tank::abreast(&vec![&TANK; R::LANES]),
        stands: &stands,
        surroundings: Surroundings {
            room_c: R::of(22.0),
            humidity_frac: R::of(0.5),
            heater_set_c: R::of(25.0),
            ionic_strength_mol_per_l: R::of(0.0043),
            top_up: Some(Composition::abreast(&vec![&Composition::PURE; R::LANES])),
        },
    })
}

/// Everything switched on at once.
pub fn busy<R: Real>() -> Held<R> {
    let mut held = Held::quiet();
    held.light_umol_per_m2_s = R::of(100.0);
    held.lit = true;
    held.gas_mmol_per_day = R::of(160.0);
    held.air_l_per_min = R::of(0.5);
    held.airing = true;
    held.shedding = [R::one(); firstfill::model::pool::MAX_STANDS];
    held.animals_g = R::of(3.0);
    held.feed_g_per_day = R::of(0.06);
    held.feed_mg_n_per_day = R::of(3.84);
    held
}

/// A state in which every process runs; amounts drawn between half and one and a half of these.
pub fn state(draws: &mut Draws) -> State<f64> {
    let mut state = State::default();
    let mut put = |pool: Pool, amount: f64| state[pool] = amount * draws.between(0.5, 1.5);
    for (pool, amount) in [
        (Pool::Tan, 75.0),
        (Pool::Nitrite, 40.0),
        (Pool::Nitrate, 150.0),
        (Pool::Phosphate, 4.0),
        (Pool::Potassium, 150.0),
        (Pool::Iron, 1.0),
        (Pool::Oxygen, 375.0),
        (Pool::Dic, 75.0),
        (Pool::Alkalinity, 45.0),
        (Pool::Chlorine, 2.5),
        (Pool::Chloramine, 5.0),
        (Pool::Chloride, 1000.0),
        (Pool::Hardness, 140.0),
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
    ] {
        put(pool, amount);
    }
    for stand in 0..GROUPS.len() {
        put(Pool::Biomass(stand), 1.0);
        put(Pool::TissueN(stand), 25.0);
        put(Pool::Emersed(stand), 0.2);
    }
    state[Pool::Volume] = 50.0;
    state[Pool::Temperature] = draws.between(18.0, 29.0);
    state[Pool::Indicator] = draws.between(2.0, 30.0);
    state
}

/// A little generator of numbers (splitmix64), so that every run of the tests draws the same.
pub struct Draws(pub u64);

impl Draws {
    /// The next number between two.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut bits = self.0;
        bits = (bits ^ (bits >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        bits = (bits ^ (bits >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        bits ^= bits >> 31;
        low + (high - low) * (bits >> 11) as f64 / (1u64 << 53) as f64
    }
    /// A whole set of parameters, each drawn from its range.
    pub fn parameters(&mut self) -> ParameterSet {
        let draw = |set: ParameterSet, spec: &&ParameterSpec| {
            let value = self.between(spec.low, spec.high);
            set.with(spec.id, value)
        };
        parameters::all().iter().fold(ParameterSet::default(), draw)
    }
}
