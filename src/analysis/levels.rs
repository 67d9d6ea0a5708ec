//! Words for how near to harm a value is. They only word a margin; limits decide.
//!
//! The steps are those of fish keeping at large: free ammonia 0.02 safe (state hatchery advice),
//! carbon dioxide under 20 (clinical fish text), oxygen above 6 (advice of several bodies) and
//! distress from 4 down (aquaculture notes),
//! temperature 2 °C (public aquarium guideline); the others are common practice, no source.

use crate::engine::result::Reading;

use super::criteria;

/// How near to harm a value is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    /// Nothing to see to.
    Comfortable,
    /// Hardy fish bear it; see to it.
    Watch,
    /// Fish come to harm.
    Harmful,
}

impl Level {
    /// The word printed beside a value.
    pub fn word(self) -> &'static str {
        match self {
            Level::Comfortable => "comfortable",
            Level::Watch => "to be watched",
            Level::Harmful => "harmful",
        }
    }
    fn rising(value: f64, watch: f64, harmful: f64) -> Level {
        if value < watch {
            Level::Comfortable
        } else if value < harmful {
            Level::Watch
        } else {
            Level::Harmful
        }
    }
}

/// Free ammonia, mg N/L.
pub fn free_ammonia(mg_n_per_l: f64) -> Level {
    Level::rising(mg_n_per_l, 0.02, 0.1)
}
/// Nitrite with at least 20 mg/L of chloride, mg N/L.
pub fn nitrite(mg_n_per_l: f64) -> Level {
    Level::rising(mg_n_per_l, 0.1, 1.0)
}
/// Carbon dioxide, mg/L.
pub fn co2(mg_per_l: f64) -> Level {
    Level::rising(mg_per_l, 20.0, 40.0)
}
/// Oxygen, mg/L.
pub fn oxygen(mg_per_l: f64) -> Level {
    Level::rising(-mg_per_l, -6.0, -4.0)
}
/// Change of temperature at a water change, °C.
pub fn temperature_jump(kelvin: f64) -> Level {
    Level::rising(kelvin, 2.0, 5.0)
}
/// Nitrate, mg N/L.
pub fn nitrate(mg_n_per_l: f64) -> Level {
    Level::rising(mg_n_per_l, 20.0, 100.0)
}
/// Total ammonia against the criteria for its pH and temperature (EPA 2013, without salmonids).
pub fn total_ammonia(r: &Reading) -> Level {
    Level::rising(
        r.tan_mg_n_per_l,
        criteria::chronic_mg_n_per_l(r.ph, r.temperature_c),
        criteria::acute_mg_n_per_l(r.ph, r.temperature_c, false),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn less_oxygen_is_worse_and_more_of_anything_else() {
        assert_eq!(oxygen(8.0), Level::Comfortable);
        assert_eq!(oxygen(5.0), Level::Watch);
        assert_eq!(oxygen(2.0), Level::Harmful);
        assert_eq!(co2(28.0), Level::Watch);
        assert!(nitrite(0.05) < nitrite(2.0));
    }
}
