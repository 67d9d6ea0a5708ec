//! Partial rank correlation: how steadily the output rises with an input when the others are held, from −1 to 1.
//!
//! Iman & Conover 1979, Technometrics 21: 499. Values are replaced by their ranks (ties share the mean of theirs);
//! of the inverse P of the matrix of correlations of inputs and output,
//!
//! ```text
//! r_j = −P_jy / √(P_jj·P_yy)
//! ```

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
    fn inputs_that_never_change_or_go_together_have_none() {
        let up: Vec<f64> = (0..9).map(f64::from).collect();
        assert_eq!(partial(&[vec![1.0; 9]], &up), None);
        assert_eq!(partial(&[up.clone(), up.clone()], &up), None);
    }
}
