//! Photosynthesis: a stand grows on light, carbon dioxide and the scarcest of four nutrients.
//!
//! Light falls off inside the stand by its own dry weight; out-of-water tissue shades but does not
//! grow. Phosphorus and iron come from the soil by the roots or from the water by the leaves;
//! the iron of the soil is not a pool, so growth draws it from the soil and what the leaves take
//! from the water is paid back. Nitrogen is stored apart (see leaf and root uptake).
//!
//! ```text
//! P = 24·(P_max/k_B)·ln[(K_I + PAR)/(K_I + PAR·passed)]·A_i·B/(B + E)·th_P^(min(T,30) − 25)    mg O2/day
//! r = P/o·f_CO2·min(f_N, f_P, f_K, f_Fe)·acc                                                   g/day
//! f_CO2 = (CO2 − Gamma)/(K_CO2 + CO2 − Gamma) [+ v_b·HCO3/(K_b + HCO3), at most 1, if it uses bicarbonate]
//! f_N = (Q − Q_min)/(Q_crit − Q_min) within 0 to 1, Q = NB/B        f_K = K/(K_K + K)
//! f_P = w_P + (1 − w_P)·PO4/(K_P + PO4), w_P = f_root·P_p/(K_rP + P_p);   iron alike, w_Fe = f_root on soil
//! acc = acc0 + (1 − acc0)·min(1, age/t_acc) after planting from out of water
//! ```

use crate::base::clock;
use crate::base::real::Real;
use crate::base::sources::{
    GERLOFF_1966, VAN_1976, calibrated, derived, memory, practice, published,
};
use crate::model::component::Component;
use crate::model::conserved::{Flux, Quantity};
use crate::model::limitation::monod;
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::pool::{MAX_STANDS, Pool};
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::temperature::Factor;
use crate::model::water::Water;

/// Rows of one stand: growth on phosphorus of the water, of the soil, iron taken from the water.
const ROWS: usize = 3;

#[derive(Debug, Clone)]
struct Stand<R> {
    /// 24·(P_max/k_B)·A_i/o, g/day.
    fastest: R,
    half_light: R,
    half_co2: R,
    root_share: R,
    root_iron_share: R,
    bicarbonate: Option<(R, R)>,
    planted_on_day: f64,
    acclimates: bool,
}

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct Photosynthesis<R> {
    stands: Vec<Stand<R>>,
    temperature: Factor,
    compensation: R,
    quota: (R, R),
    half_root_phosphorus: R,
    half_phosphorus: R,
    half_potassium: R,
    half_iron: R,
    iron_per_g: R,
    first_speed: R,
    recovery_days: R,
}

impl<R: Real> Photosynthesis<R> {
    /// The light a stand has taken up, in logarithms, of all stands: worked out one after the other and
    /// put down, so that the processor takes lanes abreast.
    #[inline(always)]
    fn depths(&self, water: &Water<R>) -> [R; MAX_STANDS] {
        let mut depths = [R::zero(); MAX_STANDS];
        let light = water.held.light_umol_per_m2_s;
        for (stand, plant) in self.stands.iter().enumerate() {
            let passed = light * water.canopies[stand].passed;
            depths[stand] = ((plant.half_light + light) / (plant.half_light + passed)).ln();
        }
        depths
    }
    /// Growth that light and temperature allow, g/day.
    #[inline(always)]
    fn potential(&self, water: &Water<R>, stand: usize, depth: R) -> R {
        let plant = &self.stands[stand];
        let biomass = water.amount(Pool::Biomass(stand));
        let mass = biomass + water.amount(Pool::Emersed(stand));
        let submersed = R::pick(R::zero().below(mass), biomass / mass, R::zero());
        plant.fastest * depth * submersed * water.factor(self.temperature)
    }
    #[inline(always)]
    fn carbon(&self, water: &Water<R>, plant: &Stand<R>) -> R {
        let from_co2 = monod(water.co2 - self.compensation, plant.half_co2);
        match plant.bicarbonate {
            None => from_co2,
            Some((speed, half)) => {
                (from_co2 + speed * monod(water.bicarbonate, half)).least(R::one())
            }
        }
    }
    #[inline(always)]
    fn nitrogen(&self, water: &Water<R>, stand: usize) -> R {
        let biomass = water.amount(Pool::Biomass(stand));
        let quota = R::pick(
            R::zero().below(biomass),
            water.amount(Pool::TissueN(stand)) / biomass,
            R::zero(),
        );
        ((quota - self.quota.0) / (self.quota.1 - self.quota.0)).unit()
    }
    #[inline(always)]
    fn recovery(&self, water: &Water<R>, plant: &Stand<R>) -> R {
        if !plant.acclimates {
            return R::one();
        }
        let age = (water.days - R::of(plant.planted_on_day)).floor_zero();
        self.first_speed
            + (R::one() - self.first_speed) * (age / self.recovery_days).least(R::one())
    }
}

impl<R: Real> Process<R> for Photosynthesis<R> {
    const ID: &'static str = "photosynthesis";
    const WHAT: &'static str = "stands grow on light, carbon dioxide and nutrients";
    const PARAMETERS: &'static [ParameterSpec] = &[
        parameter(
            "Gamma",
            "CO2 below which no plant grows",
            "mmol/L",
            0.001,
            (0.0005, 0.0015),
            published(&[VAN_1976], "19 to 44 µL/L"),
        ),
        parameter(
            "Q_min",
            "tissue nitrogen at which growth stops",
            "mg/g",
            10.0,
            (8.0, 10.0),
            memory(&[GERLOFF_1966], ""),
        ),
        parameter(
            "Q_crit",
            "tissue nitrogen from which growth is free",
            "mg/g",
            13.0,
            (12.0, 13.0),
            published(&[GERLOFF_1966], "critical nitrogen 1.3 %"),
        ),
        parameter(
            "K_rP",
            "pore-water phosphate at half speed of roots",
            "mg P/L",
            0.02,
            (0.005, 0.1),
            calibrated(&[], ""),
        ),
        parameter(
            "K_P",
            "phosphate at half speed of leaves",
            "mg P/L",
            0.01,
            (0.005, 0.02),
            memory(&[], ""),
        ),
        parameter(
            "K_K",
            "potassium at half speed of plant growth",
            "mg/L",
            0.2,
            (0.05, 0.5),
            calibrated(&[], ""),
        ),
        parameter(
            "K_Fe",
            "iron at half speed of plant growth",
            "mg/L",
            0.005,
            (0.001, 0.02),
            calibrated(&[], ""),
        ),
        parameter(
            "v_b",
            "growth on bicarbonate alone, where a plant can use it",
            "1",
            0.09,
            (0.03, 0.2),
            derived("fitted to one dense stand in hard water"),
        ),
        parameter(
            "K_b",
            "bicarbonate at half speed, where a plant can use it",
            "mmol/L",
            0.35,
            (0.1, 1.5),
            derived("fitted to one dense stand in hard water"),
        ),
        parameter(
            "acc0",
            "speed of growth just after planting from out of water",
            "1",
            0.5,
            (0.2, 1.0),
            practice(""),
        ),
        parameter(
            "t_acc",
            "days until growth has recovered after planting from out of water",
            "day",
            10.0,
            (5.0, 21.0),
            practice(""),
        ),
    ];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let stands: Vec<Stand<R>> = (0..builder.setup.stands.len())
            .map(|stand| stand_of(builder, stand))
            .collect();
        let rows = (0..stands.len())
            .flat_map(|stand| rows_of(builder, stand))
            .collect();
        let process = Photosynthesis {
            stands,
            temperature: builder.held_theta("th_P", "T_ref_plant"),
            compensation: builder.get("Gamma"),
            quota: (builder.get("Q_min"), builder.get("Q_crit")),
            half_root_phosphorus: builder.get("K_rP"),
            half_phosphorus: builder.get("K_P"),
            half_potassium: builder.get("K_K"),
            half_iron: builder.get("K_Fe"),
            iron_per_g: builder.get("q_Fe"),
            first_speed: builder.get("acc0"),
            recovery_days: builder.get("t_acc"),
        };
        (process, rows)
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        if !water.held.lit {
            rates.fill(R::zero());
            return;
        }
        let one = R::one();
        let pore_share = monod(water.pore_phosphate, self.half_root_phosphorus);
        let leaf_phosphorus = monod(water.phosphate, self.half_phosphorus);
        let potassium = monod(water.potassium, self.half_potassium);
        let leaf_iron = monod(water.iron, self.half_iron);
        let depths = self.depths(water);
        for (stand, plant) in self.stands.iter().enumerate() {
            let root_phosphorus = plant.root_share * pore_share;
            let phosphorus = root_phosphorus + (one - root_phosphorus) * leaf_phosphorus;
            let iron = plant.root_iron_share + (one - plant.root_iron_share) * leaf_iron;
            let scarcest = self
                .nitrogen(water, stand)
                .least(phosphorus)
                .least(potassium)
                .least(iron);
            let growth = self.potential(water, stand, depths[stand])
                * self.carbon(water, plant)
                * scarcest
                * self.recovery(water, plant);
            let from_soil = share(root_phosphorus, phosphorus);
            rates[ROWS * stand] = growth * (one - from_soil);
            rates[ROWS * stand + 1] = growth * from_soil;
            rates[ROWS * stand + 2] =
                growth * self.iron_per_g * (one - share(plant.root_iron_share, iron));
        }
    }
}

/// Part over whole, and nothing where there is no whole.
#[inline(always)]
fn share<R: Real>(part: R, whole: R) -> R {
    R::pick(R::zero().below(whole), part / whole, R::zero())
}

fn stand_of<R: Real>(builder: &Builder<'_, R>, stand: usize) -> Stand<R> {
    let plan = &builder.setup.stands[stand];
    let get = |stem: &str| builder.get(&plan.group.id(stem));
    let area = plan.cover_frac * builder.setup.tank.bed_m2;
    let oxygen_per_g = builder
        .contents
        .of(Pool::Biomass(stand).into(), Quantity::OxygenDemand);
    let per_g = oxygen_per_g.expect("tissue has an oxygen demand");
    let root_share = if builder.setup.has_soil() {
        get("f_root")
    } else {
        R::zero()
    };
    Stand {
        fastest: R::of(24.0) * get("P_max") / get("k_B") * area / per_g,
        half_light: get("K_I"),
        half_co2: get("K_CO2"),
        root_share,
        root_iron_share: root_share,
        bicarbonate: plan
            .uses_bicarbonate
            .then(|| (builder.get("v_b"), builder.get("K_b"))),
        planted_on_day: clock::days(plan.planted_at),
        acclimates: plan.acclimates,
    }
}

fn rows_of<R: Real>(builder: &Builder<'_, R>, stand: usize) -> [Row<R>; ROWS] {
    let name = &builder.setup.stands[stand].name;
    let contents = builder.contents;
    let soil_iron = Component::Outside(Flux::SoilIron, Quantity::Iron);
    let growth = |part: &str, phosphorus: Pool| {
        Row::new(format!("{name}, {part}"))
            .of_stand(stand)
            .in_light()
            .put(Pool::Biomass(stand), R::one())
            .close(contents, Quantity::Phosphorus, phosphorus)
            .close(contents, Quantity::Iron, soil_iron)
            .from_water(contents)
    };
    [
        growth("phosphorus of the water", Pool::Phosphate),
        growth("phosphorus of the soil", Pool::SoilPhosphorus),
        Row::new(format!("{name}, iron of the water"))
            .of_stand(stand)
            .in_light()
            .put(Pool::Iron, -R::one())
            .put(soil_iron, R::one()),
    ]
}
