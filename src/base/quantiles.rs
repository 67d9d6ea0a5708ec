//! Quantiles of a sample.

/// Below which number a share `p` of a sample lies, linear between neighbours; none of an empty sample
/// or one that holds something that is no number.
///
/// ```text
/// sorted x_0 … x_(n−1),  h = (n − 1)·p:      x_⌊h⌋ + (h − ⌊h⌋)·(x_(⌊h⌋+1) − x_⌊h⌋)
/// ```
///
/// Source: Hyndman & Fan 1996, Am. Statistician 50:361, type 7, from memory.
pub fn of_sample(sample: &[f64], p: f64) -> Option<f64> {
    let mut sorted = sample.to_vec();
    sorted.sort_unstable_by(f64::total_cmp);
    of_sorted(&sorted, p)
}

/// The same of a sample in rising order.
pub fn of_sorted(sorted: &[f64], p: f64) -> Option<f64> {
    let last = sorted.len().checked_sub(1)?;
    // in total order something that is no number comes first or last
    if sorted[0].is_nan() || sorted[last].is_nan() {
        return None;
    }
    let h = last as f64 * p.clamp(0.0, 1.0);
    let below = h.floor();
    let (low, high) = (
        sorted[below as usize],
        sorted[(below as usize + 1).min(last)],
    );
    let between = h - below;
    // an end of the run may be infinite ("not within the length"): no 0 · ∞ then
    Some(if between == 0.0 || low == high {
        low
    } else {
        low + between * (high - low)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sample_without_numbers_has_no_quantiles() {
        assert_eq!(of_sample(&[], 0.5), None);
        assert_eq!(of_sample(&[1.0, f64::NAN], 0.5), None);
        assert_eq!(of_sample(&[-f64::NAN, 1.0], 0.5), None);
    }

    #[test]
    fn one_number_is_each_of_its_quantiles_and_infinity_may_be_the_last() {
        assert_eq!(of_sample(&[3.0], 0.05), Some(3.0));
        let days = [f64::INFINITY, 20.0, f64::INFINITY, 30.0];
        assert_eq!(of_sample(&days, 0.0), Some(20.0));
        assert_eq!(of_sample(&days, 0.9), Some(f64::INFINITY));
    }
}
