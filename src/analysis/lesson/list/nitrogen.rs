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
    headline: Claim::of("nitrogen, changes", Here(TO_CHANGES), Here(TO_WATER), 3.0)
        .higher("With {step}, {left} of 100 parts of the nitrogen went out with changed water, {right} stayed in the tank's water")
        .alike("With {step}, {left} of 100 parts of the nitrogen went out with changed water, about as many ({right}) stayed in the tank's water")
        .lower("With {step}, {right} of 100 parts of the nitrogen stayed in the water, {left} went out with changes"),
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
    Claim::of("nitrogen, plants", Here(TO_PLANTS), Here(TO_GAS), 3.0)
        .higher("Plants and algae hold {left} of 100 parts, and {right} went into the air as nitrogen gas.")
        .alike("Plants and algae hold {left} of 100 parts, and about as many ({right}) went into the air as nitrogen gas.")
        .lower("Plants and algae hold {left} of 100 parts; more, {right}, went into the air as nitrogen gas, made by microbes without oxygen."),
    Claim::of("nitrogen, nitrate", Here(NITRATE_END), Base(NITRATE_END), 0.5)
        .lower("Nitrate is {left} mg N/L at the end, with {base} {right}.")
        .alike("Nitrate is {left} mg N/L at the end, about as with {base} ({right}).")
        .higher("Nitrate is {left} mg N/L at the end, more than with {base} ({right}).")
        .at_base("Nitrate is {left} mg N/L at the end."),
    Claim::of("nitrogen, litres", Here(LITRES), Base(LITRES), 1.0)
        .higher("The changes take {left} L of water.")
        .alike("The changes take as much water as with {base}, {left} L.")
        .lower("The changes take {left} L of water, less than with {base} ({right} L).")
        .at_base("The other settings are held against this one."),
];
