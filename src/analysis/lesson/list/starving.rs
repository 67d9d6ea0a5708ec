//! Does changing water starve the nitrifiers?

use super::super::claim::Claim;
use super::super::claim::Number::{Base, Fixed, Here};
use super::super::fact::{
    CAPACITY, DAYS_SOONER, FEED, LITRES, NITRITE_CAPACITY, NITRITE_PEAK, READY_OF_100, SPEED,
    TAN_PEAK,
};
use super::super::note::{Note, Of, Where};
use super::super::trace::{Panel, Trace};
use super::super::{EIGHT_WEEKS, Lesson, Step};
use super::panels;
use super::words::{CAPACITY as CAPACITY_WORD, KH, NITRIFIERS, PLAUSIBLE, TOTAL_AMMONIA};

/// The lesson.
pub const LESSON: Lesson = Lesson {
    key: "starving",
    title: "Does changing water starve the nitrifiers?",
    question: "Every bucket carries ammonia out, and ammonia is what the nitrifiers eat. Do they grow slower for it?",
    terms: &[TOTAL_AMMONIA, NITRIFIERS, CAPACITY_WORD, KH, PLAUSIBLE],
    scenario: include_str!("../scenarios/starving.toml"),
    input: "how much of the water is changed every other day in the first three weeks, with water that brings no KH",
    steps: STEPS,
    base: 0,
    shown: 4,
    window: EIGHT_WEEKS,
    day: 21,
    panels: PANELS,
    facts: &[
        TAN_PEAK,
        NITRITE_PEAK,
        CAPACITY,
        NITRITE_CAPACITY,
        DAYS_SOONER,
        READY_OF_100,
        LITRES,
    ],
    headline: Claim::of("starving, fewer", Here(CAPACITY), Base(CAPACITY), 2.0)
        .lower("With {step}, the ammonia oxidisers are fewer on day {day}{cause}")
        .alike("With {step}, the ammonia oxidisers are about as many on day {day}{cause}")
        .higher("With {step}, the ammonia oxidisers are more on day {day}{cause}")
        .at_base("With {step}, ammonia peaks at {tan_peak} mg N/L")
        .because(&DAYS),
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
            Trace::AmmoniaCapacity,
            Of::Step,
            Where::ThatDay,
            "{step}, day {day}: {value}",
        ),
        Note::new(
            Trace::AmmoniaCapacity,
            Of::Base,
            Where::ThatDay,
            "{base}, day {day}: {value}",
        ),
    ],
    to_try: "Write the KH of your tap into the water named own and run the lesson on your files: which counts for \
        more, what the refill brings or what the bucket takes?",
    cannot: &[
        "Free cells that are poured away: the nitrifiers of the model all live in films, as most do.",
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
        line: None,
        ..panels::AMMONIA
    },
    panels::CAPACITY,
    panels::READY,
];

/// What becomes of the ready day.
const DAYS: Claim = Claim::of("starving, days", Here(DAYS_SOONER), Fixed(0.0, 1), 0.5)
    .higher("; tanks are ready {left} days sooner, on the mean of {members} plausible ones")
    .alike("; tanks are ready neither clearly sooner nor later: {left} days, on the mean of {members} plausible ones")
    .lower("; tanks are ready {by} days later, on the mean of {members} plausible ones{cause}")
    .because(&SLOWED);
/// Why tanks are ready later: water in which nitrifiers are slow.
const SLOWED: Claim = Claim::of("starving, slowed", Here(SPEED), Base(SPEED), 5.0)
    .lower(", in water that leaves nitrite oxidisers {left} % of full speed instead of {right} %")
    .alike("")
    .higher("");
/// Why there are fewer of them.
const FOOD: Claim = Claim::of("starving, less to eat", Here(TAN_PEAK), Base(TAN_PEAK), 0.1)
    .lower(": there was less to eat, at the highest {left} mg N/L of ammonia instead of {right}")
    .alike("")
    .higher("");

const CLAIMS: &[Claim] = &[
    Claim::of("starving, capacity", Here(CAPACITY), Base(CAPACITY), 2.0)
        .lower("On day {day} the ammonia oxidisers could turn over {left} mg N a day, with {base} {right}{cause}.")
        .alike("On day {day} the ammonia oxidisers could turn over {left} mg N a day, with {base} {right}: no clear difference.")
        .higher("On day {day} the ammonia oxidisers could turn over {left} mg N a day, with {base} {right}.")
        .at_base("On day {day} the ammonia oxidisers could turn over {left} mg N a day, the nitrite oxidisers {nitrite_capacity}.")
        .because(&FOOD),
    Claim::of("starving, enough", Here(CAPACITY), Here(FEED), 0.5)
        .higher("That is more than the {right} mg N a day that a group of small fish brings.")
        .alike("That is about what a group of small fish brings, {right} mg N a day.")
        .lower("That is less than the {right} mg N a day that a group of small fish brings."),
    Claim::of("starving, nitrite", Here(NITRITE_PEAK), Base(NITRITE_PEAK), 0.1)
        .lower("Less has to be cleared: nitrite peaks at {left} mg N/L instead of {right}.")
        .alike("As much has to be cleared: nitrite peaks at {left} mg N/L, against {right}.")
        .higher("More has to be cleared: nitrite peaks at {left} mg N/L instead of {right}.")
        .at_base("Nitrite climbs to {left} mg N/L."),
    Claim::of("starving, of 100", Here(READY_OF_100), Base(READY_OF_100), 3.0)
        .higher("Of 100 plausible tanks {left} are ready by day {last_day}; with {base} it is {right}.")
        .alike("Of 100 plausible tanks {left} are ready by day {last_day}, about as many as with {base} ({right}).")
        .lower("Of 100 plausible tanks only {left} are ready by day {last_day}; with {base} it is {right}.")
        .at_base("Of 100 plausible tanks {left} are ready by day {last_day}."),
];
