//! Every row against the ratios that textbooks print: closing a balance cannot catch a typed slip.
//!
//! Ratios are by mass, g per g; alkalinity as CaCO3 (50.04 g per equivalent). Sources and tolerances
//! stand in `tests/README.md`, which these tests read.

mod support;

use firstfill::base::units::{
    CALCIUM_CARBONATE_G_PER_MOL, CARBON_G_PER_MOL, MEQ_PER_DKH, NITROGEN_G_PER_MOL,
    OXYGEN_G_PER_MOL, PHOSPHORUS_G_PER_MOL,
};
use firstfill::model::component::Component;
use firstfill::model::conserved::{Flux, Quantity};
use firstfill::model::parameter_set::ParameterSet;
use firstfill::model::pool::Pool;
use firstfill::model::row::Row;
use firstfill::model::tank_model::TankModel;
use support::check::{Check, digits_apart};
use support::planted_tank;

/// mg CaCO3 per meq.
const CACO3_MG_PER_MEQ: f64 = CALCIUM_CARBONATE_G_PER_MOL / 2.0;

fn model(parameters: &ParameterSet) -> TankModel<f64> {
    planted_tank::model(parameters)
}

/// The row of a name such as `ammonia_oxidation (growth)`.
fn row(model: &TankModel<f64>, name: &str) -> Row<f64> {
    let at = (0..model.rows().len())
        .find(|&at| model.row_name(at) == name)
        .unwrap_or_else(|| panic!("no row {name}"));
    model.rows()[at].1.clone()
}

/// A row of the default tank.
fn default_row(name: &str) -> Row<f64> {
    row(&model(&ParameterSet::default()), name)
}

/// Several rows run together, each so many times.
fn together(parts: &[(f64, &Row<f64>)]) -> Row<f64> {
    parts
        .iter()
        .fold(Row::new("together"), |sum, (times, row)| {
            row.entries.iter().fold(sum, |sum, (component, amount)| {
                sum.put(*component, times * amount)
            })
        })
}

/// Sees how far a ratio is from a printed one, in units of its last digit: half of one prints as stated.
fn see_printed(check: &mut Check, what: &str, found: f64, printed: &str) {
    check.see(digits_apart(found, printed), what);
}

/// Both steps of nitrification run so that no nitrite is left, per g of nitrate made.
fn to_nitrate(parameters: &ParameterSet) -> Row<f64> {
    let model = model(parameters);
    together(&[
        (
            parameters.get("Y_AOB"),
            &row(&model, "ammonia_oxidation (growth)"),
        ),
        (
            parameters.get("Y_NOB"),
            &row(&model, "nitrite_oxidation (growth)"),
        ),
    ])
}

/// Hardly any growth: the bare chemistry (yields of a billionth).
fn without_growth() -> ParameterSet {
    ParameterSet::default()
        .with("Y_AOB", 1e-9)
        .with("Y_NOB", 1e-9)
        .with("Y_K", 1e-9)
}

#[test]
fn oxygen_per_nitrogen_without_growth_is_3_43_1_14_and_4_57() {
    let mut check = Check::of("Nitrification without growth: 3.43, 1.14 and 4.57 g O2 per g N");
    // any text on wastewater, from the half reactions: 3.43, 1.14 and 4.57 g O2 per g N
    let model = model(&without_growth());
    let oxygen = |name: &str, made: Pool| {
        let row = row(&model, name);
        -row.amount(Pool::Oxygen) / row.amount(made)
    };
    see_printed(
        &mut check,
        "to nitrite",
        oxygen("ammonia_oxidation (growth)", Pool::Nitrite),
        "3.43",
    );
    see_printed(
        &mut check,
        "nitrite to nitrate",
        oxygen("nitrite_oxidation (growth)", Pool::Nitrate),
        "1.14",
    );
    see_printed(
        &mut check,
        "complete oxidisers",
        oxygen("complete_oxidation (growth)", Pool::Nitrate),
        "4.57",
    );
    let both = to_nitrate(&without_growth());
    see_printed(
        &mut check,
        "both steps",
        -both.amount(Pool::Oxygen) / both.amount(Pool::Nitrate),
        "4.57",
    );
    check.holds(4);
}

#[test]
fn nitrifying_one_gram_costs_7_14_grams_of_alkalinity_as_calcium_carbonate() {
    // any text on wastewater: 2 mol H+ per mol N, 7.14 g CaCO3 per g N (7.14 with CaCO3 as 100.0,
    // 7.145 with 100.09: hence one unit of the last digit)
    let both = to_nitrate(&without_growth());
    let meq = -both.amount(Pool::Alkalinity) / both.amount(Pool::Nitrate);
    let mut check = Check::of("Nitrification without growth: 7.14 g CaCO3 per g N");
    check.see(meq * CACO3_MG_PER_MEQ - 7.14, "CaCO3");
    check.holds(1);
    // one mg/L of nitrogen costs 0.400 German degrees
    let mut by_hand = Check::of("Nitrification: 2 equivalents per mol N, 0.400 dKH per mg N/L");
    see_printed(
        &mut by_hand,
        "mol per mol",
        meq * NITROGEN_G_PER_MOL,
        "2.0000",
    );
    see_printed(&mut by_hand, "dKH per mg N/L", meq / MEQ_PER_DKH, "0.400");
    by_hand.holds(2);
    // the second step alone costs none
    let second = row(&model(&without_growth()), "nitrite_oxidation (growth)");
    let per_n = second.amount(Pool::Alkalinity) / second.amount(Pool::Nitrate);
    assert!(per_n.abs() < 1e-9, "{per_n}");
}

#[test]
fn with_growth_it_takes_4_2_to_4_4_grams_of_oxygen_and_7_05_of_alkalinity() {
    // Timmons & Ebeling, from memory: 4.18 g O2 and 7.05 g alkalinity per g N, with cells of a
    // higher yield (0.20 g dry cells per g N; ours 0.20 g COD, about 0.14 g dry).
    let defaults = to_nitrate(&ParameterSet::default());
    assert!(defaults.amount(Pool::Nitrite).abs() < 1e-12);
    let taken = -defaults.amount(Pool::Tan);
    let oxygen = -defaults.amount(Pool::Oxygen) / taken;
    let alkalinity = -defaults.amount(Pool::Alkalinity) / taken * CACO3_MG_PER_MEQ;
    println!(
        "with growth: {oxygen:.4} g O2 (text 4.18), {alkalinity:.4} g CaCO3 (text 7.05) per g N"
    );
    assert!((4.2..4.4).contains(&oxygen), "{oxygen}");
    // all of the difference is yield: less growth, so more is burnt
    let mut beside_oxygen = Check::of("Nitrification with growth beside 4.18 g O2 per g N");
    beside_oxygen.see_share(oxygen, 4.18, "default yields");
    beside_oxygen.holds(1);
    let mut beside_acid = Check::of("Nitrification with growth beside 7.05 g alkalinity per g N");
    beside_acid.see_share(alkalinity, 7.05, "default yields");
    beside_acid.holds(1);
    // with the text's yield (0.284 g COD per g N, all counted to the first step) both agree
    let as_text = ParameterSet::default()
        .with("Y_AOB", 0.24)
        .with("Y_NOB", 0.044);
    let as_text = to_nitrate(&as_text);
    let taken = -as_text.amount(Pool::Tan);
    let oxygen = -as_text.amount(Pool::Oxygen) / taken;
    let alkalinity = -as_text.amount(Pool::Alkalinity) / taken * CACO3_MG_PER_MEQ;
    let mut text = Check::of("Nitrification at the text's yield: 4.18 g O2, 7.05 g alkalinity");
    text.see(oxygen - 4.18, "oxygen");
    text.see(alkalinity - 7.05, "alkalinity");
    text.holds(2);
}

#[test]
fn denitrification_gives_back_half_the_alkalinity_and_2_86_grams_of_oxygen_demand() {
    let mut check = Check::of("Denitrification: 3.57 g CaCO3, 2.86 g O2 demand, 1.25 mol C per N");
    // any text on wastewater: 3.57 g CaCO3 and 2.86 g O2 equivalents per g NO3-N, 1.25 mol C per mol
    let row = default_row("denitrification");
    let nitrate = -row.amount(Pool::Nitrate);
    see_printed(
        &mut check,
        "alkalinity",
        row.amount(Pool::Alkalinity) / nitrate * CACO3_MG_PER_MEQ,
        "3.57",
    );
    let burnt = Component::Outside(Flux::SoilCarbon, Quantity::OxygenDemand);
    see_printed(
        &mut check,
        "oxygen demand",
        -row.amount(burnt) / nitrate,
        "2.86",
    );
    let carbon = row.amount(Pool::Dic) * NITROGEN_G_PER_MOL / nitrate;
    see_printed(&mut check, "carbon", carbon, "1.2500");
    let gas = Component::Outside(Flux::NitrogenGas, Quantity::Nitrogen);
    see_printed(
        &mut check,
        "nitrogen gas",
        row.amount(gas) / nitrate,
        "1.0000",
    );
    check.holds(4);
}

#[test]
fn growth_gives_one_mol_of_oxygen_per_carbon_on_ammonium_and_1_14_on_nitrate() {
    let mut check =
        Check::of("Photosynthetic quotient by hand: 1 on ammonium, 1.135 to 1.302 on nitrate");
    // any text on aquatic botany, from memory: photosynthetic quotient about 1.0 on ammonium and
    // 1.1 to 1.3 on nitrate, 1.14 often quoted. Tissue carbon counts as CH2O, so ammonium gives 1
    // exactly; nitrate adds 2 mol O2 per mol N: 1 + 2·N/C. Tissue of 30 mg N and 380 mg C per g has
    // N/C 0.068 mol/mol and gives 1.135, algae of 60 mg N/g give 1.271, the 16:106 of the sea 1.302.
    let model = model(&ParameterSet::default());
    let growth = row(&model, "photosynthesis (stems, phosphorus of the water)");
    let quotient =
        |row: &Row<f64>| row.amount(Pool::Oxygen) / OXYGEN_G_PER_MOL / -row.amount(Pool::Dic);
    let tissue_mg_n = 30.0;
    let on = |uptake: &str| together(&[(1.0, &growth), (tissue_mg_n, &row(&model, uptake))]);
    see_printed(
        &mut check,
        "on ammonium",
        quotient(&on("leaf_uptake (stems, ammonium)")),
        "1.0000",
    );
    let on_nitrate = on("leaf_uptake (stems, nitrate)");
    see_printed(&mut check, "on nitrate", quotient(&on_nitrate), "1.135");
    let mut usual = Check::of("Photosynthetic quotient of plants on nitrate beside 1.14");
    usual.see(quotient(&on_nitrate) - 1.14, "stems");
    usual.holds(1);
    see_printed(
        &mut check,
        "algae on ammonium",
        quotient(&row(&model, "algae_growth (on ammonium)")),
        "1.0000",
    );
    let algae = row(&model, "algae_growth (on nitrate)");
    see_printed(&mut check, "algae on nitrate", quotient(&algae), "1.271");
    let n_per_c = -algae.amount(Pool::Nitrate) / NITROGEN_G_PER_MOL / -algae.amount(Pool::Dic);
    let sea = 1.0 + (quotient(&algae) - 1.0) * (16.0 / 106.0) / n_per_c;
    see_printed(&mut check, "at 16:106", sea, "1.302");
    check.holds(5);
}

#[test]
fn taking_nitrate_makes_alkalinity_and_taking_ammonium_uses_it() {
    let mut check =
        Check::of("Uptake of nitrate, of ammonium, by roots: +1, −1, 0 equivalents per mol N");
    // Wolf-Gladrow et al. 2007, from memory: one equivalent either way per mol of nitrogen
    let per_mol = |name: &str| default_row(name).amount(Pool::Alkalinity) * NITROGEN_G_PER_MOL;
    see_printed(
        &mut check,
        "nitrate",
        per_mol("leaf_uptake (moss, nitrate)"),
        "1.0000",
    );
    see_printed(
        &mut check,
        "ammonium",
        per_mol("leaf_uptake (moss, ammonium)"),
        "-1.0000",
    );
    see_printed(
        &mut check,
        "roots",
        per_mol("root_uptake (carpet)"),
        "0.0000",
    );
    check.holds(3);
}

#[test]
fn burning_gives_one_mol_of_carbon_dioxide_per_mol_of_oxygen() {
    let mut check =
        Check::of("Respiratory quotient: 1 for tissue, 2.66 g O2 per g soil carbon, 0.9 for fish");
    // by definition of CH2O: respiratory quotient 1
    for name in [
        "plant_respiration (stems)",
        "mineralisation (leachable)",
        "mineralisation (slow)",
        "algae_loss (respiration)",
    ] {
        let row = default_row(name);
        let quotient = row.amount(Pool::Dic) * OXYGEN_G_PER_MOL / -row.amount(Pool::Oxygen);
        see_printed(&mut check, name, quotient, "1.0000");
    }
    let soil = default_row("soil_respiration");
    // 2.66 g O2 per g C: 31.998/12.011
    see_printed(
        &mut check,
        "soil carbon",
        -soil.amount(Pool::Oxygen),
        "2.66",
    );
    // fish: 0.9 mol CO2 per mol O2 on protein and fat, from memory
    let fish = default_row("fish_respiration");
    let quotient = fish.amount(Pool::Dic) * OXYGEN_G_PER_MOL / -fish.amount(Pool::Oxygen);
    see_printed(&mut check, "fish", quotient, "0.9000");
    check.holds(4 + 2);
}

#[test]
fn tissue_holds_nitrogen_phosphorus_and_potassium_as_10_to_1_to_8() {
    let mut check =
        Check::of("Plant tissue by hand: N:P:K 10:1:8.33 by mass, N:P 22.1, C:P 327 by atoms");
    // Duarte 1992, from memory: median C:N:P of aquatic plants 435:20:1 by atoms, phosphorus 0.2 to
    // 0.4 %; Gerloff & Krombholz 1966: critical nitrogen and phosphorus 1.3 and 0.13 %, 10 to 1.
    let burnt = default_row("plant_respiration (rosette)");
    let (phosphorus, potassium) = (burnt.amount(Pool::Phosphate), burnt.amount(Pool::Potassium));
    let shed = default_row("shedding (rosette)");
    let nitrogen = shed.amount(Pool::FastDetritusN) + shed.amount(Pool::SlowDetritusN);
    see_printed(&mut check, "N per P by mass", nitrogen / phosphorus, "10.0");
    see_printed(
        &mut check,
        "K per P by mass",
        potassium / phosphorus,
        "8.33",
    );
    let phosphorus_mmol = phosphorus / PHOSPHORUS_G_PER_MOL;
    let nitrogen_per_p = nitrogen / NITROGEN_G_PER_MOL / phosphorus_mmol;
    see_printed(&mut check, "N per P by atoms", nitrogen_per_p, "22.1");
    let mut measured = Check::of("Plant tissue beside the measured median C:N:P of 435:20:1");
    measured.see_share(nitrogen_per_p, 20.0, "N per P");
    let carbon_per_p = burnt.amount(Pool::Dic) / phosphorus_mmol;
    see_printed(&mut check, "C per P by atoms", carbon_per_p, "327");
    // 3 mg P/g is the middle of his range; his median has less
    measured.see_share(carbon_per_p, 435.0, "C per P");
    measured.holds(2);
    let grams_c = burnt.amount(Pool::Dic) * CARBON_G_PER_MOL / 1000.0;
    see_printed(&mut check, "carbon share", grams_c, "0.380");
    check.holds(5);
}

#[test]
fn every_litter_row_keeps_its_mass_and_its_nitrogen() {
    let mut check = Check::of("Litter: its mass and nitrogen, 0.20 of it leachable");
    let mass = default_row("background_loss (moss, tissue)");
    let kept = mass.amount(Pool::FastDetritus) + mass.amount(Pool::SlowDetritus);
    see_printed(&mut check, "mass", kept, "1.0000");
    see_printed(
        &mut check,
        "leachable share",
        mass.amount(Pool::FastDetritus),
        "0.20",
    );
    let nitrogen = default_row("background_loss (moss, nitrogen)");
    let kept = nitrogen.amount(Pool::FastDetritusN) + nitrogen.amount(Pool::SlowDetritusN);
    see_printed(&mut check, "nitrogen", kept, "1.0000");
    check.holds(3);
}

#[test]
fn chloramine_leaves_0_198_mg_of_nitrogen_per_mg_of_chlorine() {
    let mut check = Check::of("Chloramine: 0.198 mg N per mg Cl2");
    // by atomic masses, 14.007/70.906: half a change with 2 mg Cl2/L in the tap adds 0.198 mg N/L
    let row = default_row("residual_decay (chloramine)");
    let nitrogen = row.amount(Pool::Tan) / -row.amount(Pool::Chloramine);
    see_printed(&mut check, "nitrogen", nitrogen, "0.198");
    see_printed(
        &mut check,
        "half a change of 2 mg/L",
        0.5 * 2.0 * nitrogen,
        "0.198",
    );
    check.holds(2);
}

#[test]
fn fish_excrete_92_mg_of_ammonia_nitrogen_per_gram_of_protein_fed() {
    let mut check = Check::of("Fish: 0.092 g ammonia nitrogen per g of protein fed");
    // Timmons & Ebeling, from memory: TAN = 0.092 · feed · protein
    let feeding = default_row("feeding (nitrogen)");
    let nitrogen_per_protein = ParameterSet::default().get("N_feed");
    let excreted = feeding.amount(Pool::Tan) * nitrogen_per_protein / 1000.0;
    see_printed(&mut check, "excreted", excreted, "0.092");
    // 0.3 g of feed with 40 % protein: 11 mg N a day
    see_printed(&mut check, "a fish day", 300.0 * 0.4 * excreted, "11.0");
    check.holds(2);
}
