//! Where the nitrogen went that soil, waters, feed and doses gave: from the ledger of the central run.

use crate::base::units::N_PER_CL2;
use crate::engine::result::{Reading, RunResult};
use crate::model::conserved::{Flux, Quantity};

/// A place where nitrogen ends up.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sink {
    /// Carried out with changed water.
    Changes,
    /// Cut, siphoned or wiped away.
    Care,
    /// Gone as gas.
    Gas,
    /// In plants and algae.
    Plants,
    /// In detritus and microbes.
    Detritus,
    /// Dissolved in the water.
    Water,
}

impl Sink {
    /// All of them.
    pub const ALL: [Sink; 6] = [
        Sink::Changes,
        Sink::Care,
        Sink::Gas,
        Sink::Plants,
        Sink::Detritus,
        Sink::Water,
    ];
}

/// Where the nitrogen went.
#[derive(Debug, Clone, PartialEq)]
pub struct Nitrogen {
    /// What each place gained from filling to the end, mg N; less than nothing where it lost.
    pub gained_mg: [(Sink, f64); Sink::ALL.len()],
}

impl Nitrogen {
    /// Of a finished run, the look-ahead left out.
    ///
    /// ```text
    /// gained = in the place at the end − in it once the tank was full − planted since        or what left that way
    /// ```
    pub fn of(run: &RunResult) -> Option<Nitrogen> {
        let filled = run.shown().iter();
        let first = filled
            .take_while(|r| r.minute == run.input.filled_at)
            .last()?;
        let (start, end) = (held(run, first), held(run, run.shown().last()?));
        let account = run.ledger.of(Quantity::Nitrogen);
        let gained = |sink: Sink| match sink {
            Sink::Changes => -account.by(Flux::RemovedByChanges),
            Sink::Care => -account.by(Flux::RemovedByCare),
            Sink::Gas => -account.by(Flux::NitrogenGas),
            Sink::Plants => end[0] - start[0] - planted_later_mg(run),
            Sink::Detritus => end[1] - start[1],
            Sink::Water => end[2] - start[2],
        };
        Some(Nitrogen {
            gained_mg: Sink::ALL.map(|sink| (sink, gained(sink))),
        })
    }
    /// All that some place gained, mg N: what soil, waters, feed and doses gave, and what other places lost.
    pub fn given_mg(&self) -> f64 {
        self.gained_mg.iter().map(|(_, mg)| mg.max(0.0)).sum()
    }
    /// The share of it that went into a place, 0 to 1.
    pub fn share(&self, sink: Sink) -> f64 {
        let (_, mg) = self.gained_mg[sink as usize];
        match self.given_mg() {
            0.0 => 0.0,
            given => mg.max(0.0) / given,
        }
    }
    /// Places with their shares, the largest first.
    pub fn shares(&self) -> Vec<(Sink, f64)> {
        let mut shares: Vec<(Sink, f64)> = Sink::ALL.map(|sink| (sink, self.share(sink))).into();
        shares.sort_by(|a, b| b.1.total_cmp(&a.1));
        shares
    }
}

/// What was brought in with plants after filling, mg N: it was not gained.
fn planted_later_mg(run: &RunResult) -> f64 {
    let later = run.input.filled_at + 1..run.input.end_minute();
    let records = run.events.iter().filter(|r| later.contains(&r.minute));
    let brought = records.map(|r| (r.after.plants_mg_n - r.before.plants_mg_n).max(0.0));
    brought.sum()
}

/// In plants and algae, in detritus and microbes, and in the water, mg N.
fn held(run: &RunResult, r: &Reading) -> [f64; 3] {
    let microbes =
        r.ammonia_oxidisers_mg_cod + r.nitrite_oxidisers_mg_cod + r.complete_oxidisers_mg_cod;
    let mut parameters = run.input.parameters.iter();
    let in_cells = parameters.find(|(spec, _, _)| spec.id == "i_N");
    let in_cells = in_cells.map_or(0.0, |(_, mg_per_mg, _)| mg_per_mg);
    let dissolved = r.tan_mg_n_per_l
        + r.nitrite_mg_n_per_l
        + r.nitrate_mg_n_per_l
        + N_PER_CL2 * r.chloramine_mg_cl2_per_l;
    [
        r.plants_mg_n + r.algae_mg_n,
        r.detritus_mg_n + in_cells * microbes,
        dissolved * r.volume_l,
    ]
}
