//! What the three guilds of nitrifiers share: limits of pH, carbon and oxygen, and overgrowth.

use crate::base::real::Real;

use super::conserved::Quantity;
use super::content::Contents;
use super::limitation::{monod, ph_bell};
use super::pool::Pool;
use super::process::Builder;
use super::row::Row;
use super::water::Water;

/// Limits by oxygen, pH and inorganic carbon.
#[derive(Debug, Clone)]
pub struct GuildLimits<R> {
    half_oxygen: R,
    half_carbon: R,
    ten_to_pk1: R,
    ten_to_minus_pk2: R,
}

impl<R: Real> GuildLimits<R> {
    /// Reads the limits by the ids of the half-saturation of oxygen and of the lower pH limit.
    pub fn new(builder: &Builder<'_, R>, half_oxygen_id: &str, pk1_id: &str) -> Self {
        GuildLimits {
            half_oxygen: builder.get(half_oxygen_id),
            half_carbon: builder.get("K_C"),
            ten_to_pk1: builder.get(pk1_id).exp10(),
            ten_to_minus_pk2: (-builder.get("pK2")).exp10(),
        }
    }
    /// ```text
    /// C_T/(K_C + C_T) · 1/(1 + 10^(pK1 − pH) + 10^(pH − pK2))
    /// ```
    #[inline(always)]
    pub fn acidity_and_carbon(&self, water: &Water<R>) -> R {
        monod(water.carbon, self.half_carbon)
            * ph_bell(
                water.hydrogen,
                water.inverse_hydrogen,
                self.ten_to_pk1,
                self.ten_to_minus_pk2,
            )
    }
    /// The Monod factor of oxygen.
    #[inline(always)]
    pub fn oxygen(&self, water: &Water<R>) -> R {
        monod(water.oxygen, self.half_oxygen)
    }
}

/// Closes a row of films with the water: nitrogen by ammonia, carbon, oxygen, and charge by
/// alkalinity.
pub fn closed_by_water<R: Real>(row: Row<R>, contents: &Contents<R>) -> Row<R> {
    row.close(contents, Quantity::Nitrogen, Pool::Tan)
        .close(contents, Quantity::Carbon, Pool::Dic)
        .close(contents, Quantity::OxygenDemand, Pool::Oxygen)
        .close(contents, Quantity::Charge, Pool::Alkalinity)
}

/// The row of films that are lost and burnt at once, per mg COD.
pub fn film_lost<R: Real>(builder: &Builder<'_, R>, part: &str, films: Pool) -> Row<R> {
    closed_by_water(Row::new(part).put(films, -R::one()), builder.contents)
}
