//! Field data: oxygen of a mountain stream over three days, every 15 minutes.
//!
//! Data: Hotchkiss & Hall, Ecology (CC0), with the answers documented by the public-domain USGS
//! package, v0.12.1. First the published balance with the package's own saturation and Schmidt
//! number, then the same balance with those of this program. Sources and tolerances with their
//! reasons stand in `tests/README.md`, which these tests read.

mod support;

use firstfill::chemistry::solubility::oxygen_saturation_mg_per_l;
use support::check::Check;
use support::least_squares::fit;
use support::stream::{self, MMHG_PER_ATM, Metabolism, PRESSURE_MMHG, Reach, as_documented};
use support::table::Table;

const DATES: [&str; 3] = ["2012-09-18", "2012-09-19", "2012-09-20"];
/// Readings of the three days; one of the last is missing.
const READINGS: usize = 96 + 96 + 95;

/// What the package documents for a date.
fn documented(date: &str) -> Metabolism {
    let table = Table::read("french_creek_answers");
    let columns = ["gpp_g_o2_m2_d", "er_g_o2_m2_d", "k600_per_d"];
    let kinds = table.words("date").into_iter().zip(table.words("source"));
    kinds
        .zip(table.numbers(columns))
        .find(|((of, source), _)| *of == date && *source == "documented")
        .unwrap()
        .1
}

#[test]
fn oxygen_saturation_of_the_stream_is_that_of_the_package() {
    let mut theirs = Check::of("Stream: saturation at 523 mmHg by the published formula");
    let mut ours = Check::of("Stream: saturation at 523 mmHg by this program");
    for date in DATES {
        for moment in stream::day(date) {
            let t = moment.t_c;
            theirs.see(stream::saturation_as_documented(t) - moment.saturation, t);
            let found = oxygen_saturation_mg_per_l(t, PRESSURE_MMHG / MMHG_PER_ATM);
            ours.see(found - moment.saturation, t);
        }
    }
    theirs.holds(READINGS);
    ours.holds(READINGS);
}

#[test]
fn the_documented_parameters_give_the_documented_oxygen() {
    let day = stream::day(DATES[0]);
    let modelled = stream::oxygen(&day, documented(DATES[0]), &as_documented);
    let mut check = Check::of("Stream: modelled oxygen, first hour of 18 September");
    for (found, printed) in modelled.iter().zip([8.41, 8.421013, 8.431849, 8.442322]) {
        check.see(found - printed, printed);
    }
    check.holds(4);
}

fn refit(date: &str, surface: stream::Surface) -> Metabolism {
    let day = stream::day(date);
    let observed: Vec<f64> = day.iter().map(|m| m.oxygen).collect();
    let model = |metabolism| stream::oxygen(&day, metabolism, surface);
    fit(model, &observed, [1.0, -1.0, 20.0])
}

fn see_each(check: &mut Check, found: Metabolism, expected: Metabolism, date: &str) {
    for (what, (found, expected)) in ["GPP", "ER", "K600"].iter().zip(found.iter().zip(expected)) {
        check.see_share(*found, expected, (date, what));
    }
}

#[test]
fn a_refit_finds_production_respiration_and_gas_exchange_again() {
    let mut whole = Check::of("Stream: refit of 18 and 19 September");
    for date in &DATES[..2] {
        let found = refit(date, &as_documented);
        see_each(&mut whole, found, documented(date), date);
    }
    whole.holds(6);
    let mut gap = Check::of("Stream: refit of 20 September");
    let found = refit(DATES[2], &as_documented);
    see_each(&mut gap, found, documented(DATES[2]), DATES[2]);
    gap.holds(3);
}

#[test]
fn with_our_saturation_the_refit_is_nearly_the_same() {
    let ours = |moment: &stream::Moment, k600: f64| {
        let (transfer, _) = as_documented(moment, k600);
        let pressure = PRESSURE_MMHG / MMHG_PER_ATM;
        (transfer, oxygen_saturation_mg_per_l(moment.t_c, pressure))
    };
    let mut check = Check::of("Stream: refit with this program's saturation, 18 and 19 September");
    for date in &DATES[..2] {
        see_each(&mut check, refit(date, &ours), documented(date), date);
    }
    check.holds(6);
}

#[test]
fn with_our_gas_exchange_whole_the_oxygen_of_the_days_is_nearly_the_same() {
    // The process itself, at the altitude that has this pressure; K600 anew, as the two Schmidt
    // numbers differ by 6 % on a cold morning.
    let one = Reach::new(30.0);
    let ours = |moment: &stream::Moment, k600: f64| {
        let (transfer, saturation) = one.surface(moment);
        (transfer * k600 / 30.0, saturation)
    };
    let mut refitted = Check::of("Stream: refit with this program's gas exchange, all days");
    let mut curve = Check::of("Stream: oxygen of all days with this program's gas exchange");
    for date in DATES {
        let day = stream::day(date);
        let theirs = refit(date, &as_documented);
        let found = refit(date, &ours);
        see_each(&mut refitted, found, theirs, date);
        let modelled = stream::oxygen(&day, found, &ours);
        let expected = stream::oxygen(&day, theirs, &as_documented);
        for (place, (found, expected)) in modelled.iter().zip(expected).enumerate() {
            curve.see(found - expected, (date, place));
        }
    }
    refitted.holds(9);
    curve.holds(READINGS);
}

#[test]
fn transfer_of_the_process_goes_with_k_600_and_a_wrong_pressure_would_show() {
    let moment = stream::day(DATES[0])[0];
    let (slow, _) = Reach::new(20.0).surface(&moment);
    let (fast, saturation) = Reach::new(30.0).surface(&moment);
    assert!((fast / slow - 1.5).abs() < 1e-12);
    let at_sea = oxygen_saturation_mg_per_l(moment.t_c, 1.0);
    assert!(at_sea - saturation > 3.0, "{at_sea} and {saturation}");
}
