//! The processes, in the order a reader meets them: our Gujer matrix.
//!
//! One process is one file: what happens in plain words, formula, parameters, rows, rate. To add
//! one, write the file and add its line to the list below; every test that loops over the list
//! (balances, ranges, sources) finds it by itself.

use crate::base::real::Real;

use super::parameter::ParameterSpec;
use super::process::{Builder, Process};
use super::row::Row;
use super::water::Water;

/// Declares the modules, and a struct that holds one of each process.
macro_rules! processes {
    ($($module:ident :: $name:ident),* $(,)?) => {
        $(pub mod $module;)*

        /// Name of every process, in order.
        pub const IDS: &[&str] = &[$(<$module::$name<f64> as Process<f64>>::ID),*];
        /// What every process is, in one line.
        pub const WHAT: &[&str] = &[$(<$module::$name<f64> as Process<f64>>::WHAT),*];
        /// Parameters of every process.
        pub const PARAMETERS: &[&[ParameterSpec]] = &[$(<$module::$name<f64> as Process<f64>>::PARAMETERS),*];

        /// All processes of one tank.
        #[derive(Debug, Clone)]
        pub struct Processes<R> {
            $(#[allow(missing_docs)] pub $module: $module::$name<R>,)*
            counts: [usize; IDS.len()],
        }

        impl<R: Real> Processes<R> {
            /// Builds every process; the rows come with the place of their process in [`IDS`].
            pub fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<(usize, Row<R>)>) {
                let mut all = Vec::new();
                let mut counts = [0; IDS.len()];
                let mut place = 0;
                $(
                    let ($module, rows) = <$module::$name<R> as Process<R>>::new(builder);
                    counts[place] = rows.len();
                    all.extend(rows.into_iter().map(|row| (place, row)));
                    place += 1;
                )*
                let _ = place;
                (Processes { $($module,)* counts }, all)
            }
            /// Writes the rates of all rows, per day.
            #[inline(always)]
            pub fn rates(&self, water: &Water<R>, rates: &mut [R]) {
                let mut rest = rates;
                let mut place = 0;
                $(
                    let (own, next) = rest.split_at_mut(self.counts[place]);
                    Process::<R>::rates(&self.$module, water, own);
                    rest = next;
                    place += 1;
                )*
                let _ = (rest, place);
            }
        }
    };
}

processes! {
    soil_exchange::SoilExchange,
    phosphorus_exchange::PhosphorusExchange,
    soil_mineralisation::SoilMineralisation,
    soil_respiration::SoilRespiration,
    acid_exchange::AcidExchange,
    denitrification::Denitrification,
    ammonia_oxidation::AmmoniaOxidation,
    nitrite_oxidation::NitriteOxidation,
    complete_oxidation::CompleteOxidation,
    nitrifier_loss::NitrifierLoss,
    residual_decay::ResidualDecay,
    photosynthesis::Photosynthesis,
    plant_respiration::PlantRespiration,
    leaf_uptake::LeafUptake,
    root_uptake::RootUptake,
    background_loss::BackgroundLoss,
    shedding::Shedding,
    mineralisation::Mineralisation,
    algae_growth::AlgaeGrowth,
    algae_loss::AlgaeLoss,
    feeding::Feeding,
    fish_respiration::FishRespiration,
    gas_exchange::GasExchange,
    bubbles::Bubbles,
    co2_injection::Co2Injection,
    iron_loss::IronLoss,
    evaporation::Evaporation,
    top_up::TopUp,
    heat::Heat,
    indicator::Indicator,
}
