//! French Creek: oxygen of a stream over three days, and the balance of one of them.

use firstfill::chemistry::air::pressure_atm;
use firstfill::model::composition::Composition;
use firstfill::model::held::Held;
use firstfill::model::parameter_set::{ParameterSet, Values};
use firstfill::model::pool::Pool;
use firstfill::model::setup::{Setup, Surroundings, Tank};
use firstfill::model::state::State;
use firstfill::model::tank_model::TankModel;
use firstfill::model::water::Water;

use super::table::Table;

/// Depth of the stream, m.
pub const DEPTH_M: f64 = 0.16;
/// Pressure of its air, mmHg.
pub const PRESSURE_MMHG: f64 = 523.0;
/// Millimetres of mercury in an atmosphere.
pub const MMHG_PER_ATM: f64 = 760.0;
/// Time between two readings, days: 15 minutes.
const STEP_DAYS: f64 = 1.0 / 96.0;

/// One reading of a day.
#[derive(Clone, Copy)]
pub struct Moment {
    pub t_c: f64,
    pub oxygen: f64,
    pub saturation: f64,
    pub light: f64,
}

/// The readings of a date.
pub fn day(date: &str) -> Vec<Moment> {
    let table = Table::read("french_creek_test_days");
    let columns = ["temp_c", "do_mg_l", "do_sat_mg_l", "light_umol"];
    table
        .words("date")
        .into_iter()
        .zip(table.numbers(columns))
        .filter(|(of, _)| *of == date)
        .map(|(_, [t_c, oxygen, saturation, light])| Moment {
            t_c,
            oxygen,
            saturation,
            light,
        })
        .collect()
}

/// Gross production and respiration (g O2/m²/day) and K600 (/day).
pub type Metabolism = [f64; 3];

/// What crosses the surface in a moment: transfer (/day, at a K600) and saturation (mg/L).
pub type Surface<'a> = &'a dyn Fn(&Moment, f64) -> (f64, f64);

/// Oxygen of a day by trapezoid steps from its first reading:
/// dO/dt = GPP·light/(mean light·z) + ER/z + K·(sat − O).
pub fn oxygen(day: &[Moment], [gpp, er, k600]: Metabolism, surface: Surface) -> Vec<f64> {
    let mean_light = day.iter().map(|m| m.light).sum::<f64>() / day.len() as f64;
    let terms = |m: &Moment| {
        let (transfer, saturation) = surface(m, k600);
        let made = gpp * m.light / (mean_light * DEPTH_M) + er / DEPTH_M;
        (made + transfer * saturation, transfer)
    };
    let mut found = vec![day[0].oxygen];
    for pair in day.windows(2) {
        let (before, after) = (terms(&pair[0]), terms(&pair[1]));
        let now = found[found.len() - 1];
        let gained = 0.5 * STEP_DAYS * (before.0 - before.1 * now + after.0);
        found.push((now + gained) / (1.0 + 0.5 * STEP_DAYS * after.1));
    }
    found
}

/// The surface as the package has it: its Schmidt number (a fit used for streams, Raymond et al.
/// 2012) and its saturation as given with the data.
pub fn as_documented(moment: &Moment, k600: f64) -> (f64, f64) {
    let t = moment.t_c;
    let schmidt = 1568.0 - 86.04 * t + 2.142 * t * t - 0.0216 * t * t * t;
    (k600 * (schmidt / 600.0).powf(-0.5), moment.saturation)
}

/// Saturation of the package: Garcia & Gordon 1992 with the coefficients to the data of Benson &
/// Krause, mL/L, carried to the pressure by what dry air there is.
pub fn saturation_as_documented(t_c: f64) -> f64 {
    const COEFFICIENTS: [f64; 6] = [2.00907, 3.22014, 4.05010, 4.94457, -0.256847, 3.88767];
    const MG_PER_ML: f64 = 1.42905;
    let scaled = ((298.15 - t_c) / (273.15 + t_c)).ln();
    let log = COEFFICIENTS
        .iter()
        .rev()
        .fold(0.0, |sum, c| sum * scaled + c);
    let vapour_mmhg = 10f64.powf(8.10765 - 1750.286 / (235.0 + t_c));
    let dry = (PRESSURE_MMHG - vapour_mmhg) / (MMHG_PER_ATM - vapour_mmhg);
    log.exp() * MG_PER_ML * dry
}

/// A height at which the standard atmosphere has the pressure of French Creek, m.
fn height_m() -> f64 {
    let (mut low, mut high) = (0.0, 5000.0);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if pressure_atm(middle) * MMHG_PER_ATM > PRESSURE_MMHG {
            low = middle;
        } else {
            high = middle;
        }
    }
    low
}

/// A square metre of the stream as a tank of the model, with the surface of a K600.
pub struct Reach {
    model: TankModel<f64>,
    litres: f64,
}

impl Reach {
    pub fn new(k600_per_day: f64) -> Reach {
        let set = ParameterSet::default().with("k_600", k600_per_day * DEPTH_M);
        let values = Values::<f64>::of(&set);
        let tank = Tank {
            volume_l: 1000.0 * DEPTH_M,
            surface_m2: 1.0,
            bed_m2: 1.0,
            wall_m2: 1.0,
            soil_l: 0.0,
            film_m2: None,
            altitude_m: height_m(),
        };
        let model = TankModel::new(&Setup {
            values: &values,
            tank: &tank,
            stands: &[],
            surroundings: Surroundings {
                room_c: 10.0,
                humidity_frac: 0.5,
                heater_set_c: 10.0,
                ionic_strength_mol_per_l: 0.002,
                top_up: Some(Composition::PURE),
            },
        });
        Reach {
            model,
            litres: tank.volume_l,
        }
    }
    /// Transfer (/day) and saturation (mg/L) as the process of gas exchange has them.
    pub fn surface(&self, moment: &Moment) -> (f64, f64) {
        let mut state = State::default();
        state[Pool::Volume] = self.litres;
        state[Pool::Temperature] = moment.t_c;
        state[Pool::Oxygen] = self.litres * moment.oxygen;
        (state[Pool::Dic], state[Pool::Alkalinity]) = (self.litres, self.litres);
        let mut held = Held::quiet();
        held.power = true;
        let mut water = Water::blank();
        self.model.look(&state, &held, 0.5, &mut water);
        let gas = &self.model.processes().gas_exchange;
        let transfer = gas.transfer(&water).oxygen_l_per_day / self.litres;
        (transfer, gas.oxygen_saturation(&water))
    }
}
