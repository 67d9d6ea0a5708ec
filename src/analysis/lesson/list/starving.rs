//! Does changing water starve the nitrifiers?

use super::super::claim::Claim;
use super::super::claim::Number::{Base, Fixed, Here};
use super::super::fact::{
    AMMONIA_OXIDISERS, CAPACITY, COMPLETE_OXIDISERS, DAYS_SOONER, FEED, KH_BROUGHT,
    NITRITE_OXIDISERS, NITRITE_PEAK, READY_OF_100, SPEED, TAN_PEAK,
};
use super::super::note::{Note, Of, Where};
use super::super::trace::{Panel, Trace};
use super::super::{EIGHT_WEEKS, Lesson, Step};
use super::panels;
use super::words::{CAPACITY as CAPACITY_WORD, KH, MG_COD, NITRIFIERS, PLAUSIBLE, TOTAL_AMMONIA};

/// Amounts up to so far apart are about as many, mg COD.
const TOLD_APART_MG: f64 = 0.5;

/// The lesson.
pub const LESSON: Lesson = Lesson {
    key: "starving",
    title: "Does changing water starve the nitrifiers?",
    question: "Every bucket carries ammonia out, and ammonia is what the nitrifiers eat. Do fewer of them grow, and does the tank wait for it?",
    terms: &[TOTAL_AMMONIA, NITRIFIERS, MG_COD, CAPACITY_WORD, KH, PLAUSIBLE],
    scenario: include_str!("../scenarios/starving.toml"),
    input: "how much of the water is changed every other day in the first three weeks",
    steps: STEPS,
    base: 0,
    shown: 4,
    window: EIGHT_WEEKS,
    day: 21,
    panels: PANELS,
    facts: &[
        TAN_PEAK,
        AMMONIA_OXIDISERS,
        NITRITE_OXIDISERS,
        COMPLETE_OXIDISERS,
        CAPACITY,
        NITRITE_PEAK,
        DAYS_SOONER,
        READY_OF_100,
    ],
    headline: Claim::of("starving, days", Here(DAYS_SOONER), Fixed(0.0, 1), 0.5)
        .higher("No: with {step}, tanks are ready {left} ± {error} days sooner, on the mean of {members} plausible ones{cause}")
        .alike("No: with {step}, tanks are ready neither clearly sooner nor later: {left} ± {error} days, on the mean of {members} plausible ones{cause}")
        .lower("Yes: with {step}, tanks are ready {by} ± {error} days later, on the mean of {members} plausible ones{cause}")
        .at_base("With {step}, there are {ammonia_oxidisers} mg COD of ammonia oxidisers on day {day}")
        .because(&FEWER),
    claims: CLAIMS,
    notes: &[
        Note::new(
            Trace::Ammonia,
            Of::Base,
            Where::Highest,
            "{base}: {value} on day {day}",
        ),
        Note::new(
            Trace::Ammonia,
            Of::Step,
            Where::Highest,
            "{step}: {value} on day {day}",
        ),
        Note::new(
            Trace::AmmoniaOxidisers,
            Of::Step,
            Where::ThatDay,
            "{step}, day {day}: {value}",
        ),
        Note::new(
            Trace::AmmoniaOxidisers,
            Of::Base,
            Where::ThatDay,
            "{base}, day {day}: {value}",
        ),
    ],
    to_try: "Write the KH of your tap into the water named own, in starving.toml: which counts for more, what the refill \
        brings or what the bucket takes?",
    cannot: &[
        "Free cells that are poured away: the nitrifiers of the model are all attached, in films, as most are; what washed-out \
            cells would cost cannot show here.",
        "Biofilms that are wiped or rinsed off: only a change of water is shown here.",
    ],
};

macro_rules! changed {
    ($share:literal) => {
        concat!(
            "[changes]\nearly = { days = \"1..21\", every = 2, share = \"",
            $share,
            " %\" }\n"
        )
    };
}

#[rustfmt::skip]
const STEPS: &[Step] = &[
    Step { key: "none", label: "no change", lines: "" },
    Step { key: "10-percent", label: "10 % every other day", lines: changed!("10") },
    Step { key: "20-percent", label: "20 % every other day", lines: changed!("20") },
    Step { key: "30-percent", label: "30 % every other day", lines: changed!("30") },
    Step { key: "50-percent", label: "50 % every other day", lines: changed!("50") },
    Step { key: "70-percent", label: "70 % every other day", lines: changed!("70") },
    Step { key: "90-percent", label: "90 % every other day", lines: changed!("90") },
];

const PANELS: &[Panel] = &[
    Panel {
        title: "Total ammonia: the food",
        lines: &[],
        ..panels::AMMONIA
    },
    Panel {
        title: "Ammonia oxidisers",
        traces: &[Trace::AmmoniaOxidisers],
        least: 10.0,
        from_zero: true,
        lines: &[],
    },
    panels::READY,
];

/// How many there are of those that eat ammonia.
const FEWER: Claim = Claim::of(
    "starving, fewer",
    Here(AMMONIA_OXIDISERS),
    Base(AMMONIA_OXIDISERS),
    TOLD_APART_MG,
)
.lower("; less food is left, and fewer ammonia oxidisers grow: {left} mg COD on day {day} instead of {right}")
.alike("; there are about as many ammonia oxidisers: {left} mg COD on day {day}, against {right}")
.higher("; there are more ammonia oxidisers: {left} mg COD on day {day}, against {right}");
/// What takes part in the ready day beside food: water in which nitrifiers are slow.
const SLOWED: Claim = Claim::of("starving, slowed", Here(SPEED), Base(SPEED), 5.0)
    .lower("The water leaves nitrite oxidisers less of full speed, {left} % on the mean of {last_day} days instead of {right} %.")
    .alike("The water leaves nitrite oxidisers about as much of full speed, {left} % on the mean of {last_day} days against {right} %.")
    .higher("The water leaves nitrite oxidisers more of full speed, {left} % on the mean of {last_day} days instead of {right} %.")
    .at_base("The water leaves nitrite oxidisers {left} % of full speed, on the mean of {last_day} days.");

#[rustfmt::skip]
const CLAIMS: &[Claim] = &[
    Claim::of("starving, less to eat", Here(TAN_PEAK), Base(TAN_PEAK), 0.1)
        .lower("There was less to eat: ammonia peaks at {left} mg N/L instead of {right}.")
        .alike("There was as much to eat: ammonia peaks about as high, at {left} mg N/L against {right}.")
        .higher("There was more to eat: ammonia peaks higher, at {left} mg N/L against {right}.")
        .at_base("The food: ammonia peaks at {left} mg N/L."),
    Claim::of("starving, nitrite oxidisers", Here(NITRITE_OXIDISERS), Base(NITRITE_OXIDISERS), 0.0005)
        .lower("There are fewer nitrite oxidisers too, {left} mg COD on day {day} instead of {right}; of complete oxidisers there are {complete_oxidisers}, against {base.complete_oxidisers}.")
        .alike("There are about as many nitrite oxidisers, {left} mg COD on day {day} against {right}; of complete oxidisers there are {complete_oxidisers}, against {base.complete_oxidisers}.")
        .higher("There are more nitrite oxidisers, {left} mg COD on day {day} against {right}; of complete oxidisers there are {complete_oxidisers}, against {base.complete_oxidisers}.")
        .at_base("There are {left} mg COD of nitrite oxidisers on day {day}, and {complete_oxidisers} of complete ones."),
    Claim::of("starving, enough", Here(CAPACITY), Here(FEED), 0.5)
        .higher("The ammonia oxidisers could turn over {left} mg N a day at the pH of that midnight, more than the {right} that a group of small fish brings.")
        .alike("The ammonia oxidisers could turn over {left} mg N a day at the pH of that midnight, about what a group of small fish brings ({right}).")
        .lower("The ammonia oxidisers could turn over {left} mg N a day at the pH of that midnight, less than the {right} that a group of small fish brings."),
    Claim::of("starving, nitrite", Here(NITRITE_PEAK), Base(NITRITE_PEAK), 0.1)
        .lower("Less has to be cleared: nitrite peaks at {left} mg N/L instead of {right}.")
        .alike("As much has to be cleared: nitrite peaks at {left} mg N/L, against {right}.")
        .higher("More has to be cleared: nitrite peaks at {left} mg N/L instead of {right}.")
        .at_base("Nitrite climbs to {left} mg N/L."),
    Claim::of("starving, KH", Here(KH_BROUGHT), Fixed(0.0, 1), 0.1)
        .lower("The changes bring no KH: up to day {day} they take {by} dKH more than they bring.")
        .alike("The changes bring as much KH as they take.")
        .higher("The changes bring KH, too: up to day {day} {left} dKH more than they take.")
        .at_base("Without changes no KH comes in."),
    SLOWED,
    Claim::of("starving, of 100", Here(READY_OF_100), Base(READY_OF_100), 3.0)
        .higher("Of 100 plausible tanks {left} are ready by day {last_day}; with {base} it is {right}.")
        .alike("Of 100 plausible tanks {left} are ready by day {last_day}, about as many as with {base} ({right}).")
        .lower("Of 100 plausible tanks only {left} are ready by day {last_day}; with {base} it is {right}.")
        .at_base("Of 100 plausible tanks {left} are ready by day {last_day}."),
];
