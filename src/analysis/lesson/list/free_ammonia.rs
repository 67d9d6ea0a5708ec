//! Free ammonia and pH.

use super::super::claim::Claim;
use super::super::claim::Number::{Base, Fixed, Here};
use super::super::fact::{
    FREE_IN_THE_EVENING, FREE_LIMIT, FREE_SHARE, FREE_THAT_DAY, PH_THAT_DAY, TAN_THAT_DAY,
};
use super::super::note::{Note, Of, Where};
use super::super::trace::{Line, Panel, Trace, limits};
use super::super::{Lesson, Step, Term, Window};
use super::words::{KH, TOTAL_AMMONIA};

/// The lesson.
pub const LESSON: Lesson = Lesson {
    key: "free-ammonia",
    title: "Free ammonia and pH",
    question: "Two tanks get the same single dose of ammonium on day 1, and the card reads the same in both. Why is it harmless in one and dangerous in the other?",
    terms: &[
        TOTAL_AMMONIA,
        Term {
            word: "free ammonia",
            meaning: "the part of it (NH3) that passes gills and harms; the rest is ammonium (NH4), which hardly does; pH decides \
                how much is which",
        },
        KH,
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
    headline: Claim::of("free ammonia, limit", Here(FREE_THAT_DAY), Here(FREE_LIMIT), 0.0)
        .lower("On day {day}, at pH {ph_that_day}, a total of {tan_that_day} mg N/L holds {left} mg N/L of free ammonia: within the limit of {right}")
        .alike("On day {day}, at pH {ph_that_day}, a total of {tan_that_day} mg N/L holds as much free ammonia as the limit: {right} mg N/L")
        .higher("On day {day}, at pH {ph_that_day}, a total of {tan_that_day} mg N/L holds {left} mg N/L of free ammonia: {times} times the limit"),
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
        line: None,
    },
    Panel {
        title: "Total ammonia",
        traces: &[Trace::Ammonia],
        least: 1.2,
        from_zero: true,
        line: None,
    },
    Panel {
        title: "Free ammonia",
        traces: &[Trace::FreeAmmonia],
        least: 0.03,
        from_zero: true,
        line: Line::of("limit", |step| limits(step).free_ammonia.value),
    },
];

const TOTAL: Claim = Claim::of(
    "free ammonia, same total",
    Here(TAN_THAT_DAY),
    Base(TAN_THAT_DAY),
    0.1,
)
.alike(", with the same total as in water of {base}")
.lower(", with a lower total than in water of {base}")
.higher(", with a higher total than in water of {base}")
.at_base("");
const IN_THE_EVENING: Claim =
    Claim::of("free ammonia, if pH rises", Here(FREE_IN_THE_EVENING), Here(FREE_LIMIT), 0.0)
        .higher(": at pH 8.5 the same total would be {left} mg N/L of free ammonia, {times} times the limit, without a drop coming in")
        .alike(": at pH 8.5 the same total would just reach the limit")
        .lower(": even at pH 8.5 the same total would stay within the limit, at {left} mg N/L of free ammonia");

const CLAIMS: &[Claim] = &[
    Claim::of("free ammonia, total", Here(TAN_THAT_DAY), Base(TAN_THAT_DAY), 0.1)
        .alike("The total is the same: {left} mg N/L on day {day}, in water of {step} as of {base}. A card shows no difference.")
        .lower("The total is lower here, {left} against {right} mg N/L in water of {base}.")
        .higher("The total is higher here, {left} against {right} mg N/L in water of {base}.")
        .at_base("The total is {left} mg N/L on day {day}."),
    Claim::of("free ammonia, pH", Here(PH_THAT_DAY), Base(PH_THAT_DAY), 0.1)
        .higher("pH is {left}, in water of {base} {right}.")
        .alike("pH is about the same, {left} and {right}.")
        .lower("pH is lower here, {left} against {right}.")
        .at_base("pH is {left}."),
    Claim::of("free ammonia, share", Here(FREE_SHARE), Base(FREE_SHARE), 0.01)
        .higher("Of every 100 parts of that total, {left} are free ammonia, {times} times as many as at pH {base.ph_that_day}.")
        .alike("Of every 100 parts of that total, {left} are free ammonia, as many as in water of {base}.")
        .lower("Of every 100 parts of that total, {left} are free ammonia, fewer than in water of {base} ({right}).")
        .at_base("Of every 100 parts of that total, {left} are free ammonia."),
    Claim::of("free ammonia, harm", Here(FREE_THAT_DAY), Here(FREE_LIMIT), 0.0)
        .lower("That is {left} mg N/L, within the limit of {right}: no danger from it at this pH{cause}.")
        .alike("That is as much as the limit, {right} mg N/L.")
        .higher("That is {left} mg N/L, {times} times the limit of {right}, and dangerous{cause}.")
        .because(&TOTAL),
    Claim::of("free ammonia, pH that harms", Here(PH_THAT_DAY), Fixed(7.0, 1), 0.3)
        .higher("Here pH is over 7: of the same total one whole step of pH more makes {free_step_up} times as much free ammonia.")
        .alike("Here pH is about 7.")
        .lower("Here pH is under 7{cause}.")
        .because(&IN_THE_EVENING),
];
