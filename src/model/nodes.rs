//! Functions of temperature, at nodes 0.25 °C apart from −2 to 48 °C, and the cubic between them.
//!
//! Through four nodes it is off by less than 2e-8 of the value for every factor of the model (tested in
//! `temperature`), far below the error of a step. Outside, the cubic goes on.

use std::fmt;
use std::sync::OnceLock;

use crate::base::elementary;
use crate::base::real::Real;

/// Coldest temperature of the table, °C. The nodes lie beside whole and half degrees, so that water held
/// at one of them does not go to and fro between two cells.
const COLDEST_C: f64 = -2.125;
/// Distance of the nodes, K.
const STEP_C: f64 = 0.25;
/// Number of nodes.
const NODES: usize = 202;
/// Number of the last cell; a cubic needs a node before it and two after.
const LAST_CELL: f64 = (NODES - 4) as f64;
/// Most factors of either kind.
pub const ROOM: usize = 32;

/// A smooth function of °C.
pub type Function<R> = Box<dyn Fn(f64) -> R + Send + Sync>;

/// Values at the nodes. A node is worked out when a tank first comes near it; what it holds does not
/// hang on who came first.
pub struct Nodes<R> {
    functions: Vec<Function<R>>,
    nodes: Vec<OnceLock<Box<[R]>>>,
}

impl<R> fmt::Debug for Nodes<R> {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{} factors", self.functions.len())
    }
}

impl<R: Real> Nodes<R> {
    pub fn of(functions: Vec<Function<R>>) -> Self {
        Nodes {
            functions,
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
pub struct Place<R> {
    rows: R,
    weights: [R; 4],
}

impl<R: Real> Place<R> {
    #[inline(always)]
    pub fn of(t_c: R) -> Self {
        let place = (t_c - R::of(COLDEST_C)) * R::of(1.0 / STEP_C) - R::one();
        let inside = place.most(R::zero()).least(R::of(LAST_CELL + 0.5));
        let rows = elementary::nearest(inside - R::of(0.5));
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
pub struct Cell<R> {
    rows: R,
    around: Around<R>,
}

impl<R: Real> Cell<R> {
    pub fn nowhere() -> Self {
        Cell {
            rows: -R::one(),
            around: [[R::one(); ROOM]; 4],
        }
    }
    /// Works out all columns at a place.
    #[inline(always)]
    pub fn at(&mut self, nodes: &Nodes<R>, place: &Place<R>, out: &mut [R]) {
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
