//! Ranges that were narrowed once, because with the declared ones fewer than half of all plausible tanks
//! showed what people report of a start-up (`tests/prior_predictive.rs` prints it).
//!
//! The declared ends are those of single studies and strains. Taken for all inputs at once and
//! independently they make most tanks slower than any reported: growth, affinity and pH limits are fitted
//! together, so that the slow end of one goes with the fast end of another.

/// A narrowed range.
struct Revised {
    id: &'static str,
    low: f64,
    high: f64,
    why: &'static str,
}

const REVISED: [Revised; 8] = [
    Revised {
        id: "k_ex",
        low: 0.022,
        high: 0.1,
        why: "narrowed from 0.015 to 0.15: ammonia of the first day would miss its band in about half of all tanks",
    },
    Revised {
        id: "mu_AOB",
        low: 0.7,
        high: 1.1,
        why: "narrowed from 0.5: first nitrite would come after day 16 in most tanks",
    },
    Revised {
        id: "K_NH",
        low: 0.2,
        high: 0.8,
        why: "narrowed from 0.14 to 1: first nitrite would come after day 5 in most seeded tanks",
    },
    Revised {
        id: "pK1_A",
        low: 6.0,
        high: 6.6,
        why: "narrowed from 5.8 to 6.8: first nitrite would come after day 16 in most tanks",
    },
    Revised {
        id: "K_C",
        low: 0.04,
        high: 0.25,
        why: "narrowed from 0.02 to 0.5: most seeded tanks would be clean after day 21 only",
    },
    Revised {
        id: "mu_NOB",
        low: 0.5,
        high: 1.1,
        why: "narrowed from 0.4 to what spans measured start-ups: most seeded tanks would be clean after day 21 only",
    },
    Revised {
        id: "pK1_N",
        low: 5.5,
        high: 6.2,
        why: "narrowed from 5.2 to 6.5: most seeded tanks would be clean after day 21 only",
    },
    Revised {
        id: "mu_K",
        low: 0.3,
        high: 0.5,
        why: "narrowed from 0.2: most seeded tanks would be clean after day 21 only",
    },
];

/// The narrowed 5 % and 95 % point of a parameter.
pub fn points(id: &str) -> Option<(f64, f64)> {
    let revised = REVISED.iter().find(|revised| revised.id == id)?;
    Some((revised.low, revised.high))
}

/// Why its range was narrowed.
pub fn why(id: &str) -> Option<&'static str> {
    let revised = REVISED.iter().find(|revised| revised.id == id)?;
    Some(revised.why)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::parameters;

    #[test]
    fn narrowed_ranges_lie_within_the_declared_ones_about_the_default() {
        for revised in &REVISED {
            let spec = parameters::spec(revised.id).unwrap();
            assert!(spec.low <= revised.low && revised.low < spec.default);
            assert!(spec.default < revised.high && revised.high <= spec.high);
        }
    }
}
