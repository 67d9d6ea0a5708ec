//! Where the nitrogen went.

use super::super::claim::Claim;
use super::super::claim::Number::{Base, Fixed, Here};
use super::super::fact::{
    LITRES, N_CHANGES, N_DETRITUS, N_GAS, N_PLANTS, N_WATER, NITRATE_END, NITROGEN_WHOLE, REFILLED,
};
use super::super::note::{Note, Of, Where};
use super::super::trace::{Panel, Trace};
use super::super::{EIGHT_WEEKS, Lesson, Step, Term};
use super::words::NITRIFIERS;

/// Amounts of the whole, and of small parts, that are told apart, mg N.
const APART_MG: f64 = 50.0;
const SMALL_MG: f64 = 20.0;

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
            meaning: "what the nitrifiers end with; plants take some up; only changes of water, and microbes without oxygen, take it out of the tank",
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
        NITROGEN_WHOLE,
        N_CHANGES,
        N_WATER,
        N_PLANTS,
        N_GAS,
        N_DETRITUS,
        NITRATE_END,
    ],
    headline: Claim::of("nitrogen, changes", Here(N_CHANGES), Here(N_WATER), APART_MG)
        .higher("With {step}, {left} of {nitrogen_whole} mg N were poured away, and {right} are in the water at the end{cause}")
        .alike("With {step}, about as many of {nitrogen_whole} mg N were poured away as are in the water at the end, {left} and {right}{cause}")
        .lower("With {step}, {right} of {nitrogen_whole} mg N are in the water at the end, and {left} were poured away{cause}")
        .because(&OTHERS),
    claims: CLAIMS,
    notes: &[
        Note::new(Trace::InSoil, Of::Step, Where::ThatDay, "day {day}: {value} mg N to come"),
        Note::new(Trace::InWater, Of::Base, Where::Highest, "{base}: {value} on day {day}"),
        Note::new(Trace::InWater, Of::Step, Where::Highest, "{step}: {value} on day {day}"),
        Note::new(Trace::CarriedOut, Of::Step, Where::Highest, "in buckets: {value}"),
    ],
    to_try: "Take the plants out: write the line plants = \"none\" into nitrogen.toml, above all that stands in square \
        brackets. Who takes their part?",
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
        lines: &[],
    },
    Panel {
        title: "In the tank: in the water, in plants and algae, in detritus and microbes",
        traces: &[Trace::InWater, Trace::InPlants, Trace::InDetritus],
        least: 100.0,
        from_zero: true,
        lines: &[],
    },
    Panel {
        title: "Gone: with changed water, as gas",
        traces: &[Trace::CarriedOut, Trace::GoneAsGas],
        least: 100.0,
        from_zero: true,
        lines: &[],
    },
];

/// Where the rest is.
const OTHERS: Claim = Claim::of(
    "nitrogen, others",
    Here(N_PLANTS),
    Here(N_DETRITUS),
    SMALL_MG,
)
.higher("; plants and algae hold {left}, gas took {n_gas}, detritus and microbes hold {right}")
.alike("; plants and algae hold {left}, gas took {n_gas}, detritus and microbes hold {right}")
.lower("; detritus and microbes hold {right}, plants and algae {left}, gas took {n_gas}");
/// What refills brought.
const REFILLS: Claim = Claim::of("nitrogen, refills", Here(REFILLED), Fixed(0.0, 0), 1.0)
    .higher(", since refills carried in {left}")
    .alike("")
    .lower("");

const CLAIMS: &[Claim] = &[
    Claim::of("nitrogen, whole", Here(NITROGEN_WHOLE), Base(NITROGEN_WHOLE), APART_MG)
        .higher("All of it is what the full tank held at first, what the soil gave in eight weeks ({from_soil} mg N) and what was brought in: more than with {base}, {right} mg N{cause}.")
        .alike("All of it is what the full tank held at first, what the soil gave in eight weeks ({from_soil} mg N) and what was brought in: about as much as with {base}, {right} mg N.")
        .lower("All of it is what the full tank held at first, what the soil gave in eight weeks ({from_soil} mg N) and what was brought in: less than with {base}, {right} mg N.")
        .at_base("All of it is what the full tank held at first and what the soil gave in eight weeks, {from_soil} mg N.")
        .because(&REFILLS),
    Claim::of("nitrogen, plants", Here(N_PLANTS), Here(N_GAS), SMALL_MG)
        .higher("Plants and algae hold more than microbes without oxygen made into gas.")
        .alike("Plants and algae hold about as much as microbes without oxygen made into gas.")
        .lower("Microbes without oxygen made more into gas than plants and algae hold."),
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
