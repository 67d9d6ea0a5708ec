//! Gas on a timer, and the night.

use super::super::claim::Claim;
use super::super::claim::Number::{Base, Here};
use super::super::fact::{
    CO2_AT_DAWN, CO2_LIMIT, CO2_THAT_DAY, FREE_HIGH, FREE_LIMIT, GAS, KH_THAT_DAY, NITRIFIERS_TOOK,
    OXYGEN_THAT_DAY, PH_HIGH, PH_SWING, PLANTS_END, PLANTS_FIRST, PLANTS_GAINED, TAN_THAT_DAY,
};
use super::super::note::{Note, Of, Where};
use super::super::trace::{Panel, Trace};
use super::super::{Lesson, Step, Term, Window};
use super::panels;
use super::words::{CO2, FREE_AMMONIA, KH, LIMIT, OXYGEN, TOTAL_AMMONIA};

/// Plants that differ by no more weigh the same, g: the last digit that is told.
const WEIGHED_G: f64 = 0.01;

/// The lesson.
pub const LESSON: Lesson = Lesson {
    key: "gas-timer",
    title: "Gas on a timer, and the night",
    question: "Gas that goes off at night lets pH swing. Should it go off all the same: what does that save, and what does it cost?",
    terms: &[
        CO2,
        TOTAL_AMMONIA,
        FREE_AMMONIA,
        KH,
        OXYGEN,
        LIMIT,
        Term {
            word: "tuned valve",
            meaning: "in every step the valve is set so that CO2 reaches 26 mg/L at its highest on the tuning days, and not more",
        },
    ],
    scenario: include_str!("../scenarios/gas-timer.toml"),
    input: "when the gas comes on; lights 11:30 to 18:30, gas off at 17:30",
    steps: STEPS,
    base: 5,
    shown: 2,
    window: Window {
        first_day: 7,
        last_day: 8,
        every_minutes: 30,
    },
    // before nitrification: later pH falls further on the timer, whose nitrifiers use up more KH
    day: 8,
    panels: PANELS,
    facts: &[GAS, PLANTS_GAINED, CO2_AT_DAWN, PH_HIGH, FREE_HIGH, TAN_THAT_DAY, KH_THAT_DAY, OXYGEN_THAT_DAY],
    headline: Claim::of("gas timer, gas", Here(GAS), Base(GAS), 1.0)
        .lower("Yes, it saves gas: with the gas {step}, {left} g do for {last_day} days instead of {right}{cause}")
        .alike("It saves nothing: with the gas {step} it takes {left} g for {last_day} days, as much as {base}{cause}")
        .higher("No, it takes more gas: with the gas {step}, {left} g for {last_day} days instead of {right}{cause}")
        .at_base("With the gas {step}, {left} g go in {last_day} days, and pH stays between {ph_low} and {ph_high} on day {day}")
        .because(&COSTS),
    claims: CLAIMS,
    notes: &[
        Note::new(Trace::Co2, Of::Step, Where::Highest, "{step}: {value}, day {day} {time}"),
        Note::new(Trace::Co2, Of::Step, Where::Lowest, "{value}, day {day} {time}"),
        Note::new(Trace::Ph, Of::Step, Where::Highest, "pH {value}, day {day} {time}"),
        Note::new(Trace::FreeAmmonia, Of::Step, Where::Highest, "{value}, day {day} {time}"),
    ],
    to_try: "Run one of these tanks on its own and look at the drop checker on the chart of day 8, firstfill run \
        mine/gas-timer-2-h-before.toml --day 8: how late is it?",
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
    panels::FREE_AMMONIA,
];

const MORE_CO2: Claim = Claim::of(
    "gas timer, more CO2",
    Here(CO2_AT_DAWN),
    Base(CO2_AT_DAWN),
    1.0,
)
.lower(", though the water there holds {times} times as much CO2 when the lights come on")
.alike("")
.higher(", though the water here holds {times} times as much CO2 when the lights come on");
/// What the nitrifiers have used of KH.
const USED: Claim = Claim::of(
    "gas timer, used",
    Here(NITRIFIERS_TOOK),
    Base(NITRIFIERS_TOOK),
    0.1,
)
.lower(", of which nitrifiers have used less ({left} dKH against {right})")
.alike("")
.higher(", of which nitrifiers have used more ({left} dKH against {right})");

/// What it costs.
const COSTS: Claim = Claim::of("gas timer, price", Here(FREE_HIGH), Base(FREE_HIGH), 0.001)
    .higher("; the price is free ammonia, {left} mg N/L at the pH of the night of day {day} instead of {right}{cause}")
    .alike("{cause}")
    .lower("{cause}")
    .because(&GROWTH);
/// What it costs the plants: less gained, or more lost, than with gas all the time.
const GROWTH: Claim = Claim::of(
    "gas timer, growth",
    Here(PLANTS_GAINED),
    Base(PLANTS_GAINED),
    WEIGHED_G,
)
.lower(", and growth: plants change by {left} g from day 1 on instead of {right}")
.alike("; the plants gain or lose as much, {left} g")
.higher("; plants change by {left} g from day 1 on instead of {right}");

const CLAIMS: &[Claim] = &[
    Claim::of("gas timer, weight", Here(PLANTS_END), Here(PLANTS_FIRST), WEIGHED_G)
        .lower("The plants shrink from {right} g, dry, on day 1 to {left} g at the end, with gas {base} from {base.plants_first} to {base.plants_end} g.")
        .alike("The plants weigh {right} g, dry, on day 1 and {left} g at the end, with gas {base} {base.plants_first} and {base.plants_end} g.")
        .higher("The plants grow from {right} g, dry, on day 1 to {left} g at the end, with gas {base} from {base.plants_first} to {base.plants_end} g.")
        .at_base("From day 1 to day {last_day} the plants go from {right} to {left} g, dry."),
    Claim::of("gas timer, swing", Here(PH_SWING), Base(PH_SWING), 0.1)
        .higher("pH swings by {left} on day {day}, up to {ph_high} before the gas comes on, with gas {base} by {right}.")
        .alike("pH swings by {left} on day {day}, no clear difference to {right}.")
        .lower("pH swings by {left} on day {day}, less than the {right} with gas {base}.")
        .at_base("pH swings by {left} on day {day}."),
    Claim::of("gas timer, free ammonia", Here(FREE_HIGH), Here(FREE_LIMIT), 0.0)
        .higher("That free ammonia is over the limit of {right} mg N/L, out of {tan_that_day} mg N/L of total ammonia: no tank for animals yet.")
        .alike("That free ammonia is just the limit of {right} mg N/L, out of {tan_that_day} mg N/L of total ammonia.")
        .lower("Free ammonia reaches {left} mg N/L, within the limit of {right}, out of {tan_that_day} mg N/L of total ammonia."),
    Claim::of("gas timer, stage", Here(KH_THAT_DAY), Base(KH_THAT_DAY), 0.1)
        .alike("Both tanks have the same KH that day, {left} dKH here and {right} with gas {base}: what differs is the gas.")
        .lower("KH is lower here, {left} dKH, with gas {base} {right}{cause}; so not all of the difference in pH is the gas.")
        .higher("KH is higher here, {left} dKH, with gas {base} {right}{cause}; so not all of the difference in pH is the gas.")
        .at_base("KH is {left} dKH on that day.")
        .because(&USED),
    Claim::of("gas timer, dawn", Here(CO2_AT_DAWN), Base(CO2_AT_DAWN), 1.0)
        .lower("When the lights come on there are {left} mg/L of CO2 in the water, with gas {base} {right}.")
        .alike("When the lights come on there are {left} mg/L of CO2 in the water, as many as with gas {base}.")
        .higher("When the lights come on there are {left} mg/L of CO2 in the water, more than the {right} with gas {base}.")
        .at_base("When the lights come on there are {left} mg/L of CO2 in the water."),
    Claim::of("gas timer, oxygen", Here(OXYGEN_THAT_DAY), Base(OXYGEN_THAT_DAY), 0.5)
        .alike("Oxygen falls to {left} mg/L at the lowest, with gas {base} to {right}: no clear difference{cause}.")
        .lower("Oxygen falls to {left} mg/L at the lowest, with gas {base} to {right}: here it makes a difference.")
        .higher("Oxygen falls to {left} mg/L at the lowest, with gas {base} to {right}: the timer lifts it.")
        .at_base("Oxygen falls to {left} mg/L at the lowest.")
        .because(&MORE_CO2),
    Claim::of("gas timer, night", Here(CO2_THAT_DAY), Here(CO2_LIMIT), 0.0)
        .lower("CO2 stays under the limit of {right} mg/L; the highest of the day is {left}.")
        .alike("CO2 just reaches the limit of {right} mg/L.")
        .higher("CO2 climbs to {left} mg/L, over the limit of {right} for animals."),
];
