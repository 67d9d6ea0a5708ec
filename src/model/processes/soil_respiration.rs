//! Soil respiration: microbes of the soil burn its carbon with oxygen from the water.
//!
//! Carbon follows the nitrogen they free; only a share of it is burnt with oxygen.
//!
//! ```text
//! r = r_CN·x_aer·(soil mineralisation)·O2/(K_OD + O2)        mg C/day
//! ```

use crate::base::real::Real;
use crate::base::sources::{calibrated, memory};
use crate::base::units::CARBON_G_PER_MOL;
use crate::model::component::Component;
use crate::model::conserved::{Flux, Quantity};
use crate::model::equivalents::O2_PER_C;
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::water::Water;

use super::soil_mineralisation::SoilMineralisation;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct SoilRespiration<R> {
    mineralisation: SoilMineralisation<R>,
    carbon_per_nitrogen: R,
}

impl<R: Real> Process<R> for SoilRespiration<R> {
    const ID: &'static str = "soil_respiration";
    const WHAT: &'static str = "soil carbon is burnt with oxygen";
    const PARAMETERS: &'static [ParameterSpec] = &[
        parameter(
            "r_CN",
            "carbon freed per nitrogen mineralised in the soil",
            "g/g",
            12.0,
            (10.0, 15.0),
            memory(&[], ""),
        ),
        parameter(
            "x_aer",
            "share of the carbon freed in the soil that is burnt with oxygen",
            "1",
            0.3,
            (0.1, 0.6),
            calibrated(&[], "0.4 g O2/m²/day"),
        ),
    ];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let mmol = R::of(1.0 / CARBON_G_PER_MOL);
        let row = Row::new("")
            .put(Pool::Dic, mmol)
            .put(Pool::Oxygen, R::of(-O2_PER_C))
            .put(
                Component::Outside(Flux::SoilCarbon, Quantity::Carbon),
                -mmol,
            )
            .put(
                Component::Outside(Flux::SoilCarbon, Quantity::OxygenDemand),
                R::of(-O2_PER_C),
            );
        let process = SoilRespiration {
            mineralisation: SoilMineralisation::new(builder).0,
            carbon_per_nitrogen: builder.get("r_CN") * builder.get("x_aer"),
        };
        (process, vec![row])
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        rates[0] = self.carbon_per_nitrogen * self.mineralisation.rate(water) * water.oxic;
    }
}
