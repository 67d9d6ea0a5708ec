//! How much room the rows of a study take on the disk.

use std::ops::Range;

use crate::analysis::study::family::Family;
use crate::analysis::study::run::Ran;
use crate::analysis::study::{Row, Study};

use super::results::Results;

/// More than this is only written when it is asked for twice.
pub const MOST_BYTES: u64 = 1_000_000_000;
/// A number with as many digits as are written.
const SIX_DIGITS: f64 = 0.123_456;

/// About how many bytes some rows take: as many as the first of them, with six digits to every milestone.
pub fn bytes(study: &Study, family: &Family, rows: &Range<u64>) -> u64 {
    let number = rows.end.saturating_sub(1);
    let places = study.places(number.min(study.rows().saturating_sub(1)));
    let variant = &family.variants()[family.variant_at(&places)];
    let values = variant.values(&study.inputs, &places, study.method.reach());
    let made_up = Ran {
        values,
        row: Row {
            number,
            places,
            outputs: Some(vec![SIX_DIGITS; study.milestones.len()]),
        },
        failed: None,
    };
    let line = Results::of(study).lines(&[made_up]).len() as u64;
    line.saturating_mul(rows.end - rows.start)
}
