//! The first rows whose inputs lie anywhere, for what needs rows themselves: ranks, distances, pictures.
//!
//! Of points every row; of two clouds the rows A; of trajectories where they begin. Places are kept in 16 bits, which
//! parts as many rows as are kept from each other, outputs in 32.

use crate::analysis::study::input::{Input, Spread};
use crate::analysis::study::method::Method;
use crate::analysis::study::{Row, Study};

/// Most rows that are kept.
const MOST: usize = 32_768;
/// How many places 16 bits tell apart.
const PLACES: f64 = 65_536.0;

/// Rows with the places of their inputs and their milestones.
#[derive(Debug, Clone, PartialEq)]
pub struct Sample {
    inputs: usize,
    milestones: usize,
    places: Vec<u16>,
    outputs: Vec<f32>,
    rows: usize,
}

/// Whether the inputs of a row lie anywhere, whatever those of the row before.
pub fn lies_anywhere(study: &Study, row: &Row) -> bool {
    let begins = || row.number.is_multiple_of(study.rows_per_member() as u64);
    match study.method {
        Method::Points | Method::Latin => true,
        Method::Variance { .. } | Method::Trajectories { .. } => begins(),
        Method::OneAtATime => false,
    }
}

impl Sample {
    /// Nothing yet.
    pub fn new(study: &Study) -> Sample {
        Sample {
            inputs: study.inputs.len(),
            milestones: study.milestones.len(),
            places: Vec::new(),
            outputs: Vec::new(),
            rows: 0,
        }
    }

    /// Keeps a row, if there is room.
    pub fn take(&mut self, places: &[f64], outputs: &[f64]) {
        if self.rows < MOST {
            self.rows += 1;
            // a place of 1 goes with the last
            self.places
                .extend(places.iter().map(|place| (PLACES * place) as u16));
            self.outputs
                .extend(outputs.iter().map(|&output| output as f32));
        }
    }

    /// How many rows there are.
    pub fn rows(&self) -> usize {
        self.rows
    }

    /// The first so many of them.
    pub fn first(&self, rows: usize) -> Sample {
        let rows = rows.min(self.rows);
        Sample {
            places: self.places[..rows * self.inputs].to_vec(),
            outputs: self.outputs[..rows * self.milestones].to_vec(),
            rows,
            ..*self
        }
    }

    /// Where an input stands, row by row.
    pub fn places(&self, input: usize) -> impl Iterator<Item = f64> {
        let of_input = self.places.iter().skip(input).step_by(self.inputs);
        of_input.map(|&place| (f64::from(place) + 0.5) / PLACES)
    }

    /// Something that rises with the input, row by row: its place, or the number of its setting.
    pub fn levels(&self, input: &Input, at: usize) -> Vec<f64> {
        match &input.spread {
            Spread::Settings(_) => self.places(at).map(|place| input.at(place)).collect(),
            Spread::Shape(_) | Spread::Even { .. } => self.places(at).collect(),
        }
    }

    /// A milestone, row by row.
    pub fn outputs(&self, milestone: usize) -> Vec<f64> {
        let outputs = self.outputs.iter().skip(milestone).step_by(self.milestones);
        outputs.map(|&output| f64::from(output)).collect()
    }
}
