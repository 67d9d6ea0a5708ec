//! The autotrophs of Activated Sludge Model No. 1 in the laboratory, against its equations written
//! down here anew and solved by a general-purpose library (crate `ivp`, Dormand and Prince's method of
//! eighth order).
//!
//! Model and typical values at 20 °C: Henze, Grady, Gujer, Marais & Matsuo 1987, Activated Sludge
//! Model No. 1, IAWPRC Scientific and Technical Report 1; again in Henze, Gujer, Mino & van Loosdrecht
//! 2000. From memory. Of the decay b_A they print a range, 0.05 to 0.15 /day; its upper end is taken.
//!
//! What differs in ours, and how it is set neutral:
//! * Complete oxidisers stand for the autotrophs: one step from ammonia to nitrate, as there.
//! * Limits by pH, inorganic carbon, nitrous acid and room on surfaces: switched off by parameters.
//! * Temperature: 20 °C, at which all factors are 1.
//! * Decay needs oxygen in ours: its half-saturation is set to 0.
//! * Films do not wash out, so the test is a batch.
//! * What decays becomes slowly degradable matter there, which heterotrophs then eat; ours is burnt at
//!   once and gives back its ammonia. The first test has no decay and compares their growth row as it
//!   stands. The second compares with the limit of their model in which what decayed is broken down
//!   and burnt without delay, without residue (f_P = 0) and without growth of heterotrophs (Y_H = 0).
//! * They print 4.57 g O2 per g N and 14 g/mol; ours has the atomic masses, 4.569 and 14.007. The last
//!   test gives their equations the atomic masses, and ours steps of two and a half minutes: nothing is left.
//!
//! Tolerances, reasons and what was found stand in `tests/README.md`, which these tests read.

mod support;

use firstfill::chemistry::{schmidt, solubility};
use firstfill::engine::laboratory::{Laboratory, Sample, Trajectory};
use firstfill::model::parameter_set::ParameterSet;
use firstfill::model::pool::Pool;
use ivp::prelude::*;
use support::bottle::{knowing_no_other_limit, open_vessel};
use support::check::Check;

// Typical values at 20 °C.
const MU_A: f64 = 0.8;
const K_NH: f64 = 1.0;
const K_OA: f64 = 0.4;
const Y_A: f64 = 0.24;
const I_XB: f64 = 0.086;
const B_A: f64 = 0.15;

/// Surface of the aerated litre, m²: oxygen exchange of about 12 /day.
const SURFACE_M2: f64 = 0.015;
/// What the batch begins with, per litre: mg N, mg COD, mg O2, mmol.
const AMMONIA: f64 = 20.0;
const AUTOTROPHS: f64 = 5.0;
const OXYGEN: f64 = 8.0;
const ALKALINITY: f64 = 5.0;

/// S_NH, S_NO, S_O, S_ALK, X_BA.
const STATES: usize = 5;

/// Their equations in an aerated batch; g/m³ and mol/m³, days.
struct Asm1 {
    /// Of autotrophs, /day.
    decay: f64,
    /// Oxygen from ammonia to nitrate, g/g N.
    oxygen_per_nitrogen: f64,
    /// g/mol.
    nitrogen: f64,
    /// Exchange of oxygen, /day.
    aeration: f64,
    /// Oxygen it leads to, g/m³.
    saturation: f64,
}

impl FirstOrderSystem for Asm1 {
    fn derivative(&self, _: f64, y: &[f64], dy: &mut [f64]) {
        let [ammonia, _, oxygen, _, autotrophs] = y else {
            unreachable!("five states")
        };
        let growth = MU_A * ammonia / (K_NH + ammonia) * oxygen / (K_OA + oxygen) * autotrophs;
        let decay = self.decay * autotrophs;
        dy[0] = -(I_XB + 1.0 / Y_A) * growth + I_XB * decay;
        dy[1] = growth / Y_A;
        let supplied = self.aeration * (self.saturation - oxygen);
        dy[2] = supplied - (self.oxygen_per_nitrogen - Y_A) / Y_A * growth - decay;
        dy[3] = (-(I_XB + 2.0 / Y_A) * growth + I_XB * decay) / self.nitrogen;
        dy[4] = growth - decay;
    }
}

impl Asm1 {
    fn with_decay(decay: f64) -> Asm1 {
        let velocity =
            ParameterSet::default().get("k_600") * (600.0 / schmidt::oxygen(20.0)).sqrt();
        Asm1 {
            decay,
            oxygen_per_nitrogen: 4.57,
            nitrogen: 14.0,
            aeration: velocity * 1000.0 * SURFACE_M2,
            saturation: solubility::oxygen_saturation_mg_per_l(20.0, 1.0),
        }
    }

    /// The states at some times, days.
    fn solved_at(&self, times: &[f64]) -> Vec<Vec<f64>> {
        let start = [AMMONIA, 0.0, OXYGEN, ALKALINITY, AUTOTROPHS];
        let end = times[times.len() - 1];
        let solution = Ivp::first_order(self, 0.0, end, &start)
            .method(Method::DOP853)
            .rtol(1e-11)
            .atol(1e-12)
            .t_eval(times.to_vec())
            .solve()
            .unwrap();
        solution.y
    }
}

/// The same batch in the laboratory, a litre.
fn batch(decay: f64) -> Laboratory {
    knowing_no_other_limit(open_vessel(1.0, SURFACE_M2))
        .temperature(20.0)
        .only(&["complete_oxidation", "nitrifier_loss", "gas_exchange"])
        .parameter("mu_K", MU_A)
        .parameter("K_NHK", K_NH)
        .parameter("K_O_K", K_OA)
        .parameter("Y_K", Y_A)
        .parameter("b_K", decay)
        .parameter("i_N", I_XB)
        .parameter("K_OD", 0.0)
        .dissolved(Pool::Tan, AMMONIA)
        .dissolved(Pool::Oxygen, OXYGEN)
        .dissolved(Pool::Alkalinity, ALKALINITY)
        .dissolved(Pool::Dic, ALKALINITY)
        .amount(Pool::CompleteOxidisers, AUTOTROPHS)
}

/// Our pools in their order; a litre, so amounts are concentrations.
fn states(sample: &Sample) -> [f64; STATES] {
    [
        Pool::Tan,
        Pool::Nitrate,
        Pool::Oxygen,
        Pool::Alkalinity,
        Pool::CompleteOxidisers,
    ]
    .map(|pool| sample.state[pool])
}

/// The differences of each state from theirs, as shares of how far it ranges.
fn compare(batch: &Trajectory, model: &Asm1, mut see: impl FnMut(usize, f64, f64)) {
    let times: Vec<f64> = batch.samples().iter().map(|sample| sample.days).collect();
    let solved = model.solved_at(&times);
    assert_eq!(solved.len(), times.len());
    for place in 0..STATES {
        let of_theirs = || solved.iter().map(|y| y[place]);
        let range = of_theirs().fold(f64::MIN, f64::max) - of_theirs().fold(f64::MAX, f64::min);
        for (sample, theirs) in batch.samples().iter().zip(of_theirs()) {
            see(place, (states(sample)[place] - theirs) / range, sample.days);
        }
    }
}

/// Holds each state against the row of that name.
fn hold(batch: &Trajectory, model: &Asm1, rows: [&'static str; STATES]) {
    let mut checks = rows.map(Check::of);
    compare(batch, model, |place, share, days| {
        checks[place].see(share, days);
    });
    for check in checks {
        check.holds(batch.samples().len());
    }
}

#[test]
fn autotrophs_grow_as_in_activated_sludge_model_no_1() {
    let batch = batch(0.0).run(4.0).unwrap();
    let least = batch.samples().iter().map(|s| s.reading.oxygen_mg_per_l);
    let least = least.fold(f64::MAX, f64::min);
    assert!(least < 10.0 * K_OA, "oxygen limits: {least} mg/L");
    assert!(batch.last().state[Pool::Tan] < 0.1 * K_NH, "ammonia does");
    let rows = [
        "ASM1 without decay: ammonia, S_NH",
        "ASM1 without decay: nitrate, S_NO",
        "ASM1 without decay: oxygen, S_O",
        "ASM1 without decay: alkalinity, S_ALK",
        "ASM1 without decay: autotrophs, X_BA",
    ];
    hold(&batch, &Asm1::with_decay(0.0), rows);
}

#[test]
fn autotrophs_decay_as_in_activated_sludge_model_no_1() {
    let batch = batch(B_A).run(12.0).unwrap();
    let rows = [
        "ASM1 with decay: ammonia, S_NH",
        "ASM1 with decay: nitrate, S_NO",
        "ASM1 with decay: oxygen, S_O",
        "ASM1 with decay: alkalinity, S_ALK",
        "ASM1 with decay: autotrophs, X_BA",
    ];
    hold(&batch, &Asm1::with_decay(B_A), rows);
}

#[test]
fn with_atomic_masses_and_short_steps_nothing_differs() {
    let mut check = Check::of("ASM1 with atomic masses: every state, with decay and without");
    let mut compared = 0;
    for decay in [0.0, B_A] {
        let batch = batch(decay).finer(2).run(4.0).unwrap();
        let model = Asm1 {
            oxygen_per_nitrogen: 4.0 * 15.999 / 14.007,
            nitrogen: 14.007,
            ..Asm1::with_decay(decay)
        };
        compare(&batch, &model, |place, share, days| {
            check.see(share, (place, days));
        });
        compared += STATES * batch.samples().len();
    }
    check.holds(compared);
}
