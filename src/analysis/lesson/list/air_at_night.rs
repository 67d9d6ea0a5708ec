//! Air at night.

use super::super::claim::Claim;
use super::super::claim::Number::{Base, Here};
use super::super::fact::{
    CO2_AT_DAWN, GAS, OXYGEN_KEPT, OXYGEN_LIMIT, OXYGEN_THAT_DAY, PH_HIGH, PH_SWING,
};
use super::super::note::{Note, Of, Where};
use super::super::trace::{Panel, Trace};
use super::super::{Lesson, Step, Window};
use super::panels;
use super::words::{CO2, OXYGEN};

/// The lesson.
pub const LESSON: Lesson = Lesson {
    key: "air-at-night",
    title: "Air at night",
    question: "Many plants, a surface like a mirror, and every morning the oxygen is low. What does an air stone do, and for how long must it run?",
    terms: &[OXYGEN, CO2],
    scenario: include_str!("../scenarios/air-at-night.toml"),
    input: "how many hours an air stone runs from 20:00 on, 1 L/min",
    steps: STEPS,
    base: 0,
    shown: 4,
    window: Window {
        first_day: 20,
        last_day: 21,
        every_minutes: 30,
    },
    day: 21,
    panels: PANELS,
    facts: &[OXYGEN_THAT_DAY, OXYGEN_KEPT, CO2_AT_DAWN, PH_SWING, PH_HIGH, GAS],
    headline: Claim::of("night air, limit", Here(OXYGEN_THAT_DAY), Here(OXYGEN_LIMIT), 0.0)
        .higher("With {step}, the night leaves {left} mg/L of oxygen, over the limit of {right}; with {base} it leaves {base.oxygen_that_day}")
        .alike("With {step}, the night leaves just the limit of {right} mg/L of oxygen; with {base} it leaves {base.oxygen_that_day}")
        .lower("With {step}, the night leaves {left} mg/L of oxygen, under the limit of {right}"),
    claims: CLAIMS,
    notes: &[
        Note::new(Trace::Oxygen, Of::Base, Where::Lowest, "{base}: {value}, day {day} {time}"),
        Note::new(Trace::Oxygen, Of::Step, Where::Lowest, "{step}: {value}, day {day} {time}"),
        Note::new(Trace::Co2, Of::Step, Where::Lowest, "CO2 {value}, day {day} {time}"),
        Note::new(Trace::Ph, Of::Step, Where::Highest, "pH {value}, day {day} {time}"),
    ],
    to_try: "See how many plausible tanks keep the limit with twelve hours. Then stir the surface instead (kind = \"gentle ripple\") and leave \
        the stone out: which costs less gas?",
    cannot: &[
        "How livelily your surface breathes: still and ripple stand for a gas exchange that differs from tank to tank.",
        "The bloom of microbes of the first two weeks, which makes those nights worse than shown.",
        "Layers and dead corners: the tank is taken as well mixed.",
    ],
};

macro_rules! air {
    ($until:literal) => {
        concat!("[air]\non = \"20:00..", $until, "\"\nflow = \"1 L/min\"\n")
    };
}

#[rustfmt::skip]
const STEPS: &[Step] = &[
    Step { key: "no-air", label: "no air", lines: "" },
    Step { key: "2-h", label: "2 hours of air", lines: air!("22:00") },
    Step { key: "4-h", label: "4 hours of air", lines: air!("00:00") },
    Step { key: "6-h", label: "6 hours of air", lines: air!("02:00") },
    Step { key: "8-h", label: "8 hours of air", lines: air!("04:00") },
    Step { key: "10-h", label: "10 hours of air", lines: air!("06:00") },
    Step { key: "12-h", label: "12 hours of air", lines: air!("08:00") },
];

const PANELS: &[Panel] = &[panels::OXYGEN, panels::CO2, panels::PH];

const CLAIMS: &[Claim] = &[
    Claim::of("night air, oxygen", Here(OXYGEN_THAT_DAY), Base(OXYGEN_THAT_DAY), 0.1)
        .higher("The lowest oxygen of day {day} is {left} mg/L, {by} more than with {base}.")
        .alike("The lowest oxygen of day {day} is {left} mg/L, no clear difference to {base} ({right}).")
        .lower("The lowest oxygen of day {day} is {left} mg/L, less than with {base} ({right}).")
        .at_base("The lowest oxygen of day {day} is {left} mg/L."),
    Claim::of("night air, limit", Here(OXYGEN_THAT_DAY), Here(OXYGEN_LIMIT), 0.0)
        .higher("That keeps the limit of {right} mg/L.")
        .alike("That just keeps the limit of {right} mg/L.")
        .lower("That is {by} under the limit of {right} mg/L."),
    Claim::of("night air, plausible tanks", Here(OXYGEN_KEPT), Base(OXYGEN_KEPT), 5.0)
        .higher("That is the central run: of 100 plausible tanks {left} keep it in every night of {last_day} days, with {base} {right}.")
        .alike("That is the central run: of 100 plausible tanks {left} keep it in every night of {last_day} days, no clear difference to {right}.")
        .lower("That is the central run: of 100 plausible tanks {left} keep it in every night of {last_day} days, fewer than the {right} with {base}.")
        .at_base("That is the central run: of 100 plausible tanks {left} keep it in every night of {last_day} days."),
    Claim::of("night air, dawn", Here(CO2_AT_DAWN), Base(CO2_AT_DAWN), 1.0)
        .lower("At lights-on there are {left} mg/L of CO2, less than the {right} with {base}.")
        .alike("At lights-on there are {left} mg/L of CO2, no clear difference to {right}.")
        .higher("At lights-on there are {left} mg/L of CO2, more than the {right} with {base}.")
        .at_base("At lights-on there are {left} mg/L of CO2 in the water."),
    Claim::of("night air, swing", Here(PH_SWING), Base(PH_SWING), 0.1)
        .higher("pH swings by {left} in the day instead of {right}.")
        .alike("pH swings by {left} in the day, no clear difference.")
        .lower("pH swings by {left} in the day, less than {right}.")
        .at_base("pH swings by {left} in the day."),
    Claim::of("night air, gas", Here(GAS), Base(GAS), 1.0)
        .higher("It takes {left} g of gas in {last_day} days instead of {right}, {times} times as much.")
        .alike("It takes as much gas: {left} g in {last_day} days.")
        .lower("It takes less gas, {left} g in {last_day} days instead of {right}.")
        .at_base("It takes {left} g of gas in {last_day} days."),
];
