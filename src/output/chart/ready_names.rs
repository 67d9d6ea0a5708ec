//! Where the names under the squares of the ready chart stand.

use super::sheet::LEFT;

/// Right edge that names may reach.
const RIGHT_EDGE: f64 = 1136.0;
/// Room between two names, pixels.
const BETWEEN: f64 = 24.0;

/// Where names of these widths stand, with their row: at their starts, moved right off their neighbours and
/// back from the edge; in two rows from the left where they are too wide together.
pub fn places(starts: &[f64], widths: &[f64]) -> Vec<(f64, usize)> {
    let together: f64 = widths.iter().map(|width| width + BETWEEN).sum();
    if together > RIGHT_EDGE - LEFT {
        let half = widths.len().div_ceil(2);
        let mut x = LEFT;
        let each = widths.iter().enumerate().map(|(n, width)| {
            if n == half {
                x = LEFT;
            }
            let place = x;
            x += width + BETWEEN;
            (place, usize::from(n >= half))
        });
        return each.collect();
    }
    let mut xs = starts.to_vec();
    for n in 1..xs.len() {
        xs[n] = xs[n].max(xs[n - 1] + widths[n - 1] + BETWEEN);
    }
    let mut edge = RIGHT_EDGE;
    for (x, width) in xs.iter_mut().zip(widths).rev() {
        *x = x.min(edge - width);
        edge = *x - BETWEEN;
    }
    xs.into_iter().map(|x| (x, 0)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_stand_at_their_squares_and_move_only_when_they_must() {
        let placed = places(&[64.0, 400.0, 420.0], &[100.0, 100.0, 100.0]);
        assert_eq!(placed, [(64.0, 0), (400.0, 0), (524.0, 0)]);
        let crowded = places(&[64.0, 1000.0, 1010.0], &[100.0, 100.0, 100.0]);
        assert_eq!(crowded, [(64.0, 0), (912.0, 0), (1036.0, 0)]);
    }
}
