//! Where a value stands against its limit: inside, close, outside. The one place that says what close is.

/// Nearer to a limit than this share of it is close: two people who read one water on one card differ by as
/// much (see [`READING_NOISE`](super::ensemble::next_test::READING_NOISE)), so that a value so near could as
/// well be read on the other side (a judgement, no source).
pub const CLOSE_FRAC: f64 = 0.2;

/// Where a value stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stand {
    /// Clear of the limit.
    Inside,
    /// Inside, by less than [`CLOSE_FRAC`] of the limit.
    Close,
    /// Beyond the limit.
    Outside,
}

impl Stand {
    /// Of a value that keeps its limit or not, whichever side of it is harm.
    pub fn of(keeps: bool, value: f64, limit: f64) -> Stand {
        match (keeps, margin(value, limit) < CLOSE_FRAC * limit.abs()) {
            (false, _) => Stand::Outside,
            (true, true) => Stand::Close,
            (true, false) => Stand::Inside,
        }
    }
    /// Of a value that must not pass an upper limit.
    pub fn under(value: f64, limit: f64) -> Stand {
        Stand::of(value <= limit, value, limit)
    }
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Stand::Inside => "inside",
            Stand::Close => "close",
            Stand::Outside => "outside",
        }
    }
}

/// How far a value is from its limit, on either side.
pub fn margin(value: f64, limit: f64) -> f64 {
    (value - limit).abs()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_value_is_close_within_a_fifth_of_the_limit_on_the_side_that_keeps_it() {
        let stands = [0.0, 0.15, 0.17, 0.2, 0.21].map(|value| Stand::under(value, 0.2));
        use Stand::{Close, Inside, Outside};
        assert_eq!(stands, [Inside, Inside, Close, Close, Outside]);
        // oxygen is kept above its limit
        assert_eq!(Stand::of(true, 6.5, 5.0), Inside);
        assert_eq!(Stand::of(true, 5.4, 5.0), Close);
        assert_eq!(Stand::of(false, 4.9, 5.0), Outside);
    }
}
