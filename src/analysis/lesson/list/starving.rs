//! Does changing water starve the nitrifiers?

use super::super::claim::Claim;
use super::super::claim::Number::{Base, Fixed, Here};
use super::super::fact::{
    CAPACITY, DAYS_SOONER, FEED, LITRES, NITRITE_CAPACITY, NITRITE_PEAK, READY_OF_100, TAN_PEAK,
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
        .higher("With {step}, much food is carried out, and the tank is ready {left} days sooner")
        .alike("With {step}, food is carried out, and the tank is ready as soon: no clear difference ({left} days)")
        .lower("With {step}, the tank is ready {by} days later: they starve here")
        .at_base("With {step}, ammonia peaks at {tan_peak} mg N/L, and all of it is there to be eaten"),
    claims: CLAIMS,
    notes: &[
        Note::new(Trace::Ammonia, Of::Base, Where::Highest, "{base}: {value} on day {day}"),
        Note::new(Trace::Ammonia, Of::Step, Where::Highest, "{step}: {value} on day {day}"),
        Note::new(Trace::AmmoniaCapacity, Of::Step, Where::ThatDay, "{step}, day {day}: {value}"),
        Note::new(Trace::AmmoniaCapacity, Of::Base, Where::ThatDay, "{base}, day {day}: {value}"),
    ],
    to_try: "Write the KH of your tap into the water named own and run the lesson on your files: what the refill brings counts \
        for more than what the bucket takes.",
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

const CLAIMS: &[Claim] = &[
    Claim::of("starving, food", Here(TAN_PEAK), Base(TAN_PEAK), 0.1)
        .lower("Food is carried out: ammonia peaks at {left} mg N/L instead of {right}.")
        .alike("Hardly any food is carried out: ammonia peaks at {left} mg N/L, against {right}.")
        .higher("Ammonia peaks higher for it, at {left} mg N/L against {right}.")
        .at_base("With {step}, ammonia peaks at {left} mg N/L."),
    Claim::of("starving, days", Here(DAYS_SOONER), Fixed(0.0, 1), 0.5)
        .higher("Still the tanks are ready sooner, by {left} days on the mean of the plausible ones: there is less to be turned over, and enough to live on.")
        .alike("Still the tanks are ready as soon: {left} days apart on the mean of the plausible ones, no clear difference.")
        .lower("And the tanks are ready later, by {by} days on the mean of the plausible ones: here they do starve.")
        .at_base("Of 100 plausible tanks {ready_of_100} are ready by day {last_day}."),
    Claim::of("starving, capacity", Here(CAPACITY), Base(CAPACITY), 2.0)
        .lower("On day {day} the ammonia oxidisers could turn over {left} mg N a day, with {base} {right}: there are fewer of them, as there is less to do.")
        .alike("On day {day} the ammonia oxidisers could turn over {left} mg N a day, with {base} {right}: no clear difference.")
        .higher("On day {day} the ammonia oxidisers could turn over {left} mg N a day, with {base} {right}: there are more of them.")
        .at_base("On day {day} the ammonia oxidisers could turn over {left} mg N a day, the nitrite oxidisers {nitrite_capacity}."),
    Claim::of("starving, enough", Here(CAPACITY), Here(FEED), 0.5)
        .higher("That is more than the {right} mg N a day of a group of small fish.")
        .alike("That is about what a group of small fish brings, {right} mg N a day.")
        .lower("That is less than the {right} mg N a day of a group of small fish."),
];
