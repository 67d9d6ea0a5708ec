//! Shares of the variance: what each input explains alone, with all others, and by twos.
//!
//! ```text
//! first   S_j  = mean( B·(AB_j − A) ) / V                        Saltelli et al. 2010
//! total   T_j  = mean( (A − AB_j)² ) / 2V                        Jansen 1999, Comput. Phys. Commun. 117: 35
//! second  S_jk = mean( BA_j·AB_k − A·B ) / V − S_j − S_k         Saltelli 2002, Comput. Phys. Commun. 145: 280
//! V            = variance of A and B together
//! ```
//!
//! Outputs are counted from their mean over all rows, which takes most of the error out of the first. Everything is
//! made of sums, point by point.

use super::saltelli::Design;

/// Sums over the points of a design.
#[derive(Debug, Clone)]
pub struct VarianceSums {
    design: Design,
    /// The first output, from which the others are counted, so that the digits of small differences are kept.
    origin: Option<f64>,
    /// How many points.
    points: f64,
    /// All rows added up.
    all: f64,
    /// Sums of A, B, A², B² and A·B.
    a: f64,
    b: f64,
    squares: f64,
    product: f64,
    /// Of each input: AB, B·AB and (A − AB)².
    alone: Vec<Alone>,
    /// Of each input: BA.
    other_way: Vec<f64>,
    /// Of each pair j < k: BA_j·AB_k.
    pairs: Vec<f64>,
}

#[derive(Debug, Clone, Copy, Default)]
struct Alone {
    with: f64,
    b_with: f64,
    squares: f64,
}

/// What an input explains.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shares {
    /// Alone.
    pub first: f64,
    /// With all others.
    pub total: f64,
}

impl VarianceSums {
    /// Nothing yet.
    pub fn new(design: Design) -> Self {
        let inputs = design.inputs;
        let [ways, pairs] = match design.second_order {
            true => [inputs, inputs * (inputs - 1) / 2],
            false => [0, 0],
        };
        VarianceSums {
            design,
            origin: None,
            points: 0.0,
            all: 0.0,
            a: 0.0,
            b: 0.0,
            squares: 0.0,
            product: 0.0,
            alone: vec![Alone::default(); inputs],
            other_way: vec![0.0; ways],
            pairs: vec![0.0; pairs],
        }
    }

    /// Takes in the outputs of one point, row by row, so many times (1 but when drawing again).
    ///
    /// # Panics
    /// When there are not as many outputs as the design has rows.
    pub fn take(&mut self, outputs: &[f64], times: f64) {
        assert_eq!(outputs.len(), self.design.rows(), "a row each");
        let origin = *self.origin.get_or_insert(outputs[0]);
        let from_origin = |output: &f64| output - origin;
        let inputs = self.design.inputs;
        let (a, b) = (
            from_origin(&outputs[0]),
            from_origin(&outputs[outputs.len() - 1]),
        );
        self.points += times;
        self.all += times * outputs.iter().map(from_origin).sum::<f64>();
        self.a += times * a;
        self.b += times * b;
        self.squares += times * (a * a + b * b);
        self.product += times * a * b;
        let a_with = &outputs[1..=inputs];
        for (sums, with) in self.alone.iter_mut().zip(a_with.iter().map(from_origin)) {
            sums.with += times * with;
            sums.b_with += times * b * with;
            sums.squares += times * (a - with) * (a - with);
        }
        if self.design.second_order {
            self.take_pairs(a_with, &outputs[1 + inputs..=2 * inputs], (origin, times));
        }
    }

    fn take_pairs(&mut self, a_with: &[f64], b_with: &[f64], (origin, times): (f64, f64)) {
        let mut pairs = self.pairs.iter_mut();
        for (j, ba) in b_with.iter().enumerate() {
            self.other_way[j] += times * (ba - origin);
            for ab in &a_with[j + 1..] {
                *pairs.next().expect("one per pair") += times * (ba - origin) * (ab - origin);
            }
        }
    }

    /// The variance of the outputs.
    pub fn variance(&self) -> f64 {
        let mean = (self.a + self.b) / (2.0 * self.points);
        self.squares / (2.0 * self.points) - mean * mean
    }

    /// What each input explains; not a number where the output never changes.
    pub fn shares(&self) -> Vec<Shares> {
        let (n, variance, mean) = (self.points, self.variance(), self.mean());
        let of = |sums: &Alone| Shares {
            // the mean of (B − m)·(AB − A)
            first: ((sums.b_with - self.product) - mean * (sums.with - self.a)) / n / variance,
            total: sums.squares / (2.0 * n) / variance,
        };
        self.alone.iter().map(of).collect()
    }

    /// What each two inputs explain beyond what they explain alone, as (j, k, share) with j < k; empty where it was
    /// not asked for.
    pub fn second_order(&self) -> Vec<(usize, usize, f64)> {
        let (n, variance, mean) = (self.points, self.variance(), self.mean());
        let first: Vec<f64> = self.shares().iter().map(|shares| shares.first).collect();
        let of = |(j, k, sum): (usize, usize, f64)| {
            // the mean of (BA − m)·(AB − m) − (A − m)·(B − m)
            let turned = self.other_way[j] + self.alone[k].with - self.a - self.b;
            let both = (sum - self.product - mean * turned) / n / variance;
            (j, k, both - first[j] - first[k])
        };
        let inputs = self.design.inputs;
        let pairs = (0..inputs).flat_map(|j| (j + 1..inputs).map(move |k| (j, k)));
        let sums = pairs.zip(&self.pairs);
        sums.map(|((j, k), sum)| of((j, k, *sum))).collect()
    }

    /// The mean of all rows, from the origin.
    fn mean(&self) -> f64 {
        self.all / (self.points * self.design.rows() as f64)
    }
}
