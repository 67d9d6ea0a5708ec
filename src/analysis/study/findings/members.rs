//! Rows put together to members: what belongs to one point or one trajectory.

use crate::analysis::study::{Row, Study};

/// Gathers the rows of the member that is under way.
#[derive(Debug, Clone)]
pub struct Members {
    per_member: u64,
    rows: Vec<Row>,
}

/// All rows of one member.
#[derive(Debug, Clone)]
pub struct Member {
    /// Its number, from 0.
    pub number: u64,
    rows: Vec<Row>,
}

impl Members {
    /// Nothing yet.
    pub fn of(study: &Study) -> Members {
        Members {
            per_member: study.rows_per_member() as u64,
            rows: Vec::new(),
        }
    }

    /// Takes in a row; gives the member that is whole with it. A member whose beginning is missing, as at the start
    /// of a slice, is passed over.
    pub fn take(&mut self, row: &Row) -> Option<Member> {
        if self.per_member == 0 {
            return None;
        }
        let (number, place) = (row.number / self.per_member, row.number % self.per_member);
        if place == 0 {
            self.rows.clear();
        }
        if self.rows.len() as u64 != place {
            self.rows.clear();
            return None;
        }
        self.rows.push(row.clone());
        (place + 1 == self.per_member).then(|| Member {
            number,
            rows: std::mem::take(&mut self.rows),
        })
    }
}

impl Member {
    /// Whether none of its rows failed.
    pub fn is_sound(&self) -> bool {
        self.rows.iter().all(|row| row.outputs.is_some())
    }

    /// One milestone, row by row; of a sound member.
    pub fn outputs(&self, milestone: usize) -> Vec<f64> {
        let outputs = self.rows.iter().filter_map(|row| row.outputs.as_ref());
        outputs.map(|outputs| outputs[milestone]).collect()
    }

    /// The same of a member that need not be sound: none where the row failed.
    pub fn told(&self, milestone: usize) -> impl Iterator<Item = Option<f64>> {
        let outputs = self.rows.iter().map(|row| row.outputs.as_ref());
        outputs.map(move |outputs| outputs.map(|outputs| outputs[milestone]))
    }

    /// Where the inputs stood, row by row.
    pub fn places(&self) -> impl Iterator<Item = &[f64]> {
        self.rows.iter().map(|row| row.places.as_slice())
    }
}
