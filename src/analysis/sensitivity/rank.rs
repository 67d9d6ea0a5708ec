//! Partial rank correlation: how steadily the output rises with an input when the others are held, from −1 to 1.
//!
//! Iman & Conover 1979, Technometrics 21: 499. Values are replaced by their ranks (ties share the mean of theirs);
//! of the inverse P of the matrix of correlations of inputs and output,
//!
//! ```text
//! r_j = −P_jy / √(P_jj·P_yy)
//! ```

use crate::base::maths::{exp, ln};

/// Standard deviations on either side that hold 95 of 100 (normal distribution).
const HALF: f64 = 1.96;
/// Ranks scatter a little more than what they stand for (Fieller, Hartley & Pearson 1957, Biometrika 44: 470, from
/// memory).
const OF_RANKS: f64 = 1.06;

/// The interval of a partial rank correlation between so many inputs, 95 of 100 times; none of too few runs.
///
/// ```text
/// z = ½ ln((1 + r)/(1 − r))        z ± 1.96·√(1.06/(n − 3 − (k − 1)))        r = tanh z
/// ```
/// Fisher 1924, Metron 3: 329: each input that is held takes one run off.
pub fn interval(rank: f64, runs: usize, inputs: usize) -> Option<[f64; 2]> {
    let free = runs.checked_sub(inputs + 2).filter(|free| *free > 0)?;
    let half = HALF * (OF_RANKS / free as f64).sqrt();
    let middle = 0.5 * ln((1.0 + rank) / (1.0 - rank));
    let back = |z: f64| 1.0 - 2.0 / (exp(2.0 * z) + 1.0);
    let ends = [back(middle - half), back(middle + half)];
    (middle.is_finite()).then_some(ends)
}

/// The partial rank correlation of each input with the output; none where an input never changes, two go together
/// without fail, or there are fewer runs than inputs.
///
/// # Panics
/// When an input has not as many values as there are outputs.
pub fn partial(inputs: &[Vec<f64>], outputs: &[f64]) -> Option<Vec<f64>> {
    let columns: Vec<Vec<f64>> = inputs
        .iter()
        .map(Vec::as_slice)
        .chain([outputs])
        .map(standing)
        .collect::<Option<_>>()?;
    let product = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
    let correlations = columns
        .iter()
        .map(|a| columns.iter().map(|b| product(a, b)).collect())
        .collect();
    let inverse = inverse(correlations)?;
    let last = inputs.len();
    let of = |j: usize| -inverse[j][last] / (inverse[j][j] * inverse[last][last]).sqrt();
    Some((0..last).map(of).collect())
}

/// Ranks, the mean of those that tie; counted from 1.
pub fn ranks(values: &[f64]) -> Vec<f64> {
    let mut order: Vec<usize> = (0..values.len()).collect();
    order.sort_by(|&a, &b| values[a].total_cmp(&values[b]));
    let mut ranks = vec![0.0; values.len()];
    let mut from = 0;
    for tied in order.chunk_by(|&a, &b| values[a] == values[b]) {
        let mean = (2 * from + tied.len() + 1) as f64 / 2.0;
        tied.iter().for_each(|&at| ranks[at] = mean);
        from += tied.len();
    }
    ranks
}

/// Ranks about their mean, of length 1 together; none where all are equal.
fn standing(values: &[f64]) -> Option<Vec<f64>> {
    let mut ranks = ranks(values);
    let mean = (ranks.len() + 1) as f64 / 2.0;
    ranks.iter_mut().for_each(|rank| *rank -= mean);
    let length = ranks.iter().map(|rank| rank * rank).sum::<f64>().sqrt();
    (length > 0.0).then(|| ranks.into_iter().map(|rank| rank / length).collect())
}

/// Pivots below this are taken for nothing (correlations have a diagonal of 1).
const NOTHING: f64 = 1e-10;

/// The inverse of a matrix, by Gauss and Jordan with the largest pivot; none of a singular one.
fn inverse(mut matrix: Vec<Vec<f64>>) -> Option<Vec<Vec<f64>>> {
    let size = matrix.len();
    for (at, row) in matrix.iter_mut().enumerate() {
        row.extend((0..size).map(|column| f64::from(u8::from(column == at))));
    }
    for at in 0..size {
        let largest = |a: &usize, b: &usize| matrix[*a][at].abs().total_cmp(&matrix[*b][at].abs());
        let pivot = (at..size).max_by(largest)?;
        matrix.swap(at, pivot);
        let by = matrix[at][at];
        if by.abs() < NOTHING {
            return None;
        }
        matrix[at].iter_mut().for_each(|value| *value /= by);
        let own = matrix[at].clone();
        for (_, row) in matrix
            .iter_mut()
            .enumerate()
            .filter(|(other, _)| *other != at)
        {
            let times = row[at];
            row.iter_mut()
                .zip(&own)
                .for_each(|(value, own)| *value -= times * own);
        }
    }
    Some(matrix.into_iter().map(|row| row[size..].to_vec()).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ties_share_the_mean_of_their_ranks() {
        assert_eq!(ranks(&[30.0, 10.0, 20.0, 20.0]), [4.0, 1.0, 2.5, 2.5]);
    }

    #[test]
    fn with_two_inputs_it_is_the_formula_of_three_correlations() {
        // Spearman's correlations by 1 − 6Σd²/(n(n² − 1)): r_1y = 0.9, r_2y = 0.4, r_12 = 0.3
        let inputs = [vec![1.0, 2.0, 3.0, 4.0, 5.0], vec![2.0, 4.0, 3.0, 1.0, 5.0]];
        let outputs = [1.0, 3.0, 2.0, 4.0, 5.0];
        let [first, second, both] = [0.9, 0.4, 0.3_f64];
        let expected = [
            (first - second * both) / ((1.0 - second * second) * (1.0 - both * both)).sqrt(),
            (second - first * both) / ((1.0 - first * first) * (1.0 - both * both)).sqrt(),
        ];
        let found = partial(&inputs, &outputs).unwrap();
        for (found, expected) in found.iter().zip(expected) {
            assert!((found - expected).abs() < 1e-12, "{found} {expected}");
        }
    }

    #[test]
    fn an_interval_is_that_of_fisher() {
        // z(0.5) = 0.549306; 1.96·√(1.06/97) = 0.204891 for 100 runs of one input; tanh of 0.344415 and 0.754197
        let [low, high] = interval(0.5, 100, 1).unwrap();
        assert!((low - 0.331_411).abs() < 1e-5, "{low}");
        assert!((high - 0.637_647).abs() < 1e-5, "{high}");
        assert_eq!(interval(0.5, 10, 8), None);
        assert_eq!(interval(1.0, 100, 1), None);
    }

    #[test]
    fn inputs_that_never_change_or_go_together_have_none() {
        let up: Vec<f64> = (0..9).map(f64::from).collect();
        assert_eq!(partial(&[vec![1.0; 9]], &up), None);
        assert_eq!(partial(&[up.clone(), up.clone()], &up), None);
    }
}
