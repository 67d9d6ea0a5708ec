//! What is uncertain of a tank, and the tanks that are as plausible as the one of the central run.
//!
//! ```text
//! spread, rows     which inputs vary in this case, and how       in_use, Kept   which do not, and why
//! draw             member 17 of a seed: one value per row        input          the tank with these values
//! ```
//!
//! All rows are independent of each other. A parameter draws from its own dimension of the Sobol' points
//! (`dimensions`), a path of the scenario from the random stream of its name; so neither more members
//! nor a new input change what an earlier one drew.

mod dimensions;
mod in_use;
pub mod moves;
mod revised;
mod rows;
pub mod shape;
pub mod spread;
mod told_apart;
pub mod unsure;
pub mod waters;

use rand::Rng;

use crate::base::sobol::Shifted;
use crate::base::streams::{share, stream};
use crate::engine::input::ModelInput;
use crate::model::parameters;

use super::case::Case;
use moves::{Move, Place, covers_fit};
use shape::Shape;
use unsure::Written;
use waters::Matter;

/// Least that a soil holds of ammonium per pore water, L/kg.
pub const LEAST_KD_L_PER_KG: f64 = 0.5;

/// What is uncertain of a case.
#[derive(Debug, Clone)]
pub struct Uncertain {
    rows: Vec<Varied>,
    kept: Vec<Kept>,
}

/// One varied input.
#[derive(Debug, Clone)]
pub struct Varied {
    /// Id of a parameter, or dotted path in the scenario.
    pub name: String,
    /// What it is.
    pub words: String,
    /// Unit of its shape.
    pub unit: String,
    /// How it is spread.
    pub shape: Shape,
    /// Where that is known from, or `judgement: why`.
    pub source: String,
    /// The range as it is written; none where the model spreads it.
    pub written: Option<Written>,
    /// What measurements cannot tell it apart from; empty where nothing stands out.
    pub told_apart: String,
    lot: Lot,
    moves: Vec<Move>,
}

/// An input that is not varied.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Kept {
    /// Id of a parameter, or of a sampled input.
    pub name: String,
    /// Why it is not varied.
    pub why: &'static str,
}

/// Where a row draws from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Lot {
    /// A dimension of the Sobol' points.
    Dimension(usize),
    /// The stream named by the path.
    OfPath,
}

impl Lot {
    fn of(id: &str) -> Lot {
        dimensions::of(id).map_or(Lot::OfPath, Lot::Dimension)
    }
}

impl Varied {
    /// The ends of what is written as a range; of the spread of the model its points.
    pub fn ends(&self) -> (f64, f64) {
        let points = (self.shape.low, self.shape.high);
        self.written.as_ref().map_or(points, |range| range.ends)
    }
    /// What it moves in the tank.
    pub fn moves(&self) -> &[Move] {
        &self.moves
    }
}

impl Uncertain {
    /// What is uncertain of a case.
    pub fn of(case: &Case) -> Uncertain {
        let (rows, kept) = rows::of(case);
        Uncertain { rows, kept }
    }
    /// The same where levers may bring in an air stone or mature medium that is not planned. Every other row draws
    /// what it draws without.
    pub fn with_what_levers_bring(case: &Case) -> Uncertain {
        let (rows, kept) = rows::with_what_levers_bring(case);
        Uncertain { rows, kept }
    }
    /// Nothing uncertain: every member is the central run.
    pub fn nothing() -> Uncertain {
        Uncertain {
            rows: Vec::new(),
            kept: Vec::new(),
        }
    }
    /// The same with some of the rows only; the others stay as in the central run.
    #[must_use]
    pub fn only(mut self, is_wanted: impl Fn(&Varied) -> bool) -> Uncertain {
        self.rows.retain(is_wanted);
        self
    }
    /// The varied inputs.
    pub fn rows(&self) -> &[Varied] {
        &self.rows
    }
    /// The inputs that are not varied, and why.
    pub fn kept(&self) -> &[Kept] {
        &self.kept
    }
    /// What a member of a seed draws: one value per row, in the unit of the row.
    pub fn draw(&self, seed: u64, member: usize) -> Vec<f64> {
        let chance = |row: &Varied| match row.lot {
            Lot::Dimension(dimension) => Shifted::of(seed, dimension).at(member as u32),
            Lot::OfPath => share(stream(seed, &row.name, member as u64).next_u32()),
        };
        self.rows
            .iter()
            .map(|row| row.shape.at(chance(row)))
            .collect()
    }
    /// The tank of a member: that of the case with the values drawn. Times and switches stay.
    pub fn input(&self, case: &Case, drawn: &[f64]) -> ModelInput {
        let mut input = case.input.clone();
        let mut pore_water = None;
        let mut waters: Vec<(usize, Matter, f64)> = Vec::new();
        for (row, &value) in self.rows.iter().zip(drawn) {
            for to in &row.moves {
                match to.place {
                    Place::PoreWater => pore_water = Some(value),
                    Place::Water(water, matter) => {
                        waters.push((water, matter, value * to.factor));
                    }
                    _ => to.apply(&mut input, value),
                }
            }
        }
        if let Some(pore_water) = pore_water {
            hold_ammonium(&mut input, pore_water);
        }
        if !waters.is_empty() {
            case.waters.pour(&mut input, &waters);
        }
        if self.moves_covers() {
            covers_fit(&mut input);
        }
        input
    }
    fn moves_covers(&self) -> bool {
        let covers = |to: &Move| matches!(to.place, Place::Cover(_));
        self.rows.iter().any(|row| row.moves.iter().any(covers))
    }
}

/// How strongly the soil holds ammonium, from what stands in its pores.
///
/// ```text
/// Kd = q0/C_p0 − por/rho_soil, not below 0.5 L/kg
/// ```
fn hold_ammonium(input: &mut ModelInput, pore_water_mg_n_per_l: f64) {
    let set = &mut input.parameters;
    let in_pores = set.get("por") / set.get("rho_soil");
    let kd = set.get("q0") / pore_water_mg_n_per_l - in_pores;
    if let Some(number) = parameters::index("Kd") {
        set.put(number, kd.max(LEAST_KD_L_PER_KG));
    }
}
