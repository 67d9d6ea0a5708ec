//! What early changes of water do, and what they don't.

use super::super::claim::Number::{Base, Fixed, Here};
use super::super::claim::{Claim, Stands};
use super::super::fact::{
    DAYS_SOONER, DOUBLING, KH_LOW, LITRES, NITRITE_PEAK, READY_OF_100, TAN_PEAK, TAN_PEAK_DAY,
};
use super::super::note::{Note, Of, Where};
use super::super::trace::{Panel, Trace};
use super::super::{EIGHT_WEEKS, Lesson, Step};
use super::panels;
use super::words::{NITRIFIERS, NITRITE, PLAUSIBLE, READY, TOTAL_AMMONIA};

/// The lesson.
pub const LESSON: Lesson = Lesson {
    key: "early-changes",
    title: "What early changes do and don't do",
    question: "A new tank on soil is full of ammonia; from day 15 on half of its water is changed once a week. Does changing much water in the first two weeks as well make it ready sooner?",
    terms: &[TOTAL_AMMONIA, NITRITE, NITRIFIERS, READY, PLAUSIBLE],
    scenario: include_str!("../scenarios/early-changes.toml"),
    input: "how often half of the water is changed in the first two weeks",
    steps: STEPS,
    base: 0,
    shown: 4,
    window: EIGHT_WEEKS,
    day: 12,
    panels: PANELS,
    facts: &[
        TAN_PEAK,
        TAN_PEAK_DAY,
        NITRITE_PEAK,
        DAYS_SOONER,
        READY_OF_100,
        KH_LOW,
        LITRES,
    ],
    headline: Claim::of("early changes, days", Here(DAYS_SOONER), Fixed(0.0, 1), 0.5)
        .higher("With {step}, tanks are ready {left} ± {error} days sooner, on the mean of {members} plausible ones")
        .alike("With {step}, tanks are not clearly ready sooner: {left} ± {error} days, on the mean of {members} plausible ones")
        .lower("With {step}, tanks are ready {by} ± {error} days later, on the mean of {members} plausible ones")
        .at_base("With {step}, {ready_of_100} of 100 plausible tanks are ready by day {last_day}"),
    claims: CLAIMS,
    notes: &[
        Note::new(Trace::Ammonia, Of::Base, Where::Highest, "{base}: {value} on day {day}"),
        Note::new(Trace::Ammonia, Of::Step, Where::Highest, "{step}: {value} on day {day}"),
        Note::new(Trace::Nitrite, Of::Base, Where::Highest, "{base}: {value} on day {day}"),
        Note::new(Trace::Nitrite, Of::Step, Where::Highest, "{step}: {value} on day {day}"),
    ],
    to_try: "Take your own tap water: write its KH into tank.toml (alkalinity under [water.tap]). With soft \
        water, is it still the peaks that change most? Then write late = \"none\" there, under [changes], in place of the line that begins with late, so that a tank \
        left alone never gets fresh water: how many days do early changes gain now? (The README has such a pair: Two disputes.)",
    cannot: &[
        "What ammonia does to plants and animals: the model counts milligrams, not harm.",
        "Free microbes that are poured away with the water: here they all live in films on surfaces.",
        "Your soil. Nobody has published how much ammonia a bag gives; real ones differ fivefold.",
    ],
};

#[rustfmt::skip]
const STEPS: &[Step] = &[
    Step { key: "none", label: "no early change", lines: "" },
    Step { key: "every-7-days", label: "a change every 7 days", lines: EVERY_7 },
    Step { key: "every-4-days", label: "a change every 4 days", lines: EVERY_4 },
    Step { key: "every-3-days", label: "a change every 3 days", lines: EVERY_3 },
    Step { key: "every-2-days", label: "a change every 2 days", lines: EVERY_2 },
    Step { key: "every-day", label: "a change every day", lines: EVERY_1 },
];

const EVERY_7: &str = "[changes]\nearly = { days = \"1..14\", every = 7, share = \"50 %\" }\n";
const EVERY_4: &str = "[changes]\nearly = { days = \"1..14\", every = 4, share = \"50 %\" }\n";
const EVERY_3: &str = "[changes]\nearly = { days = \"1..14\", every = 3, share = \"50 %\" }\n";
const EVERY_2: &str = "[changes]\nearly = { days = \"1..14\", every = 2, share = \"50 %\" }\n";
const EVERY_1: &str = "[changes]\nearly = { days = \"1..14\", every = 1, share = \"50 %\" }\n";

const PANELS: &[Panel] = &[panels::AMMONIA, panels::NITRITE, panels::READY];

/// Why so little time is gained.
const NO_FASTER: Claim = Claim::of("early changes, doubling", Here(DOUBLING), Base(DOUBLING), 0.1)
    .alike(": nitrifiers grow no faster. In the week before day {day} they double every {left} days, as with {base}")
    .higher(": nitrifiers grow no faster. In the week before day {day} they double every {left} days, with {base} every {right}")
    .lower(", though nitrifiers grow faster. In the week before day {day} they double every {left} days, with {base} every {right}")
    .when(Stands::OnlyRight, ": nitrifiers did not grow at all in the week before day {day}")
    .when(Stands::OnlyLeft, "")
    .when(Stands::Neither, "");

const CLAIMS: &[Claim] = &[
    Claim::of("early changes, ammonia", Here(TAN_PEAK), Base(TAN_PEAK), 0.1)
        .lower("What they do: ammonia peaks at {left} mg N/L instead of {right}.")
        .alike("They do nothing to the peak of ammonia here: {left} mg N/L, against {right} with {base}.")
        .higher("They raise the peak of ammonia here: {left} mg N/L, against {right} with {base}.")
        .at_base("Ammonia climbs to {left} mg N/L on day {tan_peak_day}."),
    Claim::of("early changes, nitrite", Here(NITRITE_PEAK), Base(NITRITE_PEAK), 0.1)
        .lower("Nitrite, which comes after it, peaks at {left} mg N/L instead of {right}.")
        .alike("Nitrite peaks about as high: {left} mg N/L, against {right}.")
        .higher("Nitrite peaks higher for it: {left} mg N/L, against {right}.")
        .at_base("Nitrite follows it and climbs to {left} mg N/L on day {nitrite_peak_day}."),
    Claim::of("early changes, not weeks", Here(DAYS_SOONER), Fixed(7.0, 0), 0.0)
        .lower("What they don't do: spare the waiting. Less than a week is gained{cause}.")
        .alike("About a week is gained.")
        .higher("More than a week is gained.")
        .at_base("KH falls to {kh_low} dKH at the lowest.")
        .because(&NO_FASTER),
    Claim::of("early changes, of 100", Here(READY_OF_100), Base(READY_OF_100), 3.0)
        .higher("Of 100 plausible tanks {left} are ready by day {last_day}; with {base} it is {right}.")
        .alike("Of 100 plausible tanks {left} are ready by day {last_day}, about as many as with {base} ({right}).")
        .lower("Of 100 plausible tanks only {left} are ready by day {last_day}; with {base} it is {right}.")
        .at_base("The other settings are held against this one, tank by tank."),
    Claim::of("early changes, water", Here(LITRES), Base(LITRES), 1.0)
        .higher("That takes {left} L of water in eight weeks, {by} L more.")
        .alike("That takes as much water: {left} L.")
        .lower("That takes less water: {left} L against {right} L.")
        .at_base("That takes {left} L of water in eight weeks."),
];
