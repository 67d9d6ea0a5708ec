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
    headline: Claim::of("starving, days", Here(DAYS_SOONER), Fixed(0.0, 1), 0.5)
        .higher("With {step}, ammonia peaks at {tan_peak} instead of {base.tan_peak} mg N/L, and tanks are ready {left} days sooner")
        .alike("With {step}, ammonia peaks at {tan_peak} instead of {base.tan_peak} mg N/L, and tanks are ready as soon: no clear difference ({left} days)")
        .lower("With {step}, tanks are ready {by} days later{cause}")
        .at_base("With {step}, ammonia peaks at {tan_peak} mg N/L, and {litres} L of water are changed")
        .because(&IN_SHORT),
    claims: CLAIMS,
    notes: &[
        Note::new(Trace::Ammonia, Of::Base, Where::Highest, "{base}: {value} on day {day}"),
        Note::new(Trace::Ammonia, Of::Step, Where::Highest, "{step}: {value} on day {day}"),
        Note::new(Trace::AmmoniaCapacity, Of::Step, Where::ThatDay, "{step}, day {day}: {value}"),
        Note::new(Trace::AmmoniaCapacity, Of::Base, Where::ThatDay, "{base}, day {day}: {value}"),
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

/// Why tanks are ready later: water in which nitrifiers are slow, or few of them.
const SLOWED: Claim = Claim::of("starving, slowed", Here(SPEED), Base(SPEED), 5.0)
    .lower(": their water leaves nitrite oxidisers {left} % of full speed on the mean, with {base} {right} %")
    .alike("{cause}")
    .higher("{cause}")
    .because(&FEW);
const FEW: Claim = Claim::of("starving, few", Here(CAPACITY), Base(CAPACITY), 2.0)
    .lower(": here they do starve, and on day {day} could turn over {left} mg N a day, with {base} {right}")
    .alike("")
    .higher("");
/// The same in a few words.
const IN_SHORT: Claim = Claim::of("starving, slowed in short", Here(SPEED), Base(SPEED), 5.0)
    .lower(", in water that leaves nitrite oxidisers {left} % of full speed")
    .alike("{cause}")
    .higher("{cause}")
    .because(&FEW_IN_SHORT);
const FEW_IN_SHORT: Claim = Claim::of(
    "starving, few in short",
    Here(CAPACITY),
    Base(CAPACITY),
    2.0,
)
.lower(": here they starve")
.alike("")
.higher("");
const FOOD: Claim = Claim::of("starving, less to eat", Here(TAN_PEAK), Base(TAN_PEAK), 0.1)
    .lower(": there was less to eat, {left} mg N/L at the highest instead of {right}")
    .alike("")
    .higher(": there was more to eat, {left} mg N/L at the highest instead of {right}");

const CLAIMS: &[Claim] = &[
    Claim::of("starving, food", Here(TAN_PEAK), Base(TAN_PEAK), 0.1)
        .lower("Food is carried out: ammonia peaks at {left} mg N/L instead of {right}.")
        .alike("Hardly any food is carried out: ammonia peaks at {left} mg N/L, against {right}.")
        .higher("Ammonia peaks higher for it, at {left} mg N/L against {right}.")
        .at_base("With {step}, ammonia peaks at {left} mg N/L."),
    Claim::of("starving, days", Here(DAYS_SOONER), Fixed(0.0, 1), 0.5)
        .higher("Still the tanks are ready sooner, by {left} days on the mean of the plausible ones; nitrite peaks at {nitrite_peak} mg N/L instead of {base.nitrite_peak}.")
        .alike("Still the tanks are ready as soon: {left} days apart on the mean of the plausible ones, no clear difference.")
        .lower("And the tanks are ready later, by {by} days on the mean of the plausible ones{cause}.")
        .at_base("Of 100 plausible tanks {ready_of_100} are ready by day {last_day}.")
        .because(&SLOWED),
    Claim::of("starving, capacity", Here(CAPACITY), Base(CAPACITY), 2.0)
        .lower("On day {day} the ammonia oxidisers could turn over {left} mg N a day, with {base} {right}{cause}.")
        .alike("On day {day} the ammonia oxidisers could turn over {left} mg N a day, with {base} {right}: no clear difference.")
        .higher("On day {day} the ammonia oxidisers could turn over {left} mg N a day, with {base} {right}{cause}.")
        .at_base("On day {day} the ammonia oxidisers could turn over {left} mg N a day, the nitrite oxidisers {nitrite_capacity}.")
        .because(&FOOD),
    Claim::of("starving, enough", Here(CAPACITY), Here(FEED), 0.5)
        .higher("That is more than the {right} mg N a day of a group of small fish.")
        .alike("That is about what a group of small fish brings, {right} mg N a day.")
        .lower("That is less than the {right} mg N a day of a group of small fish."),
];
