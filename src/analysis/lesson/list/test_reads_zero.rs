//! The test reads zero: is it ready?

use super::super::claim::Number::{Base, Fixed, Here};
use super::super::claim::{Claim, Stands};
use super::super::fact::{
    CAME_IN, CAPACITY, CAUGHT_UP_DAY, FEED, FEED_PER_L, NITRITE_END, NITRITE_LIMIT, NITRITE_PEAK,
    TAN_LIMIT, TAN_PEAK, TAN_PEAK_DAY, TAN_THAT_DAY,
};
use super::super::note::{Note, Of, Where};
use super::super::trace::{Line, Panel, Trace, limits};
use super::super::{Lesson, Step, Window};
use super::words::{CAPACITY as CAPACITY_WORD, LIMIT, NITRIFIERS, NITRITE, TOTAL_AMMONIA};

/// The least a card shows: half of its first step, 0.1 mg NH4/L.
const CARD_SHOWS: f64 = 0.04;

/// The day on which the fish go in.
const FISH_DAY: f64 = 7.0;

/// The lesson.
pub const LESSON: Lesson = Lesson {
    key: "test-reads-zero",
    title: "The test reads zero: is it ready?",
    question: "A tank on sand has stood for a week, and the test reads zero. Does that mean that fish can go in?",
    terms: &[TOTAL_AMMONIA, NITRITE, NITRIFIERS, CAPACITY_WORD, LIMIT],
    scenario: include_str!("../scenarios/test-reads-zero.toml"),
    input: "how much sponge of a running filter was put in on day 0",
    steps: STEPS,
    base: 0,
    shown: 0,
    window: Window {
        first_day: 0,
        last_day: 41,
        every_minutes: 360,
    },
    day: 7,
    panels: PANELS,
    facts: &[TAN_THAT_DAY, CAPACITY, FEED, TAN_PEAK, TAN_PEAK_DAY, NITRITE_PEAK, NITRITE_END],
    headline: Claim::of("zero, capacity", Here(CAPACITY), Here(FEED), 0.0)
        .lower("No: on day {day} the nitrifiers could turn over {left} mg N a day, but the feed of the fish will bring {right}")
        .alike("Just: on day {day} the nitrifiers could turn over {left} mg N a day, as much as the feed of the fish will bring")
        .higher("Yes: on day {day} the nitrifiers could turn over {left} mg N a day; the feed of the fish will bring less, {right}"),
    claims: CLAIMS,
    notes: &[
        Note::new(Trace::Ammonia, Of::Step, Where::ThatDay, "fish go in: {value}"),
        Note::new(Trace::Ammonia, Of::Step, Where::Highest, "ammonia {value}, day {day}"),
        Note::new(Trace::Nitrite, Of::Step, Where::Highest, "nitrite {value}, day {day}"),
        Note::new(Trace::AmmoniaCapacity, Of::Step, Where::ThatDay, "day {day}: {value}"),
    ],
    to_try: "Move the slider up until the capacity on day 7 reaches the feed. Then run your own tank and look at its chart \
        named capacity: where do the lines cross?",
    cannot: &[
        "How fish feel. Never use animals to start a tank, whatever a test reads.",
        "How much a sponge of yours carries: a fist of one filter holds many times that of another.",
        "Microbes that come with plants or dust in your home: how many is known to a factor of ten.",
    ],
};

#[rustfmt::skip]
const STEPS: &[Step] = &[
    Step { key: "none", label: "nothing brought in", lines: "" },
    Step { key: "20-ml", label: "20 mL of sponge", lines: "[seed]\nsponge = { day = 0, time = \"12:00\", amount = \"20 mL\" }\n" },
    Step { key: "50-ml", label: "50 mL of sponge", lines: "[seed]\nsponge = { day = 0, time = \"12:00\", amount = \"50 mL\" }\n" },
    Step { key: "100-ml", label: "100 mL of sponge", lines: "[seed]\nsponge = { day = 0, time = \"12:00\", amount = \"100 mL\" }\n" },
    Step { key: "200-ml", label: "200 mL of sponge", lines: "[seed]\nsponge = { day = 0, time = \"12:00\", amount = \"200 mL\" }\n" },
    Step { key: "500-ml", label: "500 mL of sponge", lines: "[seed]\nsponge = { day = 0, time = \"12:00\", amount = \"500 mL\" }\n" },
];

const PANELS: &[Panel] = &[
    Panel {
        title: "Total ammonia and nitrite, fish on day 7",
        traces: &[Trace::Ammonia, Trace::Nitrite],
        least: 0.4,
        from_zero: true,
        lines: &[
            Line::for_one(Trace::Ammonia, "limit, ammonia", |step| {
                limits(step).total_ammonia.value
            }),
            Line::for_one(Trace::Nitrite, "limit, nitrite", |step| {
                limits(step).nitrite.value
            }),
        ],
    },
    Panel {
        title: "Capacity of the nitrifiers",
        traces: &[Trace::AmmoniaCapacity, Trace::NitriteCapacity],
        least: 20.0,
        from_zero: true,
        lines: &[Line::of("feed of the fish", |step| {
            step.outcome.verdict.feed_mg_n_per_day
        })],
    },
];

/// Whether nitrite is still over its limit at the end.
const STILL: Claim = Claim::of("zero, still", Here(NITRITE_END), Here(NITRITE_LIMIT), 0.0)
    .higher("; at the end, on day {last_day}, it is still {left}")
    .alike("; at the end, on day {last_day}, it is just there")
    .lower("; at the end, on day {last_day}, it is {left}");
/// Why ammonia keeps to its limit though too few nitrifiers were there when the fish went in.
const GROWN: Claim = Claim::of("zero, grown", Here(CAUGHT_UP_DAY), Fixed(FISH_DAY, 0), 0.0)
    .higher(
        ": the nitrifiers keep growing, and by day {left} they can turn over what the feed brings",
    )
    .alike("")
    .lower("")
    .when(Stands::OnlyRight, "");

#[rustfmt::skip]
const CLAIMS: &[Claim] = &[
    Claim::of("zero, the card", Here(TAN_THAT_DAY), Fixed(CARD_SHOWS, 2), 0.0)
        .lower("On the morning of day {day} there are {left} mg N/L of ammonia in the water, less than a card can show: the test reads zero.")
        .alike("On the morning of day {day} there are {left} mg N/L of ammonia in the water, about the least a card can show.")
        .higher("On the morning of day {day} there are {left} mg N/L of ammonia in the water: the test does not read zero."),
    Claim::of("zero, came in", Here(CAME_IN), Here(FEED_PER_L), 0.0)
        .lower("In {day} days only {left} mg N/L of ammonia have come into the water; the feed will bring {right} in one day.")
        .alike("In {day} days {left} mg N/L of ammonia have come into the water, what the feed will bring in one day.")
        .higher("In {day} days {left} mg N/L of ammonia have come into the water; the feed will bring {right} in one day."),
    Claim::of("zero, two kinds", Here(TAN_THAT_DAY), Base(TAN_THAT_DAY), CARD_SHOWS)
        .alike("The test cannot tell this tank from one with {base}, which holds {right}.")
        .lower("The test tells this tank from one with {base}, which holds {right}.")
        .higher("The test tells this tank from one with {base}, which holds {right}.")
        .at_base("The other settings are held against this one."),
    Claim::of("zero, ammonia after", Here(TAN_PEAK), Here(TAN_LIMIT), 0.0)
        .lower("With the fish in, ammonia stays at {left} mg N/L or less, within the limit of {right}{cause}.")
        .alike("With the fish in, ammonia just reaches the limit of {right} mg N/L.")
        .higher("With the fish in, ammonia climbs to {left} mg N/L on day {tan_peak_day}, {over} the limit of {right}.")
        .because(&GROWN),
    Claim::of("zero, against none", Here(TAN_PEAK), Base(TAN_PEAK), 0.02)
        .lower("With {base} it would have been {right} mg N/L.")
        .alike("With {base} it would have been much the same, {right} mg N/L.")
        .higher("With {base} it would have been less, {right} mg N/L.")
        .at_base("The fish are fed on all the same, {feed} mg N a day."),
    Claim::of("zero, nitrite after", Here(NITRITE_PEAK), Here(NITRITE_LIMIT), 0.0)
        .lower("Nitrite stays at {left} mg N/L or less, within its limit of {right}.")
        .alike("Nitrite just reaches its limit of {right} mg N/L.")
        .higher("Nitrite comes after it: {left} mg N/L on day {nitrite_peak_day}, {over} its limit of {right}{cause}.")
        .because(&STILL),
];
