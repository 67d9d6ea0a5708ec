//! Leaf uptake: stands store nitrogen from the water, ammonium day and night, nitrate in the light.
//!
//! ```text
//! sat = (1 − Q/Q_max)·th_P^(min(T,30) − 25), not below 0        w_N = f_root·C_p/(K_rN + C_p)
//! ammonium: 24·V_NH·B·(1 − w_N)·TAN/(K_NHp + TAN)·sat                       mg N/day
//! nitrate:  24·V_NO·B·NO3/(K_NOp + NO3)·K_inhNO3/(K_inhNO3 + TAN)·sat       mg N/day, while lit
//! ```

use crate::base::real::Real;
use crate::base::sources::{DUARTE_1992, WOLF_GLADROW_2007, memory, published};
use crate::model::conserved::Quantity;
use crate::model::limitation::{inhibition, monod};
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::temperature::Factor;
use crate::model::water::Water;

const ROWS: usize = 2;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct LeafUptake<R> {
    fastest: Vec<(R, R)>,
    appetite: Appetite<R>,
    half_tan: R,
    half_nitrate: R,
    repression: R,
}

/// How much nitrogen the tissue of a stand still takes, and the roots' share of it.
#[derive(Debug, Clone)]
pub(super) struct Appetite<R> {
    per_fullest: R,
    temperature: Factor,
    half_roots: R,
    root_share: Vec<R>,
}

impl<R: Real> Appetite<R> {
    pub(super) fn new(builder: &mut Builder<'_, R>) -> Self {
        let soil = builder.setup.has_soil();
        let share = |id: String| if soil { builder.get(&id) } else { R::zero() };
        Appetite {
            per_fullest: R::one() / builder.get("Q_max"),
            half_roots: builder.get("K_rN"),
            root_share: builder
                .setup
                .stands
                .iter()
                .map(|plan| share(plan.group.id("f_root")))
                .collect(),
            temperature: builder.held_theta("th_P", "T_ref_plant"),
        }
    }
    /// B·sat, g: tissue that still takes nitrogen, with the temperature factor.
    #[inline(always)]
    pub(super) fn hungry_g(&self, water: &Water<R>, stand: usize) -> R {
        let full = water.amount(Pool::TissueN(stand)) * self.per_fullest;
        (water.amount(Pool::Biomass(stand)) - full).floor_zero() * water.factor(self.temperature)
    }
    /// w_N: the share of uptake that roots take.
    #[inline(always)]
    pub(super) fn roots(&self, water: &Water<R>, stand: usize) -> R {
        self.root_share[stand] * monod(water.pore_tan, self.half_roots)
    }
}

impl<R: Real> Process<R> for LeafUptake<R> {
    const ID: &'static str = "leaf_uptake";
    const WHAT: &'static str = "leaves store nitrogen from the water";
    const PARAMETERS: &'static [ParameterSpec] = &[
        parameter(
            "Q_max",
            "tissue nitrogen at which uptake stops",
            "mg/g",
            45.0,
            (35.0, 45.0),
            memory(&[DUARTE_1992], ""),
        ),
        parameter(
            "K_NHp",
            "total ammonia at half speed of leaves",
            "mg N/L",
            0.15,
            (0.03, 0.6),
            published(&[], "thesis abstract on a pondweed, 0.03 to 0.4"),
        ),
        parameter(
            "K_NOp",
            "nitrate at half speed of leaves",
            "mg N/L",
            0.30,
            (0.05, 1.5),
            memory(&[WOLF_GLADROW_2007], "signs of alkalinity by that work"),
        ),
        parameter(
            "K_inhNO3",
            "total ammonia that halves nitrate uptake",
            "mg N/L",
            0.15,
            (0.05, 0.5),
            memory(&[], ""),
        ),
        parameter(
            "K_rN",
            "pore-water ammonium at half speed of roots",
            "mg N/L",
            1.0,
            (0.3, 3.0),
            memory(&[], ""),
        ),
    ];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let contents = builder.contents;
        let hours = R::of(24.0);
        let mut rows = Vec::new();
        let mut fastest = Vec::new();
        for (stand, plan) in builder.setup.stands.iter().enumerate() {
            let get = |stem: &str| builder.get(&plan.group.id(stem));
            fastest.push((hours * get("V_NH"), hours * get("V_NO")));
            let row = |part: &str, from: Pool| {
                Row::new(format!("{}, {part}", plan.name))
                    .of_stand(stand)
                    .put(from, -R::one())
                    .put(Pool::TissueN(stand), R::one())
                    .close(contents, Quantity::OxygenDemand, Pool::Oxygen)
                    .close(contents, Quantity::Charge, Pool::Alkalinity)
            };
            rows.push(row("ammonium", Pool::Tan));
            rows.push(row("nitrate", Pool::Nitrate).in_light());
        }
        let process = LeafUptake {
            fastest,
            appetite: Appetite::new(builder),
            half_tan: builder.get("K_NHp"),
            half_nitrate: builder.get("K_NOp"),
            repression: builder.get("K_inhNO3"),
        };
        (process, rows)
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        let ammonium = monod(water.tan, self.half_tan);
        let nitrate = if water.held.lit {
            monod(water.nitrate, self.half_nitrate) * inhibition(water.tan, self.repression)
        } else {
            R::zero()
        };
        for (stand, (fastest_ammonium, fastest_nitrate)) in self.fastest.iter().enumerate() {
            let hungry = self.appetite.hungry_g(water, stand);
            let leaves = R::one() - self.appetite.roots(water, stand);
            rates[ROWS * stand] = *fastest_ammonium * hungry * leaves * ammonium;
            rates[ROWS * stand + 1] = *fastest_nitrate * hungry * nitrate;
        }
    }
}
