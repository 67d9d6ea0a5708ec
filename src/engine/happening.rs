//! What an event does to a tank, and what it carries across the boundary.

use crate::model::component::Component;
use crate::model::conserved::{Flux, QUANTITIES, Quantity};
use crate::model::content::Contents;
use crate::model::films::GUILDS;
use crate::model::pool::{DISSOLVED, Pool};
use crate::model::state::State;

use super::event::{Dose, EventKind};
use super::lane_plan::LanePlan;

/// Amounts carried across the boundary by events: per way and conserved quantity.
pub type Crossed<R = f64> = [[R; QUANTITIES.len()]; crate::model::conserved::FLUXES.len()];

/// A tank in the hands of its keeper: changes of pools are booked as they are made.
pub struct Hands<'a> {
    /// The plan of this tank.
    pub plan: &'a LanePlan,
    /// The pools.
    pub state: &'a mut State<f64>,
    /// The book.
    pub crossed: &'a mut Crossed,
}

impl Hands<'_> {
    /// Does what an event says; gives the litres taken out.
    pub fn apply(&mut self, kind: &EventKind) -> f64 {
        match kind {
            EventKind::Trim { stand, share } => self.trim(*stand, *share),
            EventKind::Siphon { share } => self.siphon(*share),
            EventKind::Wipe { share } => self.take_share(Pool::Algae, *share, Flux::RemovedByCare),
            EventKind::CleanFilter { share } => self.clean_filter(*share),
            EventKind::Change { share } => return self.change_water(*share),
            EventKind::Dose(dose) => self.dose(dose),
            EventKind::Seed { mg_cod } => self.seed(mg_cod),
            EventKind::Plant { stand } => self.plant(*stand),
            EventKind::Stock(_) => {}
            EventKind::Uneaten {
                feed_g,
                protein_frac,
            } => self.spill(*feed_g, *protein_frac),
        }
        0.0
    }

    fn add(&mut self, pool: Pool, amount: f64, flux: Flux) {
        self.state[pool] += amount;
        book(&self.plan.contents, self.crossed, pool, amount, flux);
    }

    fn take_share(&mut self, pool: Pool, share: f64, flux: Flux) {
        let amount = self.state[pool] * share;
        self.add(pool, -amount, flux);
    }

    fn trim(&mut self, stand: Option<usize>, share: f64) {
        for at in 0..self.plan.input.stands.len() {
            if stand.is_none_or(|only| only == at) {
                for pool in [Pool::Biomass(at), Pool::TissueN(at), Pool::Emersed(at)] {
                    self.take_share(pool, share, Flux::RemovedByCare);
                }
            }
        }
    }

    fn siphon(&mut self, share: f64) {
        for pool in [
            Pool::FastDetritus,
            Pool::SlowDetritus,
            Pool::FastDetritusN,
            Pool::SlowDetritusN,
        ] {
            self.take_share(pool, share, Flux::RemovedByCare);
        }
    }

    fn clean_filter(&mut self, share: f64) {
        let in_filter = self.plan.input.parameters.get("phi_filt");
        for films in GUILDS {
            self.take_share(films, share * in_filter, Flux::RemovedByCare);
        }
    }

    /// ```text
    /// y ← (1−f)·y + S·(V_full − (1−f)·V)        T ← mass-weighted mean of the water        V ← V_full
    /// ```
    fn change_water(&mut self, share: f64) -> f64 {
        let refill = self.plan.input.refill;
        let present = self.state[Pool::Volume];
        let kept = present * (1.0 - share);
        let added = self.plan.input.tank.volume_l - kept;
        for pool in DISSOLVED {
            self.take_share(pool, share, Flux::RemovedByChanges);
        }
        for (pool, per_l) in refill.dissolved() {
            self.add(pool, per_l * added, Flux::SuppliedByRefills);
        }
        self.add(Pool::Volume, kept - present, Flux::RemovedByChanges);
        self.add(Pool::Volume, added, Flux::SuppliedByRefills);
        let warmth = self.state[Pool::Temperature] * kept + refill.temperature_c * added;
        self.state[Pool::Temperature] = warmth / (kept + added);
        present - kept
    }

    fn dose(&mut self, dose: &Dose) {
        let litres = self.state[Pool::Volume];
        let alkali = crate::model::equivalents::MEQ_PER_MG_N * dose.ammonia_mg_n_per_l;
        let per_l = [
            (
                Pool::Tan,
                dose.ammonium_mg_n_per_l + dose.ammonia_mg_n_per_l,
            ),
            (Pool::Nitrate, dose.nitrate_mg_n_per_l),
            (Pool::Phosphate, dose.phosphate_mg_p_per_l),
            (Pool::Potassium, dose.potassium_mg_per_l),
            (Pool::Iron, dose.iron_mg_per_l),
            (Pool::Alkalinity, dose.bicarbonate_meq_per_l + alkali),
            (Pool::Dic, dose.bicarbonate_meq_per_l),
            (Pool::Hardness, dose.hardness_meq_per_l),
            (Pool::Chloride, dose.chloride_mg_per_l),
        ];
        for (pool, per_l) in per_l {
            if per_l != 0.0 {
                self.add(pool, per_l * litres, Flux::Dosed);
            }
        }
    }

    fn seed(&mut self, mg_cod: &[f64; 3]) {
        for (films, amount) in GUILDS.iter().zip(mg_cod) {
            self.add(*films, *amount, Flux::Seeded);
        }
    }

    fn plant(&mut self, stand: usize) {
        let plan = &self.plan.input.stands[stand];
        let grams = plan.density_g_per_m2 * plan.cover_frac * self.plan.input.tank.bed_m2;
        let lasting = grams * (1.0 - plan.melt_frac);
        let shed = grams * plan.melt_frac;
        let nitrogen = self.plan.input.parameters.get("Q0") * lasting;
        self.add(Pool::Biomass(stand), lasting, Flux::Planted);
        self.add(Pool::TissueN(stand), nitrogen, Flux::Planted);
        self.add(Pool::Emersed(stand), shed, Flux::Planted);
    }

    fn spill(&mut self, feed_g: f64, protein_frac: f64) {
        let nitrogen = self.plan.input.parameters.get("N_feed") * protein_frac * feed_g;
        self.add(Pool::FastDetritus, feed_g, Flux::AnimalsAndFeed);
        self.add(Pool::FastDetritusN, nitrogen, Flux::AnimalsAndFeed);
    }
}

fn book(contents: &Contents<f64>, crossed: &mut Crossed, pool: Pool, amount: f64, flux: Flux) {
    for (place, quantity) in QUANTITIES.iter().enumerate() {
        if let Some(content) = contents.of(Component::Pool(pool), *quantity) {
            crossed[flux.index()][place] += content * amount;
        }
    }
}

/// Sum of the content of a state, per conserved quantity.
pub fn held(contents: &Contents<f64>, state: &State<f64>) -> [f64; QUANTITIES.len()] {
    QUANTITIES.map(|quantity: Quantity| contents.held(&state.0, quantity))
}
