//! Everything that depends on temperature alone, tabulated where a run comes by and interpolated.
//!
//! Rate laws ask for a factor when they are built and get a [`Factor`], a place in the table;
//! during a step all factors are interpolated together. Nodes stand 0.25 °C apart from −2 to
//! 48 °C; cubic interpolation through four nodes is off by less than 2e-8 of the value for every
//! factor of the model (tested), far below the error of a step. Outside, the cubic goes on.
//! Held factors (photosynthesis, uptake, nitrifiers) see min(T, `T_hold`).

use std::fmt;
use std::sync::{Arc, OnceLock};

use crate::base::real::Real;

/// Place of a factor among the [`Factors`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Factor(usize);

/// Coldest temperature of the table, °C.
const COLDEST_C: f64 = -2.0;
/// Distance of the nodes, K.
const STEP_C: f64 = 0.25;
/// Number of nodes.
const NODES: usize = 201;
/// Number of the last cell; a cubic needs a node before it and two after.
const LAST_CELL: f64 = (NODES - 4) as f64;
/// 1.5·2^52: added to a number, it leaves the nearest whole number.
const ROUNDING: f64 = 6_755_399_441_055_744.0;
/// Most factors of either kind.
const ROOM: usize = 32;

/// A smooth function of °C.
type Function<R> = Box<dyn Fn(f64) -> R + Send + Sync>;

/// Collects the factors that processes ask for; one name is one factor, however often asked for.
pub struct FactorList<R> {
    free: Vec<(String, Function<R>)>,
    held: Vec<(String, Function<R>)>,
    hold_c: R,
}

impl<R: Real> FactorList<R> {
    /// An empty list; held factors see no temperature above `hold_c`.
    pub fn new(hold_c: R) -> Self {
        FactorList {
            free: Vec::new(),
            held: Vec::new(),
            hold_c,
        }
    }
    /// A factor that follows the temperature: any smooth function of °C.
    pub fn free(
        &mut self,
        name: &str,
        function: impl Fn(f64) -> R + Send + Sync + 'static,
    ) -> Factor {
        Factor(place(&mut self.free, name, function))
    }
    /// A factor that stays flat above the hold.
    pub fn held(
        &mut self,
        name: &str,
        function: impl Fn(f64) -> R + Send + Sync + 'static,
    ) -> Factor {
        Factor(ROOM + place(&mut self.held, name, function))
    }
    /// The table, still empty.
    pub fn table(self) -> TemperatureTable<R> {
        TemperatureTable {
            free: Arc::new(Nodes::of(self.free)),
            held: Arc::new(Nodes::of(self.held)),
            hold_c: self.hold_c,
        }
    }
}

fn place<R>(
    functions: &mut Vec<(String, Function<R>)>,
    name: &str,
    function: impl Fn(f64) -> R + Send + Sync + 'static,
) -> usize {
    let known = functions.iter().position(|(known, _)| known == name);
    known.unwrap_or_else(|| {
        assert!(
            functions.len() < ROOM,
            "raise ROOM for more temperature factors"
        );
        functions.push((name.to_string(), Box::new(function)));
        functions.len() - 1
    })
}

/// θ^(T − reference), as a function of temperature.
pub fn theta<R: Real>(theta: R, reference_c: R) -> impl Fn(f64) -> R + Send + Sync + 'static {
    let slope = theta.ln();
    move |t| (slope * (R::of(t) - reference_c)).exp()
}

/// Values at the nodes. A node is worked out when a tank first comes near it; what it holds does not
/// hang on who came first.
struct Nodes<R> {
    functions: Vec<Function<R>>,
    nodes: Vec<OnceLock<Box<[R]>>>,
}

impl<R> fmt::Debug for Nodes<R> {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{} factors", self.functions.len())
    }
}

impl<R: Real> Nodes<R> {
    fn of(functions: Vec<(String, Function<R>)>) -> Self {
        Nodes {
            functions: functions.into_iter().map(|(_, f)| f).collect(),
            nodes: (0..NODES).map(|_| OnceLock::new()).collect(),
        }
    }
    fn width(&self) -> usize {
        self.functions.len().min(ROOM)
    }
    fn node(&self, number: usize) -> &[R] {
        self.nodes[number].get_or_init(|| {
            let t_c = COLDEST_C + STEP_C * number as f64;
            self.functions.iter().map(|f| f(t_c)).collect()
        })
    }
    /// The four nodes around a cell, of all columns, in one lane.
    #[cold]
    fn enter(&self, lane: usize, cell: usize, around: &mut Around<R>) {
        for (ahead, values) in around.iter_mut().enumerate() {
            for (value, node) in values.iter_mut().zip(self.node(cell + ahead)) {
                value.set_lane(lane, node.lane(lane));
            }
        }
    }
}

/// Where a temperature lies: the cell between nodes, and what the nodes around weigh.
struct Place<R> {
    rows: R,
    weights: [R; 4],
}

impl<R: Real> Place<R> {
    #[inline(always)]
    fn of(t_c: R) -> Self {
        let place = (t_c - R::of(COLDEST_C)) * R::of(1.0 / STEP_C) - R::one();
        let inside = place.most(R::zero()).least(R::of(LAST_CELL + 0.5));
        let rows = ((inside - R::of(0.5)) + R::of(ROUNDING)) - R::of(ROUNDING);
        Place {
            rows,
            weights: weights(place - rows),
        }
    }
}

/// Four nodes, at x = −1, 0, 1 and 2, of every column.
type Around<R> = [[R; ROOM]; 4];

/// What each of four nodes weighs in the cubic through them (Lagrange).
///
/// ```text
/// w₋₁ = −x·(x − 1)·(x − 2)/6   w₀ = (x + 1)·(x − 1)·(x − 2)/2   w₁ = −(x + 1)·x·(x − 2)/2   w₂ = (x + 1)·x·(x − 1)/6
/// ```
#[inline(always)]
fn weights<R: Real>(x: R) -> [R; 4] {
    let (before, after, beyond) = (x + R::one(), x - R::one(), x - R::of(2.0));
    let (outer, inner) = (x * after, before * beyond);
    let (sixth, half) = (R::of(1.0 / 6.0), R::of(0.5));
    [
        -(outer * beyond) * sixth,
        inner * after * half,
        -(inner * x) * half,
        outer * before * sixth,
    ]
}

/// The cells that tanks are in, with the nodes around. Water warms slowly, so they mostly stay; what
/// comes out hangs on the temperature alone.
#[derive(Debug, Clone, Copy)]
struct Cell<R> {
    rows: R,
    around: Around<R>,
}

impl<R: Real> Cell<R> {
    fn nowhere() -> Self {
        Cell {
            rows: -R::one(),
            around: [[R::one(); ROOM]; 4],
        }
    }
    /// Works out all columns at a place.
    #[inline(always)]
    fn at(&mut self, nodes: &Nodes<R>, place: &Place<R>, out: &mut [R]) {
        if R::any(R::of(0.5).below((place.rows - self.rows).abs())) {
            self.enter(nodes, place.rows);
        }
        let [w0, w1, w2, w3] = place.weights;
        let [a, b, c, d] = &self.around;
        for (column, value) in out.iter_mut().enumerate().take(nodes.width()) {
            *value = (w0 * a[column] + w1 * b[column]) + (w2 * c[column] + w3 * d[column]);
        }
    }
    #[cold]
    fn enter(&mut self, nodes: &Nodes<R>, rows: R) {
        for lane in 0..R::LANES {
            let row = rows.lane(lane);
            if row != self.rows.lane(lane) {
                nodes.enter(lane, row as usize, &mut self.around);
            }
        }
        self.rows = rows;
    }
}

/// All factors over temperature.
#[derive(Debug, Clone)]
pub struct TemperatureTable<R> {
    free: Arc<Nodes<R>>,
    held: Arc<Nodes<R>>,
    hold_c: R,
}

impl<R: Real> TemperatureTable<R> {
    /// Works out all factors at a temperature.
    #[inline(always)]
    pub fn at(&self, t_c: R, factors: &mut Factors<R>) {
        let (free, held) = factors.values.split_at_mut(ROOM);
        let place = Place::of(t_c);
        factors.free.at(&self.free, &place, free);
        if R::any(self.hold_c.below(t_c)) {
            let place = Place::of(t_c.least(self.hold_c));
            factors.held.at(&self.held, &place, held);
        } else {
            factors.held.at(&self.held, &place, held);
        }
    }
}

/// Factors at the present temperature.
#[derive(Debug, Clone, Copy)]
pub struct Factors<R> {
    free: Cell<R>,
    held: Cell<R>,
    values: [R; 2 * ROOM],
}

impl<R: Real> Default for Factors<R> {
    fn default() -> Self {
        Factors {
            free: Cell::nowhere(),
            held: Cell::nowhere(),
            values: [R::one(); 2 * ROOM],
        }
    }
}

impl<R: Real> Factors<R> {
    /// The value of a factor.
    #[inline(always)]
    pub fn get(&self, factor: Factor) -> R {
        self.values[factor.0 % (2 * ROOM)] // a power of two: no check is needed
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::maths;
    use crate::chemistry::{carbonate::Carbonate, schmidt, solubility};

    #[test]
    fn interpolation_is_exact_to_2e_8_between_5_and_35_degrees() {
        let mut list = FactorList::<f64>::new(30.0);
        let functions: [fn(f64) -> f64; 4] = [
            |t| maths::exp(0.117 * (t - 20.0)),
            |t| Carbonate::at(t, 0.004).k12,
            |t| solubility::oxygen_saturation_mg_per_l(t, 1.0),
            |t| 1.0 / schmidt::oxygen(t).sqrt(),
        ];
        let places: Vec<Factor> = functions
            .iter()
            .enumerate()
            .map(|(i, f)| list.free(&i.to_string(), *f))
            .collect();
        let table = list.table();
        let mut factors = Factors::default();
        for step in 0..3001 {
            let t = 5.0 + f64::from(step) * 0.01;
            table.at(t, &mut factors);
            for (place, function) in places.iter().zip(functions) {
                let error = factors.get(*place) / function(t) - 1.0;
                assert!(error.abs() < 2e-8, "{t} °C: {error:e}");
            }
        }
    }

    #[test]
    fn a_held_factor_stays_flat_above_30_degrees() {
        let mut list = FactorList::<f64>::new(30.0);
        let factor = list.held("th", theta(1.1, 20.0));
        let table = list.table();
        let mut factors = Factors::default();
        // 2e-8 of a value of 2.6
        let mut at = |t| {
            table.at(t, &mut factors);
            factors.get(factor)
        };
        assert_eq!(at(30.0), at(33.3));
        assert!((at(29.9) - maths::exp(9.9 * maths::ln(1.1))).abs() < 5e-8);
    }
}
