//! Free ammonia and pH.

use super::super::claim::Claim;
use super::super::claim::Number::{Base, Fixed, Here};
use super::super::fact::{
    FREE_IN_THE_EVENING, FREE_LIMIT, FREE_SHARE, FREE_THAT_DAY, PH_THAT_DAY, TAN_THAT_DAY,
};
use super::super::note::{Note, Of, Where};
use super::super::trace::{Panel, Trace};
use super::super::{Lesson, Step, Window};
use super::panels;
use super::words::{FREE_AMMONIA, KH, LIMIT, TOTAL_AMMONIA};

/// The lesson.
pub const LESSON: Lesson = Lesson {
    key: "free-ammonia",
    title: "Free ammonia and pH",
    question: "Two tanks get the same single dose of ammonium on day 1, and the card reads the same in both. Why is it harmless in one and dangerous in the other?",
    terms: &[
        TOTAL_AMMONIA,
        FREE_AMMONIA,
        KH,
        LIMIT,
    ],
    scenario: include_str!("../scenarios/free-ammonia.toml"),
    input: "the KH of the water, which sets its pH",
    steps: STEPS,
    base: 0,
    shown: 6,
    window: Window {
        first_day: 0,
        last_day: 7,
        every_minutes: 60,
    },
    day: 3,
    panels: PANELS,
    facts: &[PH_THAT_DAY, TAN_THAT_DAY, FREE_SHARE, FREE_THAT_DAY, FREE_LIMIT],
    headline: Claim::of("free ammonia, harm", Here(FREE_THAT_DAY), Here(FREE_LIMIT), 0.0)
        .lower("At pH {ph_that_day}, a total of {tan_that_day} mg N/L holds {left} mg N/L of free ammonia: within the limit")
        .alike("At pH {ph_that_day}, a total of {tan_that_day} mg N/L holds as much free ammonia as the limit: {right} mg N/L")
        .higher("At pH {ph_that_day}, a total of {tan_that_day} mg N/L holds {left} mg N/L of free ammonia: {over} the limit"),
    claims: CLAIMS,
    notes: &[
        Note::new(Trace::Ph, Of::Step, Where::ThatDay, "{step}: pH {value}"),
        Note::new(Trace::Ph, Of::Base, Where::ThatDay, "{base}: pH {value}"),
        Note::new(Trace::Ammonia, Of::Step, Where::ThatDay, "after the dose: {value} mg N/L in all"),
        Note::new(Trace::FreeAmmonia, Of::Step, Where::ThatDay, "{step}: {value}, day {day}"),
    ],
    to_try: "Find out the pH of your tank in the evening, when it is highest or the gas is off, and read the table above: what \
        would a total of 1 be there?",
    cannot: &[
        "What an amount of free ammonia does to a certain animal in a certain time. The limit is a cautious one.",
        "pH that swings with gas and light: this tank has neither, so that one thing differs between the steps.",
    ],
};

macro_rules! kh {
    ($dkh:literal) => {
        concat!("[water.tap]\nalkalinity = \"", $dkh, " dKH\"\n")
    };
}

#[rustfmt::skip]
const STEPS: &[Step] = &[
    Step { key: "0.02-dkh", label: "0.02 dKH", lines: "" },
    Step { key: "0.1-dkh", label: "0.1 dKH", lines: kh!("0.1") },
    Step { key: "0.3-dkh", label: "0.3 dKH", lines: kh!("0.3") },
    Step { key: "1-dkh", label: "1 dKH", lines: kh!("1") },
    Step { key: "3-dkh", label: "3 dKH", lines: kh!("3") },
    Step { key: "6-dkh", label: "6 dKH", lines: kh!("6") },
    Step { key: "12-dkh", label: "12 dKH", lines: kh!("12") },
];

const PANELS: &[Panel] = &[
    Panel {
        title: "pH",
        traces: &[Trace::Ph],
        least: 8.0,
        from_zero: false,
        lines: &[],
    },
    Panel {
        title: "Total ammonia",
        traces: &[Trace::Ammonia],
        least: 1.2,
        from_zero: true,
        lines: &[],
    },
    panels::FREE_AMMONIA,
];

const IN_THE_EVENING: Claim = Claim::of(
    "free ammonia, if pH rises",
    Here(FREE_IN_THE_EVENING),
    Here(FREE_LIMIT),
    0.0,
)
.higher(", {over} the limit")
.alike(", as much as the limit")
.lower(", still within the limit");

const CLAIMS: &[Claim] = &[
    Claim::of("free ammonia, total", Here(TAN_THAT_DAY), Base(TAN_THAT_DAY), 0.1)
        .alike("A card shows no difference: in water of {base} it reads {right} mg N/L too.")
        .lower("The total is lower here; in water of {base} it is {right} mg N/L.")
        .higher("The total is higher here; in water of {base} it is {right} mg N/L.")
        .at_base("The other settings are held against this one."),
    Claim::of("free ammonia, pH", Here(PH_THAT_DAY), Base(PH_THAT_DAY), 0.1)
        .higher("What differs is pH: in water of {base} it is {right}.")
        .alike("pH is about the same in water of {base}: {right}.")
        .lower("pH is lower here; in water of {base} it is {right}.")
        .at_base("pH is {left} in such water."),
    Claim::of("free ammonia, share", Here(FREE_SHARE), Base(FREE_SHARE), 0.01)
        .higher("Of every 100 parts of the total {left} are free ammonia, {times} times as many as in water of {base}.")
        .alike("Of every 100 parts of the total {left} are free ammonia, as many as in water of {base}.")
        .lower("Of every 100 parts of the total {left} are free ammonia, fewer than the {right} in water of {base}.")
        .at_base("Of every 100 parts of the total {left} are free ammonia."),
    Claim::of("free ammonia, there", Base(FREE_THAT_DAY), Here(FREE_LIMIT), 0.0)
        .lower("In water of {base} the same dose makes {left} mg N/L of free ammonia, within the limit of {right}.")
        .alike("In water of {base} the same dose makes as much free ammonia as the limit, {right} mg N/L.")
        .higher("In water of {base} too the same dose makes more free ammonia than the limit of {right}: {left} mg N/L.")
        .at_base("The limit is {free_limit} mg N/L."),
    Claim::of("free ammonia, pH that harms", Here(PH_THAT_DAY), Fixed(7.0, 1), 0.3)
        .higher("If pH rose by one more, the same total would hold {free_step_up} times as much free ammonia.")
        .alike("If pH rose by one, the same total would hold {free_step_up} times as much free ammonia.")
        .lower("At pH 8.5 the same total would hold {free_in_the_evening} mg N/L of free ammonia{cause}.")
        .because(&IN_THE_EVENING),
];
