//! Bench data: a small vessel aerated by bubbles, 34 runs. The form is checked, nothing is tuned.
//!
//! Data: teaching laboratory, 2019–2020, MIT, (c) 2019 Monroe Weber-Shirk. Sulphite takes the oxygen
//! first, so a run counts from its lowest reading on, between 2 and 6 mg/L.

mod support;

use firstfill::base::units::{GAS_L_ATM_PER_MOL_K, KELVIN_AT_0_C};
use firstfill::chemistry::solubility;
use firstfill::model::parameter_set::ParameterSet;
use support::check::Check;
use support::least_squares::line;
use support::table::Table;

/// Litres in the vessel.
const VESSEL_L: f64 = 0.75;
/// Temperature of the room, °C: not recorded with the data, assumed.
const ROOM_C: f64 = 22.0;
/// Oxygen between which a run counts, mg/L.
const COUNTED: std::ops::RangeInclusive<f64> = 2.0..=6.0;

struct Run {
    name: String,
    /// µmol of air per second.
    air: f64,
    /// Hours and mg/L.
    points: Vec<(f64, f64)>,
}

fn runs() -> Vec<Run> {
    let table = Table::read("aeration_runs");
    let columns = ["airflow_umol_s", "time_s", "do_mg_l"];
    let mut runs: Vec<Run> = Vec::new();
    for (name, [air, seconds, oxygen]) in table.words("run").iter().zip(table.numbers(columns)) {
        if runs.last().is_none_or(|run| run.name != *name) {
            runs.push(Run {
                name: name.to_string(),
                air,
                points: Vec::new(),
            });
        }
        let points = &mut runs.last_mut().unwrap().points;
        points.push((seconds / 3600.0, oxygen));
    }
    for run in &mut runs {
        let lowest = |a: &&(f64, f64), b: &&(f64, f64)| a.1.total_cmp(&b.1);
        let (from, _) = *run.points.iter().min_by(lowest).unwrap();
        run.points
            .retain(|(hours, oxygen)| *hours >= from && COUNTED.contains(oxygen));
    }
    runs
}

/// What the best exponential leaves unexplained, whatever it tends to: at most 200 per hour.
fn unexplained(run: &Run) -> f64 {
    let bent = |per_hour: f64| {
        let start = run.points[0].0;
        let points = run.points.iter();
        let points = points.map(|(hours, oxygen)| ((-per_hour * (hours - start)).exp(), *oxygen));
        line(&points.collect::<Vec<_>>()).unexplained
    };
    (1..=200).map(f64::from).map(bent).fold(1.0, f64::min)
}

/// Transfer coefficient of a run towards saturation, /h.
fn transfer_per_hour(run: &Run) -> f64 {
    let saturation = solubility::oxygen_saturation_mg_per_l(ROOM_C, 1.0);
    let logs = run.points.iter();
    let logs = logs.map(|(hours, oxygen)| (*hours, (saturation - oxygen).ln()));
    -line(&logs.collect::<Vec<_>>()).slope
}

#[test]
fn oxygen_approaches_saturation_exponentially() {
    let mut check = Check::of("Bubbles: share of the variance an exponential leaves, 34 runs");
    for run in runs() {
        check.see(unexplained(&run), &run.name);
    }
    check.holds(34);
}

#[test]
fn transfer_rises_with_the_air_but_less_than_in_proportion() {
    let logs: Vec<(f64, f64)> = runs()
        .iter()
        .map(|run| (run.air.ln(), transfer_per_hour(run).ln()))
        .collect();
    let power = line(&logs);
    println!(
        "transfer goes with the air to the power {:.2}, R² {:.2}",
        power.slope,
        1.0 - power.unexplained
    );
    let mut exponent = Check::of("Bubbles: power of the air flow in the transfer");
    exponent.see(power.slope, "all runs");
    assert!(power.slope > 0.3, "it does rise: {}", power.slope);
    exponent.holds(1);
    let mut scatter = Check::of("Bubbles: scatter of the runs about that power, as a factor");
    for (run, (log_air, log_transfer)) in runs().iter().zip(&logs) {
        let by_power = power.at_zero + power.slope * log_air;
        scatter.see((log_transfer - by_power).abs().exp(), &run.name);
    }
    scatter.holds(34);
}

#[test]
fn the_air_stone_of_the_program_lies_among_the_runs() {
    let per_flow = ParameterSet::default().get("a_air");
    let litres_per_umol = 1e-6 * GAS_L_ATM_PER_MOL_K * (ROOM_C + KELVIN_AT_0_C);
    let (mut above, mut below) = (0, 0);
    let mut check = Check::of("Bubbles: the air stone's default beside the runs, as a factor");
    for run in runs() {
        let ours = per_flow * run.air * 60.0 * litres_per_umol / VESSEL_L;
        let times = ours / transfer_per_hour(&run);
        check.see(times.max(1.0 / times), &run.name);
        if times > 1.0 { above += 1 } else { below += 1 }
    }
    // in proportion to the air, so too weak for the weakest flows and too strong for the strongest
    assert!(above >= 5 && below >= 5, "{above} above, {below} below");
    check.holds(34);
}
