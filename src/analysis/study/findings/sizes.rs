//! How sure a study is as it grows: the widest interval at so many members.

use super::index::Index;

/// An interval narrower than this is sure enough; of elementary effects as a share of the largest.
pub const DONE_BELOW: f64 = 0.05;
/// The least number of members that is told.
const FROM: u64 = 16;

/// How sure a study was at a number of members.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Size {
    /// How many members, those left out too.
    pub members: u64,
    /// How wide the widest interval of 95 of 100 was.
    pub widest: f64,
    /// What it was about.
    pub factor: usize,
}

/// Whether a number of members is told: powers of two.
pub fn is_told_at(members: u64) -> bool {
    members >= FROM && members.is_power_of_two()
}

/// All numbers of members that are told, up to one that is told in any case.
pub fn told_up_to(last: u64) -> Vec<u64> {
    let mut all: Vec<u64> = (0..u64::BITS).map(|power| 1 << power).collect();
    all.retain(|&members| is_told_at(members) && members < last);
    all.push(last);
    all
}

/// The widest of some indices against a scale; none where there is none, or one has no interval yet.
pub fn widest<'a>(
    indices: impl IntoIterator<Item = &'a Index>,
    scale: f64,
    members: u64,
) -> Option<Size> {
    let mut widest: Option<Size> = None;
    for index in indices {
        index.interval?;
        let size = Size {
            members,
            widest: index.width() / scale,
            factor: index.factor,
        };
        if widest.is_none_or(|so_far| so_far.widest < size.widest) {
            widest = Some(size);
        }
    }
    widest.filter(|size| size.widest.is_finite())
}

impl Size {
    /// Whether it was sure enough.
    pub fn is_done(&self) -> bool {
        self.widest < DONE_BELOW
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes_are_told_at_powers_of_two_and_at_the_last() {
        assert_eq!(told_up_to(100), [16, 32, 64, 100]);
        assert_eq!(told_up_to(32), [16, 32]);
        assert_eq!(told_up_to(5), [5]);
    }
}
