//! How sure a result is: worked out again and again from points drawn anew (Efron 1979, Ann. Stat. 7: 1).
//!
//! Points come one by one and are not kept, so each replicate takes a point as often as a Poisson variable of mean 1
//! says, which is what drawing with replacement comes to for many points (Hanley & MacGibbon 2006, Comput. Methods
//! Programs Biomed. 83: 57). How often hangs on the seed, the replicate and the point alone.

use rand::Rng;

use crate::base::maths::exp;
use crate::base::quantiles::quantiles;
use crate::base::streams::{share, stream};

/// Name of the streams that weights are drawn from.
const NAME: &str = "bootstrap";
/// The shares of replicates between which a result is said to lie.
const INTERVAL: [f64; 2] = [0.025, 0.975];

/// How often each of so many replicates takes a point.
pub fn times(seed: u64, point: u64, replicates: usize) -> Vec<u8> {
    let mut chance = stream(seed, NAME, point);
    let mut poisson = || {
        let drawn = share(chance.next_u32());
        let (mut count, mut likely) = (0_u8, exp(-1.0));
        let mut below = likely;
        while drawn > below && likely > 0.0 {
            count += 1;
            likely /= f64::from(count);
            below += likely;
        }
        count
    };
    (0..replicates).map(|_| poisson()).collect()
}

/// The interval in which 95 of 100 replicates lie; none where more than a tenth of them, or all, are no numbers. One
/// that took no point at all is none: of four points that happens twice in a hundred.
pub fn interval(mut replicates: Vec<f64>) -> Option<[f64; 2]> {
    let all = replicates.len();
    replicates.retain(|value| value.is_finite());
    let sound = !replicates.is_empty() && 10 * (all - replicates.len()) <= all;
    sound.then(|| quantiles(&mut replicates, &INTERVAL))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn points_are_taken_as_often_as_poisson_has_it() {
        let mut counts = [0_u32; 6];
        for point in 0..10_000 {
            for times in times(3, point, 2) {
                counts[usize::from(times).min(5)] += 1;
            }
        }
        // e⁻¹/k! of 20,000; three standard deviations
        for (k, likely) in [0.367_879, 0.367_879, 0.183_940, 0.061_313]
            .iter()
            .enumerate()
        {
            let expected = 20_000.0 * likely;
            let off = (f64::from(counts[k]) - expected).abs();
            assert!(
                off < 3.0 * f64::sqrt(expected * (1.0 - likely)),
                "{k}: off by {off}"
            );
        }
    }

    #[test]
    fn a_replicate_is_the_same_however_many_there_are() {
        assert_eq!(times(1, 9, 3)[..2], times(1, 9, 2)[..]);
        assert_eq!(interval(vec![]), None);
        assert_eq!(interval(vec![1.0, f64::NAN]), None);
        let thousand: Vec<f64> = (0..=1000).map(f64::from).collect();
        assert_eq!(interval(thousand.clone()), Some([25.0, 975.0]));
        let with_none = |count| [thousand.clone(), vec![f64::NAN; count]].concat();
        assert_eq!(interval(with_none(100)), Some([25.0, 975.0]));
        assert_eq!(interval(with_none(200)), None);
    }
}
