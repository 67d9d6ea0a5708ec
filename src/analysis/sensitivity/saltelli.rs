//! The design for shares of variance: two clouds of points, A and B, and A with one input at a time from B.
//!
//! Saltelli et al. 2010, Comput. Phys. Commun. 181: 259. The rows of a point, in this order:
//!
//! ```text
//! A,  AB_1 … AB_k,  (BA_1 … BA_k where second order is asked for),  B
//! AB_j = A but for input j, which is that of B            BA_j = B but for input j, which is that of A
//! ```
//!
//! A whole block of inputs may go from one cloud to the other as one (Saltelli et al. 2008, *Global Sensitivity
//! Analysis. The Primer*, 1.2.15): its shares are then those of the block, whatever its inputs do among themselves.
//! A design counts blocks; each input says which one it belongs to.

/// A design for so many inputs, or blocks of them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Design {
    /// How many inputs, or blocks of inputs.
    pub inputs: usize,
    /// Whether pairs of them are asked for too.
    pub second_order: bool,
}

/// What stands in one row of a point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Row {
    /// The first cloud.
    A,
    /// The first cloud with one input, or block, of the second.
    AWith(usize),
    /// The second cloud with one input, or block, of the first.
    BWith(usize),
    /// The second cloud.
    B,
}

impl Design {
    /// How many coordinates a point has: those of A, then those of B.
    pub fn coordinates(self) -> usize {
        2 * self.inputs
    }

    /// How many rows, which are runs, come of a point.
    pub fn rows(self) -> usize {
        2 + self.inputs * if self.second_order { 2 } else { 1 }
    }

    /// What stands in a row.
    ///
    /// # Panics
    /// When there is no such row.
    pub fn row(self, place: usize) -> Row {
        let inputs = self.inputs;
        match place {
            0 => Row::A,
            last if last + 1 == self.rows() => Row::B,
            one if one <= inputs => Row::AWith(one - 1),
            one if one < self.rows() => Row::BWith(one - 1 - inputs),
            _ => panic!("a point has {} rows", self.rows()),
        }
    }

    /// One coordinate of a row, of the coordinates of its point.
    pub fn coordinate(self, row: Row, input: usize, point: impl Fn(usize) -> f64) -> f64 {
        point(input + if row.is_of_b(input) { self.inputs } else { 0 })
    }
}

impl Row {
    /// Whether an input, or block, is that of the second cloud here.
    pub fn is_of_b(self, input: usize) -> bool {
        match self {
            Row::A => false,
            Row::AWith(other) => other == input,
            Row::BWith(other) => other != input,
            Row::B => true,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_rows_of_a_point_are_those_of_the_paper() {
        let design = Design {
            inputs: 2,
            second_order: true,
        };
        let point = [1.0, 2.0, 10.0, 20.0];
        let rows: Vec<[f64; 2]> = (0..design.rows())
            .map(|place| {
                [0, 1].map(|input| design.coordinate(design.row(place), input, |at| point[at]))
            })
            .collect();
        let expected = [
            [1.0, 2.0],
            [10.0, 2.0],
            [1.0, 20.0],
            [1.0, 20.0],
            [10.0, 2.0],
            [10.0, 20.0],
        ];
        assert_eq!(rows, expected);
    }
}
