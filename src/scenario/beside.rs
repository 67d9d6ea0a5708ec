//! What a case holds beside what is run: how it is judged, tested and paid for.

use crate::analysis::cost::Prices;
use crate::analysis::kit::TestKit;
use crate::analysis::limits::Limits;
use crate::analysis::uncertain;

use super::reader::Reader;
use super::sections::blend::Blend;
use super::sections::water::Waters;
use super::sections::{prices, test_kit};

/// What a case holds beside what is run: how it is judged, tested and paid for.
pub struct Beside {
    pub(super) limits: Limits,
    pub(super) prices: Prices,
    pub(super) kit: TestKit,
    pub(super) soil_bag_l: f64,
    pub(super) waters: uncertain::waters::Waters,
}

impl Beside {
    /// Reads it, with what is known of the tank and its waters.
    pub fn read(
        file: &Reader<'_>,
        waters: &Waters,
        (fill, refill): (Blend, Blend),
        limits: Limits,
        soil_bag_l: f64,
        kitchen: uncertain::waters::Waters,
    ) -> Beside {
        Beside {
            limits,
            prices: Prices {
                by_name: prices::read(file, waters),
                treated: [fill.dechlorinated, refill.dechlorinated],
                fill: fill.parts,
                refill: refill.parts,
            },
            kit: test_kit::read(file),
            soil_bag_l,
            waters: kitchen,
        }
    }
}
