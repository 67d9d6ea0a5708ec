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
use super::words::{CO2, LIMIT, OXYGEN, PLAUSIBLE};

/// The lesson.
pub const LESSON: Lesson = Lesson {
    key: "air-at-night",
    title: "Air at night",
    question: "Many plants, a surface like a mirror, and every morning the oxygen is low. What does an air stone do, and for how long must it run?",
    terms: &[OXYGEN, LIMIT, CO2, PLAUSIBLE],
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
    headline: Claim::of("night air, oxygen", Here(OXYGEN_THAT_DAY), Base(OXYGEN_THAT_DAY), 0.1)
        .higher("With {step}, oxygen falls to {left} mg/L on day {day}, with {base} to {right}")
        .alike("With {step}, oxygen falls to {left} mg/L on day {day}, no clear difference to {base} ({right})")
        .lower("With {step}, oxygen falls lower than with {base}: to {left} mg/L on day {day}, against {right}")
        .at_base("With {step}, oxygen falls to {left} mg/L on day {day}"),
    claims: CLAIMS,
    notes: &[
        Note::new(Trace::Oxygen, Of::Base, Where::Lowest, "{base}: {value}, day {day} {time}"),
        Note::new(Trace::Oxygen, Of::Step, Where::Lowest, "{step}: {value}, day {day} {time}"),
        Note::new(Trace::Co2, Of::Step, Where::Lowest, "CO2 {value}, day {day} {time}"),
        Note::new(Trace::Ph, Of::Step, Where::Highest, "pH {value}, day {day} {time}"),
    ],
    to_try: "See how many plausible tanks keep the limit with twelve hours. Then stir the surface instead (kind = \"gentle ripple\" under [surface] in air-at-night.toml) and leave \
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
    Claim::of("night air, limit", Here(OXYGEN_THAT_DAY), Here(OXYGEN_LIMIT), 0.0)
        .higher("That is over the limit of {right} mg/L.")
        .alike("That is just the limit of {right} mg/L.")
        .lower("That is {by} under the limit of {right} mg/L."),
    Claim::of("night air, plausible tanks", Here(OXYGEN_KEPT), Base(OXYGEN_KEPT), 5.0)
        .higher("So it is in the central run. Of 100 plausible tanks {left} keep the limit in every night of {last_day} days, with {base} {right}.")
        .alike("So it is in the central run. Of 100 plausible tanks {left} keep the limit in every night of {last_day} days, no clear difference to {right}.")
        .lower("So it is in the central run. Of 100 plausible tanks {left} keep the limit in every night of {last_day} days, fewer than the {right} with {base}.")
        .at_base("So it is in the central run. Of 100 plausible tanks {left} keep the limit in every night of {last_day} days."),
    Claim::of("night air, dawn", Here(CO2_AT_DAWN), Base(CO2_AT_DAWN), 1.0)
        .lower("Less CO2 is left at lights-on: {left} mg/L instead of {right}.")
        .alike("At lights-on there are {left} mg/L of CO2, no clear difference to {right}.")
        .higher("At lights-on there are {left} mg/L of CO2, more than the {right} with {base}.")
        .at_base("At lights-on there are {left} mg/L of CO2 in the water."),
    Claim::of("night air, swing", Here(PH_SWING), Base(PH_SWING), 0.1)
        .higher("pH swings by {left} in the day instead of {right}.")
        .alike("pH swings by {left} in the day, no clear difference.")
        .lower("pH swings by {left} in the day, less than {right}.")
        .at_base("pH swings by {left} in the day."),
    Claim::of("night air, gas", Here(GAS), Base(GAS), 1.0)
        .higher("It takes more gas: {left} g in {last_day} days instead of {right}.")
        .alike("It takes as much gas: {left} g in {last_day} days.")
        .lower("It takes less gas, {left} g in {last_day} days instead of {right}.")
        .at_base("It takes {left} g of gas in {last_day} days."),
];
