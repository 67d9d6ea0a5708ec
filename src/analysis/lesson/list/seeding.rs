//! Seeding and time.

use super::super::claim::Claim;
use super::super::claim::Number::{Base, Fixed, Here};
use super::super::fact::{
    CAPACITY, DAYS_SOONER, NITRITE_CAPACITY, NITRITE_PEAK, NITRITE_PEAK_DAY, READY_DAY,
    READY_OF_100, TAN_PEAK,
};
use super::super::note::{Note, Of, Where};
use super::super::trace::{Line, Panel, Trace};
use super::super::{EIGHT_WEEKS, Lesson, Step};
use super::panels;
use super::words::{
    CAPACITY as CAPACITY_WORD, NITRIFIERS, NITRITE, PLAUSIBLE, READY, TOTAL_AMMONIA,
};

/// The lesson.
pub const LESSON: Lesson = Lesson {
    key: "seeding",
    title: "Seeding and time",
    question: "What is a piece of sponge from a running filter worth, in days?",
    terms: &[TOTAL_AMMONIA, NITRITE, NITRIFIERS, CAPACITY_WORD, READY, PLAUSIBLE],
    scenario: include_str!("../scenarios/seeding.toml"),
    input: "how much sponge of a running filter is put in on day 0",
    steps: STEPS,
    base: 0,
    shown: 3,
    window: EIGHT_WEEKS,
    day: 14,
    panels: PANELS,
    facts: &[
        TAN_PEAK,
        NITRITE_PEAK,
        NITRITE_PEAK_DAY,
        CAPACITY,
        DAYS_SOONER,
        READY_DAY,
        READY_OF_100,
    ],
    headline: Claim::of("seeding, days", Here(DAYS_SOONER), Fixed(0.0, 1), 0.5)
        .higher("With {step}, tanks are ready {left} ± {error} days sooner, on the mean of {members} plausible ones")
        .alike("With {step}, tanks are not clearly ready sooner: {left} ± {error} days, on the mean of {members} plausible ones")
        .lower("With {step}, tanks are ready {by} ± {error} days later, on the mean of {members} plausible ones")
        .at_base("With {step}, {ready_of_100} of 100 plausible tanks are ready by day {last_day}"),
    claims: CLAIMS,
    notes: &[
        Note::new(Trace::Nitrite, Of::Base, Where::Highest, "{base}: {value} on day {day}"),
        Note::new(Trace::Nitrite, Of::Step, Where::Highest, "{step}: {value} on day {day}"),
        Note::new(Trace::AmmoniaCapacity, Of::Step, Where::ThatDay, "{step}, day {day}: {value}"),
        Note::new(Trace::AmmoniaCapacity, Of::Base, Where::ThatDay, "{base}, day {day}: {value}"),
    ],
    to_try: "Move from 30 to 100 mL, and on to 300: about three times as much each time. How many days does each gain? Then \
        put the sponge in on day 10 (day in each of the files of sponge) and see what is left of it.",
    cannot: &[
        "Whether your sponge is alive: an hour dry, or a day without flow, and little is left of it.",
        "Snails, algae and illness that travel with it. Take it only from a tank you would trust with your animals.",
        "What bottles of bacteria do: whether they settle before they are washed out is not simulated.",
    ],
};

macro_rules! sponge {
    ($amount:literal) => {
        concat!(
            "[seed]\nsponge = { day = 0, time = \"12:00\", amount = \"",
            $amount,
            "\" }\n"
        )
    };
}

#[rustfmt::skip]
const STEPS: &[Step] = &[
    Step { key: "none", label: "nothing brought in", lines: "" },
    Step { key: "10-ml", label: "10 mL of sponge", lines: sponge!("10 mL") },
    Step { key: "30-ml", label: "30 mL of sponge", lines: sponge!("30 mL") },
    Step { key: "100-ml", label: "100 mL of sponge", lines: sponge!("100 mL") },
    Step { key: "300-ml", label: "300 mL of sponge", lines: sponge!("300 mL") },
    Step { key: "1-l", label: "1 L of sponge", lines: sponge!("1 L") },
];

const PANELS: &[Panel] = &[
    panels::NITRITE,
    Panel {
        lines: &[Line::of("a small feed", |step| {
            step.outcome.verdict.feed_mg_n_per_day
        })],
        ..panels::CAPACITY
    },
    panels::READY,
];

const BOTH_KINDS: Claim =
    Claim::of("seeding, both kinds", Here(NITRITE_CAPACITY), Base(NITRITE_CAPACITY), 0.5)
        .higher(": both kinds of nitrifiers came with it. On day {day} the nitrite oxidisers could turn over {left} mg N a day, with {base} {right}")
        .alike("")
        .lower("");

const CLAIMS: &[Claim] = &[
    Claim::of("seeding, nitrite day", Here(NITRITE_PEAK_DAY), Base(NITRITE_PEAK_DAY), 1.0)
        .lower("Nitrite peaks on day {left} instead of day {right}.")
        .alike("Nitrite peaks on about the same day, {left} against {right}.")
        .higher("Nitrite peaks later, on day {left} instead of day {right}.")
        .at_base("Nitrite peaks on day {left}."),
    Claim::of("seeding, nitrite", Here(NITRITE_PEAK), Base(NITRITE_PEAK), 0.1)
        .lower("It peaks at {left} mg N/L instead of {right}{cause}.")
        .alike("It peaks as high, at {left} mg N/L against {right}.")
        .higher("It peaks higher, at {left} mg N/L against {right}.")
        .at_base("It peaks at {left} mg N/L.")
        .because(&BOTH_KINDS),
    Claim::of("seeding, capacity", Here(CAPACITY), Base(CAPACITY), 0.5)
        .higher("The ammonia oxidisers could turn over {left} mg N on day {day}, with {base} {right}.")
        .alike("The ammonia oxidisers could turn over {left} mg N on day {day}, no clear difference to {right}.")
        .lower("The ammonia oxidisers could turn over {left} mg N on day {day}, less than the {right} with {base}.")
        .at_base("The ammonia oxidisers could turn over {left} mg N on day {day}."),
    Claim::of("seeding, of 100", Here(READY_OF_100), Base(READY_OF_100), 3.0)
        .higher("Of 100 plausible tanks {left} are ready by day {last_day}; with {base} it is {right}.")
        .alike("Of 100 plausible tanks {left} are ready by day {last_day}, about as many as with {base} ({right}).")
        .lower("Of 100 plausible tanks only {left} are ready by day {last_day}; with {base} it is {right}.")
        .at_base("The other settings are held against this one, tank by tank."),
];
