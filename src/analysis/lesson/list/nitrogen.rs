//! Where the nitrogen went.

use super::super::claim::Claim;
use super::super::claim::Number::{Base, Fixed, Here};
use super::super::fact::{
    LITRES, NITRATE_END, NITROGEN_GIVEN, REFILLED, TO_CHANGES, TO_DETRITUS, TO_GAS, TO_PLANTS,
    TO_WATER,
};
use super::super::note::{Note, Of, Where};
use super::super::trace::{Panel, Trace};
use super::super::{EIGHT_WEEKS, Lesson, Step, Term};
use super::words::NITRIFIERS;

/// The lesson.
pub const LESSON: Lesson = Lesson {
    key: "nitrogen",
    title: "Where the nitrogen went",
    question: "The soil gives nitrogen for weeks. When ammonia and nitrite are gone, where is it all?",
    terms: &[
        Term {
            word: "nitrogen",
            meaning: "what ammonia, nitrite, nitrate and plants have in common; counted as nitrogen (mg N), they can be added up, \
                and nothing is made or lost",
        },
        NITRIFIERS,
        Term {
            word: "nitrate",
            meaning: "what the nitrifiers end with; plants use it, and only changes of water or microbes without oxygen take it out",
        },
    ],
    scenario: include_str!("../scenarios/nitrogen.toml"),
    input: "how much of the water is changed once a week",
    steps: STEPS,
    base: 0,
    shown: 4,
    window: EIGHT_WEEKS,
    day: 28,
    panels: PANELS,
    facts: &[
        NITROGEN_GIVEN,
        TO_CHANGES,
        TO_PLANTS,
        TO_GAS,
        TO_WATER,
        TO_DETRITUS,
        NITRATE_END,
        LITRES,
    ],
    headline: Claim::of("nitrogen, changes", Here(TO_CHANGES), Here(TO_PLANTS), 3.0)
        .higher("With {step}, {left} of 100 parts of the nitrogen left in buckets, {right} went into plants, {to_gas} into the air")
        .alike("With {step}, buckets and plants took as much of the nitrogen: {left} and {right} of 100 parts")
        .lower("With {step}, {right} of 100 parts of the nitrogen went into plants, {left} left in buckets, {to_gas} went into the air"),
    claims: CLAIMS,
    notes: &[
        Note::new(Trace::InSoil, Of::Step, Where::ThatDay, "day {day}: {value} mg N to come"),
        Note::new(Trace::InWater, Of::Base, Where::Highest, "{base}: {value} on day {day}"),
        Note::new(Trace::InWater, Of::Step, Where::Highest, "{step}: {value} on day {day}"),
        Note::new(Trace::CarriedOut, Of::Step, Where::Highest, "in buckets: {value}"),
    ],
    to_try: "Take the plants out of tank.toml (plants = \"none\") and run the lesson on your files: who takes their part?",
    cannot: &[
        "How much of it your soil holds: the amounts are of a medium one, and bags differ fivefold.",
        "Plants that spread and shade each other, which take more in the end.",
    ],
};

macro_rules! weekly {
    ($share:literal) => {
        concat!(
            "[changes]\nlate = { days = \"7..56\", every = 7, share = \"",
            $share,
            " %\" }\n"
        )
    };
}

#[rustfmt::skip]
const STEPS: &[Step] = &[
    Step { key: "none", label: "no change", lines: "" },
    Step { key: "10-percent", label: "10 % a week", lines: weekly!("10") },
    Step { key: "20-percent", label: "20 % a week", lines: weekly!("20") },
    Step { key: "30-percent", label: "30 % a week", lines: weekly!("30") },
    Step { key: "50-percent", label: "50 % a week", lines: weekly!("50") },
    Step { key: "80-percent", label: "80 % a week", lines: weekly!("80") },
];

const PANELS: &[Panel] = &[
    Panel {
        title: "Still in the soil",
        traces: &[Trace::InSoil],
        least: 100.0,
        from_zero: true,
        line: None,
    },
    Panel {
        title: "In the water, in plants and algae",
        traces: &[Trace::InWater, Trace::InPlants],
        least: 100.0,
        from_zero: true,
        line: None,
    },
    Panel {
        title: "Gone: with changed water, as gas",
        traces: &[Trace::CarriedOut, Trace::GoneAsGas],
        least: 100.0,
        from_zero: true,
        line: None,
    },
];

const REFILLS: Claim = Claim::of("nitrogen, refills", Here(REFILLED), Fixed(0.0, 0), 1.0)
    .higher(": refills carried in {left} of them")
    .alike("")
    .lower("");

const CLAIMS: &[Claim] = &[
    Claim::of("nitrogen, given", Here(NITROGEN_GIVEN), Base(NITROGEN_GIVEN), 50.0)
        .higher("In eight weeks {left} mg N were given off or brought in, with {base} {right}{cause}.")
        .alike("In eight weeks {left} mg N were given off or brought in, about as much as with {base} ({right}).")
        .lower("In eight weeks {left} mg N were given off or brought in, less than with {base} ({right}).")
        .at_base("In eight weeks {left} mg N were given off or brought in.")
        .because(&REFILLS),
    Claim::of("nitrogen, buckets", Here(TO_CHANGES), Fixed(0.0, 0), 0.5)
        .higher("Of 100 parts of it {left} were carried out with {litres} L of changed water.")
        .alike("Next to none of it was carried out, with {litres} L of changed water.")
        .lower("None of it was carried out, with {litres} L of changed water."),
    Claim::of("nitrogen, plants", Here(TO_PLANTS), Here(TO_GAS), 3.0)
        .higher("Plants and algae hold {left} parts, and {right} went into the air as nitrogen gas.")
        .alike("Plants and algae hold {left} parts, and as many ({right}) went into the air as nitrogen gas.")
        .lower("Plants and algae hold {left} parts; more, {right}, went into the air as nitrogen gas, made by microbes without oxygen."),
    Claim::of("nitrogen, water", Here(TO_WATER), Base(TO_WATER), 3.0)
        .lower("In the water are {left} parts at the end, with {base} {right}.")
        .alike("In the water are {left} parts at the end, about as with {base} ({right}).")
        .higher("In the water are {left} parts at the end, more than with {base} ({right}).")
        .at_base("In the water are {left} parts at the end; nitrate is {nitrate_end} mg N/L."),
];
