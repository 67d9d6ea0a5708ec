//! Gas on a timer, and the night.

use super::super::claim::Claim;
use super::super::claim::Number::{Base, Here};
use super::super::fact::{
    CO2_AT_DAWN, CO2_LIMIT, CO2_THAT_DAY, GAS, OXYGEN_THAT_DAY, PH_HIGH, PH_LOW, PH_SWING,
    PLANTS_END,
};
use super::super::note::{Note, Of, Where};
use super::super::trace::{Panel, Trace};
use super::super::{Lesson, Step, Term, Window};
use super::panels;
use super::words::{CO2, OXYGEN};

/// The lesson.
pub const LESSON: Lesson = Lesson {
    key: "gas-timer",
    title: "Gas on a timer, and the night",
    question: "Should the gas run day and night so that pH stays still, or go off with the light?",
    terms: &[
        CO2,
        OXYGEN,
        Term {
            word: "tuned valve",
            meaning: "in every step the valve is set so that CO2 reaches 26 mg/L at its highest on the tuning days, and not more",
        },
    ],
    scenario: include_str!("../scenarios/gas-timer.toml"),
    input: "when the gas comes on; it goes off an hour before the lights, which are on from 11:30 to 18:30",
    steps: STEPS,
    base: 5,
    shown: 2,
    window: Window {
        first_day: 20,
        last_day: 21,
        every_minutes: 30,
    },
    day: 21,
    panels: PANELS,
    facts: &[CO2_AT_DAWN, CO2_THAT_DAY, PH_LOW, PH_HIGH, PH_SWING, OXYGEN_THAT_DAY, GAS, PLANTS_END],
    headline: Claim::of("gas timer, gas", Here(GAS), Base(GAS), 1.0)
        .lower("With the gas {step} it takes {left} g instead of {right}; the lowest oxygen of day {day} is {oxygen_that_day} mg/L, {base} {base.oxygen_that_day}")
        .alike("With the gas {step} it takes as much gas as {base}: {left} g")
        .higher("With the gas {step} it takes {left} g, more than the {right} g {base}")
        .at_base("With the gas {step} it takes {left} g in {last_day} days, and pH swings by {ph_swing}"),
    claims: CLAIMS,
    notes: &[
        Note::new(Trace::Co2, Of::Step, Where::Highest, "{step}: {value}, day {day} {time}"),
        Note::new(Trace::Co2, Of::Step, Where::Lowest, "{value}, day {day} {time}"),
        Note::new(Trace::Ph, Of::Step, Where::Highest, "pH {value}, day {day} {time}"),
        Note::new(Trace::Oxygen, Of::Step, Where::Lowest, "oxygen {value}, day {day} {time}"),
    ],
    to_try: "In your own file let the gas come on two hours before the light, run it with --day 21, and look at the drop \
        checker on that chart: how late is it?",
    cannot: &[
        "Fish that gasp: the model tells milligrams, not breath. Watch animals for hours after any change of the gas.",
        "A valve that drifts, an empty cylinder, a timer that sticks open.",
    ],
};

macro_rules! on {
    ($from:literal) => {
        concat!("[gas]\non = \"", $from, "..17:30\"\n")
    };
}

#[rustfmt::skip]
const STEPS: &[Step] = &[
    Step { key: "with-the-lights", label: "on with the lights", lines: on!("11:30") },
    Step { key: "1-h-before", label: "on 1 h before the lights", lines: on!("10:30") },
    Step { key: "2-h-before", label: "on 2 h before the lights", lines: on!("09:30") },
    Step { key: "3-h-before", label: "on 3 h before the lights", lines: on!("08:30") },
    Step { key: "5-h-before", label: "on 5 h before the lights", lines: on!("06:30") },
    Step { key: "day-and-night", label: "on day and night", lines: "" },
];

const PANELS: &[Panel] = &[
    Panel {
        least: 30.0,
        ..panels::CO2
    },
    panels::PH,
    panels::OXYGEN,
];

const MORE_CO2: Claim = Claim::of(
    "gas timer, more CO2",
    Here(CO2_AT_DAWN),
    Base(CO2_AT_DAWN),
    1.0,
)
.lower(", though by lights-on there is {times} times as much CO2 in the water {base}")
.alike("")
.higher(", though by lights-on there is {times} times as much CO2 in the water");

const CLAIMS: &[Claim] = &[
    Claim::of("gas timer, dawn", Here(CO2_AT_DAWN), Base(CO2_AT_DAWN), 1.0)
        .lower("At lights-on of day {day} there are {left} mg/L of CO2 in the water, {base} {right}.")
        .alike("At lights-on of day {day} there are {left} mg/L of CO2 in the water, as many as {base}.")
        .higher("At lights-on of day {day} there are {left} mg/L of CO2 in the water, more than the {right} {base}.")
        .at_base("At lights-on of day {day} there are {left} mg/L of CO2 in the water."),
    Claim::of("gas timer, plants", Here(PLANTS_END), Base(PLANTS_END), 0.2)
        .lower("That costs the plants something: they weigh {left} g at the end, dry, {base} {right}.")
        .alike("That costs the plants nothing that shows: they weigh {left} g at the end, dry, {base} {right}.")
        .higher("The plants gain by it: they weigh {left} g at the end, dry, {base} {right}.")
        .at_base("The plants weigh {left} g at the end, dry."),
    Claim::of("gas timer, swing", Here(PH_SWING), Base(PH_SWING), 0.1)
        .higher("pH swings by {left} in the day, {base} by {right}: the price of the timer.")
        .alike("pH swings by {left} in the day, no clear difference to {right}.")
        .lower("pH swings by {left} in the day, less than the {right} {base}.")
        .at_base("pH swings by {left} in the day, between {ph_low} and {ph_high}."),
    Claim::of("gas timer, gas", Here(GAS), Base(GAS), 1.0)
        .lower("It takes {left} g of gas in {last_day} days, {base} {right} g.")
        .alike("It takes as much gas: {left} g in {last_day} days.")
        .higher("It takes more gas, {left} g in {last_day} days against {right} g.")
        .at_base("It takes {left} g of gas in {last_day} days."),
    Claim::of("gas timer, oxygen", Here(OXYGEN_THAT_DAY), Base(OXYGEN_THAT_DAY), 0.5)
        .alike("The lowest oxygen of the day is {left} mg/L, {base} {right}: no clear difference{cause}.")
        .lower("The lowest oxygen of the day is {left} mg/L, {base} {right}: here it makes a difference.")
        .higher("The lowest oxygen of the day is {left} mg/L, {base} {right}: the timer lifts it.")
        .at_base("The lowest oxygen of the day is {left} mg/L.")
        .because(&MORE_CO2),
    Claim::of("gas timer, night", Here(CO2_THAT_DAY), Here(CO2_LIMIT), 0.0)
        .lower("CO2 stays under the limit of {right} mg/L on that day; the highest is {left}.")
        .alike("CO2 just reaches the limit of {right} mg/L on that day.")
        .higher("CO2 climbs to {left} mg/L on that day, over the limit of {right} for animals."),
];
