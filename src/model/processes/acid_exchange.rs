//! Acid exchange: acid sites of the soil take bicarbonate above a level and give bases back below it.
//!
//! ```text
//! r = k_ac·1000·A_bed·(Alk − Alk_eq)·ψ        meq/day, both ways
//! ψ = EH/(E_H0·m) above Alk_eq, psi_back below
//! ```
//! `psi_back` 1 is a plain two-way exchanger, 0.1 a soil that only takes.

use crate::base::real::Real;
use crate::base::sources::{calibrated, practice};
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::water::Water;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct AcidExchange<R> {
    litres_per_day: R,
    level: R,
    per_capacity: R,
    giving_back: R,
}

impl<R: Real> Process<R> for AcidExchange<R> {
    const ID: &'static str = "acid_exchange";
    const WHAT: &'static str = "acid sites of the soil take alkalinity, or give it back";
    const PARAMETERS: &'static [ParameterSpec] = &[
        parameter(
            "E_H0",
            "acid-exchange capacity of the soil",
            "meq/kg",
            60.0,
            (20.0, 200.0),
            calibrated(&[], "13 half-volume changes of 4 dKH"),
        ),
        parameter(
            "k_ac",
            "acid-exchange velocity",
            "m/day",
            0.10,
            (0.03, 0.30),
            calibrated(&[], "half-time of two days"),
        ),
        parameter(
            "Alk_eq",
            "alkalinity at which the soil neither takes nor gives",
            "meq/L",
            0.45,
            (0.10, 0.60),
            practice("0 to 2 dKH over soil"),
        ),
        parameter(
            "psi_back",
            "speed of giving back, as a share of taking",
            "1",
            1.0,
            (0.1, 1.0),
            calibrated(
                &[],
                "no data; decides whether a tank without changes stalls",
            ),
        ),
    ];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let take = Row::new("taking")
            .put(Pool::Alkalinity, -R::one())
            .put(Pool::SoilAcid, -R::one());
        let give = take.reversed("giving back");
        let soil = builder.setup.has_soil();
        let area = R::of(1000.0) * builder.setup.tank.bed_m2;
        let capacity = builder.get("E_H0") * builder.setup.soil_kg();
        let process = AcidExchange {
            litres_per_day: if soil {
                builder.get("k_ac") * area
            } else {
                R::zero()
            },
            level: builder.get("Alk_eq"),
            per_capacity: R::pick(R::zero().below(capacity), R::one() / capacity, R::zero()),
            giving_back: builder.get("psi_back"),
        };
        (process, vec![take, give])
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        let drive = self.litres_per_day * (water.alkalinity - self.level);
        rates[0] = drive.floor_zero() * water.amount(Pool::SoilAcid) * self.per_capacity;
        rates[1] = (-drive).floor_zero() * self.giving_back;
    }
}
