//! Quantiles of a sample.

/// The quantile of a sample that is in order, straight between its two neighbours.
///
/// ```text
/// h = (n − 1)·p        q = x[⌊h⌋] + (h − ⌊h⌋)·(x[⌊h⌋ + 1] − x[⌊h⌋])
/// ```
/// Type 7 of Hyndman & Fan 1996 (Am. Stat. 50: 361), the usual one of statistics programs. `p` from 0 to 1.
/// Where a sample counts as endless above its largest (values past the end of a run), infinities may stand
/// at its end: a quantile that touches one is infinite.
///
/// # Panics
/// When the sample is empty.
pub fn quantile(ordered: &[f64], p: f64) -> f64 {
    let h = (ordered.len() - 1) as f64 * p;
    let below = h.floor();
    let share = h - below;
    let low = ordered[below as usize];
    match ordered.get(below as usize + 1) {
        Some(high) if share > 0.0 && *high != low => low + share * (high - low),
        _ => low,
    }
}

/// Several quantiles of a sample in any order, which is put in order.
pub fn quantiles<const N: usize>(sample: &mut [f64], ps: &[f64; N]) -> [f64; N] {
    sample.sort_unstable_by(f64::total_cmp);
    ps.map(|p| quantile(sample, p))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quantiles_of_type_7_are_those_of_the_textbook() {
        // Hyndman & Fan's definition 7 by hand: n = 5, p = 0.1 gives h = 0.4
        let mut sample = [15.0, 20.0, 35.0, 40.0, 50.0];
        assert_eq!(
            quantiles(&mut sample, &[0.0, 0.1, 0.25, 0.4, 1.0]),
            [15.0, 17.0, 20.0, 29.0, 50.0]
        );
        assert_eq!(quantiles(&mut [3.0, 1.0], &[0.5]), [2.0]);
        assert_eq!(quantile(&[7.0], 0.95), 7.0);
    }

    #[test]
    fn what_lies_past_the_end_stays_past_the_end() {
        let sample = [1.0, 2.0, f64::INFINITY, f64::INFINITY];
        assert_eq!(quantile(&sample, 0.25), 1.75);
        assert_eq!(quantile(&sample, 0.5), f64::INFINITY);
        assert_eq!(quantile(&sample, 1.0), f64::INFINITY);
    }

    #[test]
    fn equal_values_have_exactly_their_value() {
        let third = 1.0 / 3.0;
        assert_eq!(quantiles(&mut [third; 7], &[0.05, 0.5, 0.95]), [third; 3]);
    }
}
