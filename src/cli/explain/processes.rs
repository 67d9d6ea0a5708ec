//! `explain processes`: the stoichiometric matrix, printed from the code that runs.

use super::sheet::Sheet;
use crate::model::group::Group;
use crate::model::parameter_set::{ParameterSet, Values};
use crate::model::pool::{POOLS, Pool};
use crate::model::processes::{IDS, WHAT};
use crate::model::setup::{Setup, StandPlan, Surroundings, Tank};
use crate::model::tank_model::TankModel;
use crate::output::number::six_digits;

/// One line per row: what one unit of it uses and makes.
pub fn sheet() -> Sheet {
    let model = specimen();
    let table = model.matrix().table();
    let mut sheet = Sheet::new(&["process", "what happens", "row", "one unit changes"]);
    let mut told = None;
    for (at, (process, row)) in model.rows().iter().enumerate() {
        let changes: Vec<String> = (0..POOLS)
            .filter(|&pool| table[[at, pool]] != 0.0)
            .map(|pool| change(Pool::at(pool), table[[at, pool]]))
            .collect();
        let what = if told == Some(process) {
            ""
        } else {
            WHAT[*process]
        };
        told = Some(process);
        sheet.row([
            IDS[*process].to_string(),
            what.to_string(),
            row.part.clone(),
            changes.join(", "),
        ]);
    }
    sheet.foot(
        "Default parameters, one stand of stems; other groups have rows of the same form. Amounts per tank: \
         mg N, mg P, mg, mmol C, meq, mg COD, g dry weight, L, °C. --csv gives the matrix, a column per pool.",
    );
    sheet
}

/// The matrix itself: a row per row, a column per pool that any row touches.
pub fn matrix() -> Sheet {
    let model = specimen();
    let table = model.matrix().table();
    let touched: Vec<usize> = (0..POOLS)
        .filter(|&pool| table.column(pool).iter().any(|&amount| amount != 0.0))
        .collect();
    let mut heads = vec!["process".to_string(), "row".to_string()];
    heads.extend(touched.iter().map(|&pool| name(Pool::at(pool)).to_string()));
    let mut sheet = Sheet::new(&heads);
    for (at, (process, row)) in model.rows().iter().enumerate() {
        let amounts = touched.iter().map(|&pool| six_digits(table[[at, pool]]));
        sheet.row(
            [IDS[*process].to_string(), row.part.clone()]
                .into_iter()
                .chain(amounts),
        );
    }
    sheet
}

/// `alkalinity −0.0323`, which does not break at the end of a line.
fn change(pool: Pool, amount: f64) -> String {
    let sign = if amount < 0.0 { '−' } else { '+' };
    let four_digits: f64 = format!("{:.3e}", amount.abs()).parse().unwrap_or(amount);
    let words = format!("{} {sign}{}", name(pool), six_digits(four_digits));
    words.replace(' ', "\u{a0}")
}

/// A tank with soil and one stand, so that every row is there.
fn specimen() -> TankModel<f64> {
    let values = Values::of(&ParameterSet::default());
    let tank = Tank {
        volume_l: 50.0,
        surface_m2: 0.18,
        bed_m2: 0.18,
        wall_m2: 0.83,
        soil_l: 9.4,
        film_m2: None,
        altitude_m: 0.0,
    };
    let stands = [StandPlan {
        name: "stems".into(),
        group: Group::Stems,
        cover_frac: 0.5,
        density_g_per_m2: 30.0,
        melt_frac: 0.25,
        acclimates: true,
        uses_bicarbonate: false,
        planted_at: 0,
    }];
    TankModel::new(&Setup {
        values: &values,
        tank: &tank,
        stands: &stands,
        surroundings: Surroundings {
            room_c: 22.0,
            humidity_frac: 0.5,
            heater_set_c: 25.0,
            ionic_strength_mol_per_l: 0.004,
            top_up: None,
        },
    })
}

fn name(pool: Pool) -> &'static str {
    match pool {
        Pool::Tan => "total ammonia",
        Pool::Nitrite => "nitrite",
        Pool::Nitrate => "nitrate",
        Pool::Phosphate => "phosphate",
        Pool::Potassium => "potassium",
        Pool::Iron => "iron",
        Pool::Oxygen => "oxygen",
        Pool::Dic => "inorganic carbon",
        Pool::Alkalinity => "alkalinity",
        Pool::Chlorine => "chlorine",
        Pool::Chloramine => "chloramine",
        Pool::Chloride => "chloride",
        Pool::Hardness => "hardness",
        Pool::Volume => "water",
        Pool::Temperature => "temperature",
        Pool::Indicator => "indicator",
        Pool::SoilAmmonium => "soil ammonium",
        Pool::SoilOrganicN => "soil organic N",
        Pool::SoilPhosphorus => "soil phosphorus",
        Pool::SoilAcid => "soil acid",
        Pool::AmmoniaOxidisers => "ammonia oxidisers",
        Pool::NitriteOxidisers => "nitrite oxidisers",
        Pool::CompleteOxidisers => "complete oxidisers",
        Pool::Algae => "algae",
        Pool::FastDetritus => "fast detritus",
        Pool::SlowDetritus => "slow detritus",
        Pool::FastDetritusN => "N of fast detritus",
        Pool::SlowDetritusN => "N of slow detritus",
        Pool::Biomass(_) => "plants",
        Pool::TissueN(_) => "N of plants",
        Pool::Emersed(_) => "tissue to be shed",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_process_is_in_the_table_and_in_the_matrix() {
        let (table, matrix) = (sheet().csv(), matrix().csv());
        for id in IDS {
            assert!(table.contains(&format!("\n{id},")), "{id}");
            assert!(matrix.contains(&format!("\n{id},")), "{id}");
        }
    }

    #[test]
    fn denitrification_gives_a_fourteenth_of_a_milliequivalent_per_milligram() {
        // by atomic mass: 1/14.007 meq per mg N
        let row = matrix()
            .csv()
            .lines()
            .find(|l| l.starts_with("denitrification"))
            .unwrap()
            .to_string();
        assert!(row.contains("0.0713929"), "{row}");
    }
}
