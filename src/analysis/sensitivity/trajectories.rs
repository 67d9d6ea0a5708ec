//! Morris' design: from a random corner of a grid of levels, one step along every input, in random order.
//!
//! Morris 1991, Technometrics 33: 161. With p levels (an even number) a step is Δ = p/(2(p − 1)) of the range, so that
//! every level is met equally often.

use rand::RngExt;
use rand::seq::SliceRandom;

use crate::base::streams::stream;

/// Name of the streams that trajectories are drawn from.
const NAME: &str = "trajectory";

/// A design of trajectories over so many inputs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Trajectories {
    /// How many inputs.
    pub inputs: usize,
    /// How many levels, an even number.
    pub levels: usize,
    /// Where chance begins.
    pub seed: u64,
}

/// One trajectory: its points, as levels, and which input was stepped between each two.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Trajectory {
    /// Points, each with a level per input.
    pub points: Vec<Vec<usize>>,
    /// The input that differs between a point and the next.
    pub stepped: Vec<usize>,
}

impl Trajectories {
    /// How many levels a step goes.
    pub fn step(self) -> usize {
        self.levels / 2
    }

    /// Where a level lies, from 0 to 1.
    pub fn coordinate(self, level: usize) -> f64 {
        level as f64 / (self.levels - 1) as f64
    }

    /// A trajectory by its number.
    pub fn draw(self, number: u64) -> Trajectory {
        let mut chance = stream(self.seed, NAME, number);
        let mut point: Vec<usize> = (0..self.inputs)
            .map(|_| chance.random_range(0..self.levels))
            .collect();
        let mut order: Vec<usize> = (0..self.inputs).collect();
        order.shuffle(&mut chance);
        let mut points = vec![point.clone()];
        for &input in &order {
            // up from the lower half, down from the upper one
            point[input] = (point[input] + self.step()) % self.levels;
            points.push(point.clone());
        }
        Trajectory {
            points,
            stepped: order,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_input_is_stepped_once_by_half_the_levels() {
        let design = Trajectories {
            inputs: 5,
            levels: 4,
            seed: 1,
        };
        for number in 0..50 {
            let drawn = design.draw(number);
            let mut stepped = drawn.stepped.clone();
            stepped.sort_unstable();
            assert_eq!(stepped, [0, 1, 2, 3, 4]);
            for (two, &input) in drawn.points.windows(2).zip(&drawn.stepped) {
                for (at, (before, after)) in two[0].iter().zip(&two[1]).enumerate() {
                    let by = before.abs_diff(*after);
                    assert_eq!(by, if at == input { 2 } else { 0 });
                }
            }
        }
        assert_ne!(design.draw(0), design.draw(1));
    }
}
