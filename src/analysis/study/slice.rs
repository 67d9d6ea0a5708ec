//! A slice of a study: its rows in a stretch, so that many machines share it.

use std::ops::Range;

/// Slice `number` of `of`, counted from 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Slice {
    /// Which one, from 1.
    pub number: u64,
    /// How many there are.
    pub of: u64,
}

impl Slice {
    /// The whole study.
    pub const WHOLE: Slice = Slice { number: 1, of: 1 };

    /// A slice, if there is such a one.
    pub fn new(number: u64, of: u64) -> Option<Slice> {
        (1..=of).contains(&number).then_some(Slice { number, of })
    }

    /// Whether it is the whole study.
    pub fn is_whole(self) -> bool {
        self.of == 1
    }

    /// Its rows. All slices together are all rows, each once, in order; none has two rows more than another.
    ///
    /// ```text
    /// from ⌊rows·(number − 1)/of⌋ up to ⌊rows·number/of⌋
    /// ```
    pub fn rows(self, rows: u64) -> Range<u64> {
        let end = |number: u64| {
            let share = u128::from(rows) * u128::from(number) / u128::from(self.of);
            u64::try_from(share).unwrap_or(rows)
        };
        end(self.number - 1)..end(self.number)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn slices_are_all_rows_each_once() {
        for (rows, of) in [(10, 3), (7, 7), (5, 8), (1_000_000, 17)] {
            let slices = (1..=of).map(|number| Slice { number, of }.rows(rows));
            let mut next = 0;
            for slice in slices {
                assert_eq!(slice.start, next);
                assert!(slice.end - slice.start <= rows / of + 1);
                next = slice.end;
            }
            assert_eq!(next, rows);
        }
    }

    #[test]
    fn there_is_no_slice_beyond_the_last() {
        assert!(Slice::new(0, 3).is_none() && Slice::new(4, 3).is_none());
        assert!(Slice::new(3, 3).is_some_and(|slice| !slice.is_whole()));
    }
}
