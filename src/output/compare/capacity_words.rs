//! What the microbes of two plans could oxidise, in sentences made of their central runs.

use crate::analysis::compare::capacity::{Capacity, Seeded};
use crate::output::text::words::short;

/// Capacities are told when the smaller is less than this share of the larger, or when they reach what comes in on
/// different days (judgement).
const ALIKE_FRAC: f64 = 0.9;
/// A plan that reaches what comes in so many days before the other, or alone, is decided by that (judgement).
const DECIDING_DAYS: u32 = 3;

/// What mature medium brought; none where both plans are alike.
pub fn seeds([here, there]: &[Capacity; 2]) -> Option<String> {
    seeded([here.seeded, there.seeded])
}

fn seeded(both: [Option<Seeded>; 2]) -> Option<String> {
    let amount = |seeded: Seeded| format!("{} mg N a day", short(seeded.brought_mg_n_per_day));
    match both {
        [None, None] => None,
        [Some(here), Some(there)] if here == there => None,
        [Some(here), None] => Some(format!(
            "Mature medium put in on day {} brought nitrifiers for {} (none there).",
            here.day,
            amount(here)
        )),
        [Some(here), Some(there)] => Some(format!(
            "Mature medium put in on day {} brought nitrifiers for {} (there on day {} for {}).",
            here.day,
            amount(here),
            there.day,
            amount(there)
        )),
        [None, Some(there)] => Some(format!(
            "No mature medium was put in; there it brought nitrifiers for {} on day {}.",
            amount(there),
            there.day
        )),
    }
}

/// Whether the day on which the microbes first keep up decides between two plans.
pub fn decides([here, there]: &[Capacity; 2]) -> bool {
    match (here.reached, there.reached) {
        (Some(here), Some(there)) => here.abs_diff(there) >= DECIDING_DAYS,
        (None, None) => false,
        _ => true,
    }
}

/// When the microbes first keep up, and what they could take then; none where both plans are alike.
pub fn able(both: &[Capacity; 2]) -> Option<String> {
    let [here, there] = both;
    let day = Capacity::common_day(both);
    let [own, other] = [here, there].map(|one| one.on(day));
    let is_apart = own.min(other) < ALIKE_FRAC * own.max(other) || here.reached != there.reached;
    let reached = match (here.reached, there.reached) {
        (None, None) => "never keep up with what comes in (nor there)".to_string(),
        (None, Some(there)) => {
            format!("never keep up with what comes in (there from day {there} on)")
        }
        (Some(here), None) => {
            format!("first keep up with what comes in on day {here} (never there)")
        }
        (Some(here), Some(there)) => {
            format!("first keep up with what comes in on day {here} (day {there} there)")
        }
    };
    is_apart.then(|| {
        format!(
            "In the central run the microbes {reached}; on day {day} they could oxidise {} mg N a day to nitrate ({} \
             there).",
            short(own),
            short(other)
        )
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn capacity(on_day: f64, reached: Option<u32>, seeded: Option<f64>) -> Capacity {
        Capacity {
            of_days_mg_n_per_day: vec![on_day; 15],
            reached,
            seeded: seeded.map(|brought_mg_n_per_day| Seeded {
                day: 1,
                brought_mg_n_per_day,
            }),
        }
    }

    #[test]
    fn a_sponge_and_what_it_does_are_told_and_what_is_alike_is_not() {
        let seeded = capacity(40.0, Some(12), Some(6.0));
        let bare = capacity(2.0, None, None);
        let both = [seeded.clone(), bare.clone()];
        assert_eq!(
            seeds(&both).unwrap(),
            "Mature medium put in on day 1 brought nitrifiers for 6.00 mg N a day (none there)."
        );
        assert_eq!(
            able(&both).unwrap(),
            "In the central run the microbes first keep up with what comes in on day 12 (never there); on day 12 they \
             could oxidise 40.0 mg N a day to nitrate (2.00 there)."
        );
        assert!(decides(&both));
        let turned = [bare.clone(), seeded.clone()];
        let other = seeds(&turned).unwrap();
        assert!(
            other.starts_with("No mature medium was put in; there it brought"),
            "{other}"
        );
        let other = able(&turned).unwrap();
        assert!(
            other.contains("never keep up with what comes in (there from day 12 on)"),
            "{other}"
        );
        let same = [seeded.clone(), seeded];
        assert!(seeds(&same).is_none() && able(&same).is_none() && !decides(&same));
        assert_eq!(able(&[bare, capacity(2.1, None, None)]), None);
    }
}
