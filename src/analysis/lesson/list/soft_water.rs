//! Soft water that runs out of alkalinity.

use super::super::claim::Claim;
use super::super::claim::Number::{Base, Fixed, Here};
use super::super::fact::{
    DAYS_SOONER, KH_LOW, KH_THAT_DAY, NITRIFIERS_TOOK, NITRITE_PEAK, READY_DAY, READY_OF_100,
    SOIL_TOOK, SPEED, TAN_PEAK,
};
use super::super::note::{Note, Of, Where};
use super::super::trace::{Panel, Trace};
use super::super::{EIGHT_WEEKS, Lesson, Step};
use super::panels;
use super::words::{KH, NITRIFIERS, NITRITE, PLAUSIBLE, READY, TOTAL_AMMONIA};

/// The lesson.
pub const LESSON: Lesson = Lesson {
    key: "soft-water",
    title: "Soft water that runs out of alkalinity",
    question: "Ammonia and nitrite stand still for weeks in soft water. What is missing?",
    terms: &[KH, TOTAL_AMMONIA, NITRITE, NITRIFIERS, READY, PLAUSIBLE],
    scenario: include_str!("../scenarios/soft-water.toml"),
    input: "the KH of the tap",
    steps: STEPS,
    base: 6,
    shown: 1,
    window: EIGHT_WEEKS,
    day: 28,
    panels: PANELS,
    facts: &[KH_LOW, KH_THAT_DAY, SPEED, TAN_PEAK, NITRITE_PEAK, DAYS_SOONER, READY_DAY, READY_OF_100],
    headline: Claim::of("soft water, of 100", Here(READY_OF_100), Base(READY_OF_100), 3.0)
        .lower("{cause}with a tap of {step}, {left} of 100 plausible tanks are ready by day {last_day}, with {base} {right}")
        .alike("With a tap of {step}, as many plausible tanks are ready by day {last_day} as with {base}: {left} of 100")
        .higher("With a tap of {step}, {left} of 100 plausible tanks are ready by day {last_day}, with {base} {right}")
        .at_base("With a tap of {step}, {left} of 100 plausible tanks are ready by day {last_day}")
        .because(&MISSING),
    claims: CLAIMS,
    notes: &[
        Note::new(Trace::Kh, Of::Step, Where::Lowest, "{step}: down to {value} on day {day}"),
        Note::new(Trace::Kh, Of::Base, Where::Lowest, "{base}: down to {value} on day {day}"),
        Note::new(Trace::Nitrite, Of::Step, Where::Highest, "{step}: {value} on day {day}"),
        Note::new(Trace::Ammonia, Of::Step, Where::ThatDay, "{step}, day {day}: {value}"),
    ],
    to_try: "Add a dose of bicarbonate at the end of soft-water-1-dkh.toml: a line [doses], and under it \
        kh = { day = 21, alkalinity = \"2 dKH\" }. Does it come loose?",
    cannot: &[
        "Your soil. How far a soil pulls KH down hangs on two numbers that nobody has measured; these were chosen harsh.",
        "Stone or shell that dissolves and gives KH back.",
        "What a jump of pH does to animals: never raise KH fast with animals in.",
    ],
};

macro_rules! tap {
    ($dkh:literal) => {
        concat!("[water.tap]\nalkalinity = \"", $dkh, " dKH\"\n")
    };
}

#[rustfmt::skip]
const STEPS: &[Step] = &[
    Step { key: "0.5-dkh", label: "0.5 dKH", lines: tap!("0.5") },
    Step { key: "1-dkh", label: "1 dKH", lines: tap!("1") },
    Step { key: "2-dkh", label: "2 dKH", lines: tap!("2") },
    Step { key: "3-dkh", label: "3 dKH", lines: tap!("3") },
    Step { key: "4-dkh", label: "4 dKH", lines: tap!("4") },
    Step { key: "6-dkh", label: "6 dKH", lines: tap!("6") },
    Step { key: "8-dkh", label: "8 dKH", lines: "" },
];

const PANELS: &[Panel] = &[
    Panel {
        title: "KH of the tank",
        traces: &[Trace::Kh],
        least: 2.0,
        from_zero: true,
        lines: &[],
    },
    panels::AMMONIA,
    panels::NITRITE,
];

/// What is missing where too few are ready.
const MISSING: Claim = Claim::of("soft water, missing", Here(SPEED), Base(SPEED), 5.0)
    .lower("what is missing is KH: ")
    .alike("")
    .higher("");

const CLAIMS: &[Claim] = &[
    Claim::of("soft water, KH", Here(KH_THAT_DAY), Base(KH_THAT_DAY), 0.05)
        .lower("On day {day} KH is {left} dKH; with a tap of {base} it is {right}.")
        .alike("On day {day} KH is {left} dKH, about as with a tap of {base} ({right}).")
        .higher("On day {day} KH is {left} dKH, more than the {right} with a tap of {base}.")
        .at_base("On day {day} KH is {left} dKH of the {tap_kh} that the tap brings."),
    Claim::of("soft water, taken", Here(SOIL_TOOK), Here(NITRIFIERS_TOOK), 0.1)
        .higher("By then the soil has taken {left} dKH out of the water, the ammonia oxidisers {right}.")
        .alike("By then the soil has taken {left} dKH out of the water, the ammonia oxidisers as much ({right}).")
        .lower("By then the ammonia oxidisers have taken {right} dKH out of the water, the soil {left}."),
    Claim::of("soft water, speed", Here(SPEED), Base(SPEED), 5.0)
        .lower("In such water the nitrite oxidisers work at {left} % of full speed, on the mean of {last_day} days; with a tap of {base} at {right} %.")
        .alike("The nitrite oxidisers work at {left} % of full speed, on the mean of {last_day} days: no clear difference to a tap of {base} ({right} %).")
        .higher("The nitrite oxidisers work at {left} % of full speed, on the mean of {last_day} days, more than with a tap of {base} ({right} %).")
        .at_base("The nitrite oxidisers work at {left} % of full speed, on the mean of {last_day} days."),
    Claim::of("soft water, days", Here(DAYS_SOONER), Fixed(0.0, 1), 0.5)
        .lower("Tanks are ready {by} ± {error} days later than with a tap of {base}, on the mean of {members} plausible ones.")
        .alike("The ready day is not clearly another than with a tap of {base}: {left} ± {error} days apart on the mean of {members} plausible ones.")
        .higher("Tanks are ready {left} ± {error} days sooner than with a tap of {base}, on the mean of {members} plausible ones.")
        .at_base("The highest nitrite is {nitrite_peak} mg N/L, on day {nitrite_peak_day}."),
];
