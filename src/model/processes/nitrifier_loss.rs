//! Nitrifier loss: films decay, are killed by chlorine and starve in a stopped filter.
//!
//! What is lost is burnt at once and leaves no detritus.
//!
//! ```text
//! r = O2/(K_OD + O2)·(b·th_b^(T − 20) + k_kill·(chlorine + chloramine) + [no flow]·k_cut·phi_filt)·X
//! ```

use crate::base::real::Real;
use crate::base::sources::{HIATT_GRADY_2008, SIN_2008, calibrated, memory, published};
use crate::model::films::GUILDS;
use crate::model::guild::film_lost;
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::temperature::Factor;
use crate::model::water::Water;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct NitrifierLoss<R> {
    decay: [R; 3],
    kill: R,
    without_flow: R,
    temperature: Factor,
}

impl<R: Real> Process<R> for NitrifierLoss<R> {
    const ID: &'static str = "nitrifier_loss";
    const WHAT: &'static str = "films decay, are killed by chlorine, starve in a stopped filter";
    const PARAMETERS: &'static [ParameterSpec] = &[
        parameter(
            "b_AOB",
            "decay of ammonia oxidisers at 20 °C",
            "/day",
            0.10,
            (0.05, 0.17),
            published(&[HIATT_GRADY_2008, SIN_2008], "0.096; 0.07 to 0.3"),
        ),
        parameter(
            "b_NOB",
            "decay of nitrite oxidisers at 20 °C",
            "/day",
            0.08,
            (0.05, 0.17),
            calibrated(&[HIATT_GRADY_2008, SIN_2008], "0.096; 0.08 to 0.2"),
        ),
        parameter(
            "b_K",
            "decay of complete oxidisers at 20 °C",
            "/day",
            0.05,
            (0.03, 0.1),
            calibrated(&[], ""),
        ),
        parameter(
            "th_b",
            "temperature factor of decay of nitrifiers",
            "1",
            1.04,
            (1.02, 1.08),
            memory(&[], ""),
        ),
        parameter(
            "k_kill",
            "nitrifiers killed by chlorine or chloramine",
            "L/mg/day",
            10.0,
            (5.0, 20.0),
            calibrated(&[], ""),
        ),
        parameter(
            "k_cut",
            "loss of films in a stopped filter",
            "/day",
            0.5,
            (0.1, 2.0),
            calibrated(&[], "4 to 24 h survivable is common practice, no source"),
        ),
    ];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let parts = [
            "ammonia oxidisers",
            "nitrite oxidisers",
            "complete oxidisers",
        ];
        let rows = GUILDS
            .iter()
            .zip(parts)
            .map(|(films, part)| film_lost(builder, part, *films))
            .collect();
        let process = NitrifierLoss {
            decay: ["b_AOB", "b_NOB", "b_K"].map(|id| builder.get(id)),
            kill: builder.get("k_kill"),
            without_flow: builder.get("k_cut") * builder.get("phi_filt"),
            temperature: builder.held_theta("th_b", "T_ref_bio"),
        };
        (process, rows)
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        let stopped = if water.held.power {
            R::zero()
        } else {
            self.without_flow
        };
        let other = self.kill * water.residual + stopped;
        for guild in 0..3 {
            let per_day = self.decay[guild] * water.factor(self.temperature) + other;
            rates[guild] = water.oxic * per_day * water.amount(GUILDS[guild]);
        }
    }
}
