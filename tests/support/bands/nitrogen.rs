//! Nitrogen, alkalinity and plants.

use firstfill::engine::result::Side;

use super::super::diary::{
    NITRITE, TAN, at, between, clean_day, first_above, highest, kh, lowest, peak, stand,
};
use super::{Checks, DERIVED, PRACTICE};

pub fn nitrogen(checks: &mut Checks) {
    let c = |checks: &mut Checks, n, what, observed, accept| {
        checks.see(n, what, observed, accept, PRACTICE)
    };
    c(
        checks,
        1,
        "TAN ten hours after filling",
        TAN(at("base", 0, 10.0)),
        (0.4, 1.2),
    );
    c(
        checks,
        1,
        "TAN twelve hours after filling",
        TAN(at("base", 0, 12.0)),
        (0.4, 1.2),
    );
    let (tan, day) = peak("bare_no_change", TAN, 0.0, 56.0);
    c(
        checks,
        2,
        "peak TAN, no changes, no plants",
        tan,
        (3.0, 8.0),
    );
    c(checks, 2, "its day", day, (5.0, 15.0));
    let (tan, day) = peak("base", TAN, 0.0, 8.0);
    c(
        checks,
        3,
        "peak TAN of week 1, half changed daily",
        tan,
        (1.0, 3.0),
    );
    c(checks, 3, "its day", day, (2.0, 5.0));
    let before = between("base", 7.0, 8.0)
        .find(|r| r.side == Side::Before)
        .unwrap();
    c(
        checks,
        3,
        "TAN before the change of day 7",
        TAN(before),
        (0.0, 2.0),
    );
    let nitrite_starts = |name| first_above(name, NITRITE, 0.1).unwrap();
    let growth = "common practice, no source; derived from the growth of ammonia oxidisers";
    checks.see(
        4,
        "first nitrite, unseeded",
        nitrite_starts("base"),
        (7.0, 16.0),
        growth,
    );
    checks.see(
        4,
        "first nitrite, unseeded, no plants or changes",
        nitrite_starts("bare_no_change"),
        (7.0, 16.0),
        growth,
    );
    checks.see(
        4,
        "first nitrite, seeded",
        nitrite_starts("base_seed100"),
        (1.0, 5.0),
        growth,
    );
    nitrite_peaks(checks);
    let weeks = "FAO glossary: 1 to 6 weeks; unseeded 4 to 6; common practice, no source";
    checks.see(
        6,
        "TAN and nitrite stay low from, unseeded",
        clean_day("base"),
        (21.0, 42.0),
        weeks,
    );
    checks.see(
        6,
        "TAN and nitrite stay low from, seeded",
        clean_day("base_seed100"),
        (7.0, 21.0),
        weeks,
    );
}

fn nitrite_peaks(checks: &mut Checks) {
    for (name, what, heights, day_what, days) in [
        (
            "base",
            "nitrite peak with changes",
            (0.5, 6.0),
            "day of the nitrite peak with changes",
            (15.0, 30.0),
        ),
        (
            "weekly",
            "nitrite peak, weekly changes",
            (0.5, 6.0),
            "day of the nitrite peak, weekly changes",
            (15.0, 30.0),
        ),
        (
            "bare_no_change",
            "nitrite peak, no changes",
            (10.0, 20.0),
            "day of the nitrite peak, no changes",
            (15.0, 30.0),
        ),
        (
            "no_change",
            "nitrite peak, no changes with plants and gas",
            (10.0, 20.0),
            "day of the nitrite peak, no changes with plants and gas",
            (15.0, 30.0),
        ),
        (
            "base_seed100",
            "nitrite peak, seeded",
            (0.5, 6.0),
            "day of the nitrite peak, seeded",
            (6.0, 14.0),
        ),
    ] {
        let (height, day) = peak(name, NITRITE, 0.0, 56.0);
        checks.see(
            5,
            what,
            height,
            heights,
            "common practice, no source; derived",
        );
        checks.see(
            5,
            day_what,
            day,
            days,
            "common practice, no source; derived",
        );
    }
}

pub fn alkalinity(checks: &mut Checks) {
    let source = "common practice, no source; calibrated";
    let soft = "advice of aquaculture extension services on alkalinity, and derived";
    checks.see(
        7,
        "soft tap, plants and gas, no changes: clean from",
        clean_day("soft_no_change"),
        (42.0, 56.0),
        soft,
    );
    let sooner = clean_day("soft_no_change") - clean_day("soft_changes_from_28");
    checks.see(
        7,
        "days that changes from day 28 save there",
        sooner,
        (1.0, 28.0),
        soft,
    );
    checks.see(
        16,
        "KH at the end of week 1, half changed daily",
        kh("base", 6),
        (2.0, 3.5),
        source,
    );
    checks.see(
        16,
        "KH at the end of week 6, weekly by then",
        kh("base", 41),
        (1.0, 2.0),
        source,
    );
    checks.see(
        16,
        "KH at the end of week 1, weekly changes",
        kh("weekly", 6),
        (1.0, 2.0),
        source,
    );
    checks.see(
        16,
        "KH at the end of week 3, weekly changes",
        kh("weekly", 20),
        (1.0, 2.0),
        source,
    );
    checks.see(
        16,
        "KH at the end of week 6, weekly changes",
        kh("weekly", 41),
        (1.0, 2.0),
        source,
    );
}

pub fn plants(checks: &mut Checks) {
    let tan = |name| highest(name, TAN, 0.0, 8.0);
    let lower = |name| 100.0 * (1.0 - tan(name) / tan("bare_std"));
    checks.see(
        8,
        "% that dense plants and gas take off the first TAN peak",
        lower("dense"),
        (5.0, 25.0),
        DERIVED,
    );
    let nitrite = |name| highest(name, NITRITE, 0.0, 56.0);
    checks.see(
        8,
        "nitrite peak, dense under base",
        nitrite("base") - nitrite("dense"),
        (0.0, 5.0),
        DERIVED,
    );
    checks.see(
        8,
        "nitrite peak, base under bare",
        nitrite("bare_std") - nitrite("base"),
        (0.0, 5.0),
        DERIVED,
    );
    let oxidisers = |name| at(name, 14, 0.0).ammonia_oxidisers_mg_cod;
    checks.see(
        8,
        "ammonia oxidisers on day 14, base over dense",
        oxidisers("base") / oxidisers("dense"),
        (1.0, 20.0),
        DERIVED,
    );
    checks.see(
        8,
        "ammonia oxidisers on day 14, bare over base",
        oxidisers("bare_std") / oxidisers("base"),
        (1.0, 20.0),
        DERIVED,
    );
    let nitrate = "derived; near the tap is read as tap + 1 mg N/L";
    checks.see(
        17,
        "nitrate at the end, dense plants",
        at("dense", 56, 0.0).nitrate_mg_n_per_l,
        (0.0, 3.0),
        nitrate,
    );
    let climbed = at("bare_no_change", 56, 0.0).nitrate_mg_n_per_l - 2.0;
    checks.see(
        17,
        "nitrate gained, no changes or plants",
        climbed,
        (10.0, 25.0),
        nitrate,
    );
    let practice = "common practice, no source; derived";
    let least = lowest("base", |r| r.plants_g, 0.01, 56.0) / at("base", 0, 0.0).plants_g;
    checks.see(
        19,
        "% of the plants lost in the melt",
        100.0 * (1.0 - least),
        (10.0, 30.0),
        practice,
    );
    checks.see(
        19,
        "stems at the end, as a multiple",
        stand("base", 0, 56) / stand("base", 0, 0),
        (2.0, 4.0),
        practice,
    );
    let without = 100.0 * (at("no_gas", 56, 0.0).plants_g / at("no_gas", 14, 0.0).plants_g - 1.0);
    checks.see(
        19,
        "% that plants gain without gas from day 14",
        without,
        (-10.0, 10.0),
        practice,
    );
}
