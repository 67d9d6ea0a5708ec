//! Algae growth: a film on every lit surface grows on what light plants leave.
//!
//! ```text
//! I_s = PAR·(1 − Σ cover_i·(1 − passed_i))        N = TAN + NO3        p = pref·TAN/(pref·TAN + NO3)
//! r = G·mu_G·th_G^(T−20)·I_s/(K_I_G + I_s)·min(N/(K_N_G + N), PO4/(K_P_G + PO4))·(1 − G/(G_max·A_lit))
//!     ·C_T/(K_C + C_T)·K/(K_K_G + K)·Fe/(K_Fe_G + Fe)·(1 + nh4_boost·TAN/(K_boost + TAN))        g/day, while lit
//! ```
//! A share p of it on ammonium, the rest on nitrate.

use crate::base::real::Real;
use crate::base::sources::{ECOSIM, calibrated, derived, memory, published};
use crate::model::conserved::Quantity;
use crate::model::limitation::monod;
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::temperature::Factor;
use crate::model::water::Water;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct AlgaeGrowth<R> {
    covers: Vec<R>,
    fastest: R,
    temperature: Factor,
    half_light: R,
    half_nitrogen: R,
    half_phosphate: R,
    half_potassium: R,
    half_iron: R,
    half_carbon: R,
    preference: R,
    boost: R,
    half_boost: R,
    per_ceiling: R,
}

impl<R: Real> AlgaeGrowth<R> {
    #[inline(always)]
    fn light(&self, water: &Water<R>) -> R {
        let mut open = R::one();
        for (cover, canopy) in self.covers.iter().zip(&water.canopies) {
            open -= *cover * (R::one() - canopy.passed);
        }
        water.held.light_umol_per_m2_s * open
    }
}

impl<R: Real> Process<R> for AlgaeGrowth<R> {
    const ID: &'static str = "algae_growth";
    const WHAT: &'static str = "algae grow on lit surfaces";
    const PARAMETERS: &'static [ParameterSpec] = &[
        parameter(
            "mu_G",
            "fastest growth of algae at 20 °C in the light",
            "/day",
            1.7,
            (0.5, 2.4),
            calibrated(&[ECOSIM], "1.5 published"),
        ),
        parameter(
            "th_G",
            "temperature factor of algae",
            "1",
            1.047,
            (1.04, 1.07),
            published(&[ECOSIM], ""),
        ),
        parameter(
            "K_I_G",
            "light at half speed of algae",
            "µmol/m²/s",
            50.0,
            (20.0, 100.0),
            memory(&[], ""),
        ),
        parameter(
            "K_N_G",
            "nitrogen at half speed of algae",
            "mg N/L",
            0.04,
            (0.01, 0.2),
            published(&[ECOSIM], ""),
        ),
        parameter(
            "K_P_G",
            "phosphate at half speed of algae",
            "mg P/L",
            0.01,
            (0.001, 0.02),
            published(&[ECOSIM], ""),
        ),
        parameter(
            "K_K_G",
            "potassium at half speed of algae",
            "mg/L",
            0.01,
            (0.005, 0.05),
            calibrated(&[], "fixed"),
        ),
        parameter(
            "K_Fe_G",
            "iron at half speed of algae",
            "mg/L",
            0.0002,
            (0.0001, 0.001),
            calibrated(&[], "fixed"),
        ),
        parameter(
            "pref",
            "preference of algae for ammonium over nitrate",
            "1",
            5.0,
            (1.0, 20.0),
            published(&[ECOSIM], ""),
        ),
        parameter(
            "G_max",
            "most algae a lit surface can carry",
            "g/m²",
            40.0,
            (20.0, 100.0),
            memory(&[ECOSIM], ""),
        ),
        parameter(
            "G0",
            "algae on lit surfaces at filling",
            "g/m²",
            0.015,
            (0.001, 0.1),
            calibrated(&[], ""),
        ),
        parameter(
            "s_lit",
            "lit surface per water surface",
            "1",
            2.0,
            (1.0, 3.0),
            derived("bed, glass and leaves"),
        ),
        parameter(
            "nh4_boost",
            "how much ammonium speeds algae up",
            "1",
            0.0,
            (0.0, 0.4),
            published(&[], "weak evidence; off by default"),
        ),
        parameter(
            "K_boost",
            "total ammonia at which it speeds algae up by half of what it can",
            "mg N/L",
            0.1,
            (0.05, 0.2),
            calibrated(&[], "fixed"),
        ),
    ];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let row = |part: &str, from: Pool| {
            Row::new(part)
                .in_light()
                .put(Pool::Algae, R::one())
                .close(builder.contents, Quantity::Nitrogen, from)
                .from_water(builder.contents)
        };
        let rows = vec![
            row("on ammonium", Pool::Tan),
            row("on nitrate", Pool::Nitrate),
        ];
        let process = AlgaeGrowth {
            covers: builder
                .setup
                .stands
                .iter()
                .map(|plan| plan.cover_frac)
                .collect(),
            fastest: builder.get("mu_G"),
            half_light: builder.get("K_I_G"),
            half_nitrogen: builder.get("K_N_G"),
            half_phosphate: builder.get("K_P_G"),
            half_potassium: builder.get("K_K_G"),
            half_iron: builder.get("K_Fe_G"),
            half_carbon: builder.get("K_C"),
            preference: builder.get("pref"),
            boost: builder.get("nh4_boost"),
            half_boost: builder.get("K_boost"),
            per_ceiling: R::one() / (builder.get("G_max") * builder.setup.lit_m2()),
            temperature: builder.theta("th_G", "T_ref_bio"),
        };
        (process, rows)
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        if !water.held.lit {
            rates.fill(R::zero());
            return;
        }
        let one = R::one();
        let algae = water.amount(Pool::Algae);
        let tan = water.tan.floor_zero();
        let nitrate = water.nitrate.floor_zero();
        let food = monod(tan + nitrate, self.half_nitrogen)
            .least(monod(water.phosphate, self.half_phosphate));
        let room = (one - algae * self.per_ceiling).floor_zero();
        let growth = algae
            * self.fastest
            * water.factor(self.temperature)
            * monod(self.light(water), self.half_light)
            * food
            * room
            * monod(water.carbon, self.half_carbon)
            * monod(water.potassium, self.half_potassium)
            * monod(water.iron, self.half_iron)
            * (one + self.boost * monod(tan, self.half_boost));
        let liked = self.preference * tan;
        let on_ammonium = R::pick(
            R::zero().below(liked + nitrate),
            liked / (liked + nitrate),
            R::zero(),
        );
        rates[0] = growth * on_ammonium;
        rates[1] = growth * (one - on_ammonium);
    }
}
