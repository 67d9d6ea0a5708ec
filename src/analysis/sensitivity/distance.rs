//! How far apart two samples lie: the largest difference between their shares below any value (Kolmogorov 1933,
//! Smirnov 1948).

/// The distance, from 0 (the same shares) to 1 (they do not overlap). Both must be in order; 0 where one is empty.
pub fn distance(first: &[f64], second: &[f64]) -> f64 {
    if first.is_empty() || second.is_empty() {
        return 0.0;
    }
    let (mut i, mut j, mut most) = (0, 0, 0.0_f64);
    while i < first.len() && j < second.len() {
        let value = first[i].min(second[j]);
        i += first[i..].iter().take_while(|x| **x <= value).count();
        j += second[j..].iter().take_while(|x| **x <= value).count();
        let apart = i as f64 / first.len() as f64 - j as f64 / second.len() as f64;
        most = most.max(apart.abs());
    }
    most
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn distances_are_those_worked_out_by_hand() {
        let one = [1.0, 2.0, 3.0, 4.0];
        assert_eq!(distance(&one, &one), 0.0);
        assert_eq!(distance(&one, &[5.0, 6.0]), 1.0);
        // up to 4: all of one and 1 of 4 of the other
        assert_eq!(distance(&one, &[2.0, 5.0, 5.0, 6.0]), 0.75);
        // ties count on both sides at once
        assert_eq!(distance(&[1.0, 1.0, 2.0, 2.0], &[1.0, 2.0, 2.0, 2.0]), 0.25);
        assert_eq!(distance(&[], &one), 0.0);
    }
}
