//! Batch tests in the laboratory against the closed forms of textbooks.
//!
//! Tolerances, reasons and what was found stand in `tests/README.md`, which these tests read.

mod support;

use firstfill::base::clock::{TimeOfDay, Window, days};
use firstfill::base::units::CO2_G_PER_MOL;
use firstfill::chemistry::{schmidt, solubility};
use firstfill::engine::event::{Animals, EventKind};
use firstfill::engine::laboratory::Laboratory;
use firstfill::model::parameter_set::ParameterSet;
use firstfill::model::pool::Pool;
use firstfill::model::setup::Tank;
use support::bottle::{fed_evenly, limited_by_ammonia_alone, open_vessel};
use support::check::Check;

/// A default of the model.
fn usual(id: &str) -> f64 {
    ParameterSet::default().get(id)
}

// Nitrifiers

/// Lambert's W of e^x: the w with w + ln w = x, by Newton's steps, which from below never pass it.
fn lambert_w_of_exp(x: f64) -> f64 {
    let mut w = (x - 1.0).exp().min(1.0);
    for _ in 0..50 {
        w *= (1.0 + x - w.ln()) / (1.0 + w);
    }
    w
}

#[test]
fn lamberts_w_has_its_known_values() {
    let mut check = Check::of("Lambert's W at 1, and at w·e^w for w from 0.0001 to 20");
    let omega = 0.567_143_290_409_784;
    check.see_share(lambert_w_of_exp(0.0), omega, "1");
    for w in [1e-4, 0.1, 1.0, 2.0, 20.0f64] {
        check.see_share(lambert_w_of_exp(w.ln() + w), w, w);
    }
    check.holds(6);
}

#[test]
fn constant_biomass_eats_ammonia_as_lamberts_w_has_it() {
    // S = K·W(S0/K·e^((S0 − V·t)/K)), V = (1/Y + i_N)·µ·X
    let mut check = Check::of("Constant biomass: ammonia left of 10 mg N/L over two days");
    let mut compared = 0;
    for half in [0.5, 2.0] {
        let (start, films) = (10.0, 1.5);
        let test = limited_by_ammonia_alone()
            .only(&["ammonia_oxidation"])
            .parameter("K_NH", half)
            .dissolved(Pool::Tan, start)
            .amount(Pool::AmmoniaOxidisers, films)
            .hold(&[Pool::AmmoniaOxidisers])
            .run(2.0)
            .unwrap();
        let fastest = (1.0 / usual("Y_AOB") + usual("i_N")) * usual("mu_AOB") * films;
        for sample in test.samples() {
            let x = (start / half).ln() + (start - fastest * sample.days) / half;
            let left = half * lambert_w_of_exp(x);
            check.see(sample.reading.tan_mg_n_per_l - left, (half, sample.days));
        }
        assert!(
            test.last().reading.tan_mg_n_per_l < 0.05 * start,
            "eaten up"
        );
        compared += test.samples().len();
    }
    check.holds(compared);
}

#[test]
fn with_ammonia_in_plenty_biomass_grows_exponentially() {
    // X = X0·e^((µ − b)·t)
    let mut check = Check::of("Ammonia in plenty: biomass over five days");
    let (growth, loss) = (0.8, 0.1);
    let test = limited_by_ammonia_alone()
        .only(&["ammonia_oxidation", "nitrifier_loss"])
        .parameter("mu_AOB", growth)
        .parameter("b_AOB", loss)
        .dissolved(Pool::Tan, 1e4)
        .amount(Pool::AmmoniaOxidisers, 0.01)
        .run(5.0)
        .unwrap();
    for sample in test.samples() {
        let expected = 0.01 * ((growth - loss) * sample.days).exp();
        check.see_share(sample.state[Pool::AmmoniaOxidisers], expected, sample.days);
    }
    check.holds(test.samples().len());
}

/// Films fed evenly until nothing moves: speed of growth and of loss, mg N/day.
fn fed_films(growth: f64, loss: f64, mg_n_per_day: f64) -> Laboratory {
    let films = limited_by_ammonia_alone()
        .only(&["feeding", "ammonia_oxidation", "nitrifier_loss"])
        .parameter("mu_AOB", growth)
        .parameter("b_AOB", loss)
        .dissolved(Pool::Tan, 2.0)
        .amount(Pool::AmmoniaOxidisers, 0.5);
    fed_evenly(films, mg_n_per_day)
}

#[test]
fn fed_films_come_to_rest_where_growth_equals_loss() {
    // S* = K·b/(µ − b), whatever is fed; X* = Y·F/b
    let mut ammonia = Check::of("Films fed evenly: ammonia at rest, K·b/(µ − b)");
    let mut films = Check::of("Films fed evenly: biomass at rest, Y·F/b");
    for (growth, loss) in [(0.8, 0.1), (0.5, 0.2), (0.3, 0.2)] {
        for fed in [0.5, 1.0] {
            let test = fed_films(growth, loss, fed).run(400.0).unwrap();
            let rest = test.last();
            let left = usual("K_NH") * loss / (growth - loss);
            ammonia.see_share(rest.reading.tan_mg_n_per_l, left, (growth, loss, fed));
            let expected = usual("Y_AOB") * fed / loss;
            films.see_share(
                rest.state[Pool::AmmoniaOxidisers],
                expected,
                (growth, loss, fed),
            );
        }
    }
    ammonia.holds(6);
    films.holds(6);
}

#[test]
fn films_that_grow_slower_than_they_are_lost_wash_out() {
    // below µ = b all that is fed stays; a little above it the films hold on
    let mut check = Check::of("Washed-out films: ammonia rises by what is fed");
    let (loss, fed) = (0.2, 0.5);
    let test = fed_films(0.8 * loss, loss, fed).run(400.0).unwrap();
    let risen = |from: f64, until: f64| {
        let at = |days| test.at(days).unwrap().reading.tan_mg_n_per_l;
        at(until) - at(from)
    };
    check.see_share(risen(300.0, 400.0), 100.0 * fed, "the last 100 days");
    check.holds(1);
    assert!(test.last().state[Pool::AmmoniaOxidisers] < 1e-5);
    let holding_on = fed_films(1.25 * loss, loss, fed).run(400.0).unwrap();
    assert!(holding_on.last().state[Pool::AmmoniaOxidisers] > 0.1);
}

// Gas

const LITRES: f64 = 10.0;
const SURFACE_M2: f64 = 0.04;

/// Speed of exchange through its surface, /day.
fn exchange_per_day(schmidt: f64) -> f64 {
    usual("k_600") * (600.0 / schmidt).sqrt() * 1000.0 * SURFACE_M2 / LITRES
}

/// A concentration under two settings that take turns every day: a speed and where it leads to, from
/// `on` until `off` (days) and outside.
struct DayAndNight {
    on: f64,
    off: f64,
    per_day: [f64; 2],
    rest: [f64; 2],
}

impl DayAndNight {
    /// The concentration at a time, once every day is like the one before.
    ///
    /// ```text
    /// c(on) = (r_o·(1 − E_o) + E_o·r_i·(1 − E_i))/(1 − E_i·E_o), E = e^(−k·length); i inside, o outside
    /// ```
    fn at(&self, days: f64) -> f64 {
        let [inside, outside] = self.per_day;
        let [rest_in, rest_out] = self.rest;
        let left_in = (-inside * (self.off - self.on)).exp();
        let left_out = (-outside * (1.0 - self.off + self.on)).exp();
        let at_on = (rest_out * (1.0 - left_out) + left_out * rest_in * (1.0 - left_in))
            / (1.0 - left_in * left_out);
        let since = (days - self.on).rem_euclid(1.0);
        let length = self.off - self.on;
        let until_off = since.min(length);
        let then = rest_in + (at_on - rest_in) * (-inside * until_off).exp();
        rest_out + (then - rest_out) * (-outside * (since - until_off)).exp()
    }
}

#[test]
fn oxygen_under_night_air_follows_its_periodic_form() {
    let mut check = Check::of("Night air and breathing: oxygen through a day that repeats itself");
    let (grams, flow) = (5.0, 0.1);
    let night = Window {
        on: TimeOfDay::at(2, 15),
        off: TimeOfDay::at(12, 40),
    };
    let test = open_vessel(LITRES, SURFACE_M2)
        .only(&["gas_exchange", "fish_respiration"])
        .parameter("K_OD", 0.0)
        .parameter("th_fish", 1.0)
        .dissolved(Pool::Oxygen, 8.0)
        .air(night, flow)
        .at(0.0, breathing(grams))
        .run(12.0)
        .unwrap();
    let still = exchange_per_day(schmidt::oxygen(20.0));
    let aired = still + 24.0 * usual("a_air") * flow / LITRES;
    let breathed = 24.0 * usual("m_O2") * grams / LITRES;
    let full = solubility::oxygen_saturation_mg_per_l(20.0, 1.0);
    let form = DayAndNight {
        on: days(night.on.0),
        off: days(night.off.0),
        per_day: [aired, still],
        rest: [full - breathed / aired, full - breathed / still],
    };
    let repeated: Vec<_> = test.samples().iter().filter(|s| s.days >= 11.0).collect();
    for sample in &repeated {
        let expected = form.at(sample.days);
        check.see(sample.reading.oxygen_mg_per_l - expected, sample.days);
    }
    let swing = form.at(form.off) - form.at(form.on);
    assert!(swing > 1.0, "day and night differ by {swing} mg/L");
    check.holds(repeated.len());
}

/// Animals of some grams that are not fed.
fn breathing(grams: f64) -> EventKind {
    EventKind::Stock(Animals {
        mass_g: grams,
        feed_g_per_day: 0.0,
        protein_frac: 0.0,
        shrimp: false,
    })
}

#[test]
fn carbon_dioxide_under_daily_gas_follows_its_periodic_form() {
    let mut check = Check::of("Gas by day in sour water: CO2 through a day that repeats itself");
    let mg_per_h = 20.0;
    let hours = Window {
        on: TimeOfDay::at(8, 0),
        off: TimeOfDay::at(18, 30),
    };
    let test = open_vessel(LITRES, SURFACE_M2)
        .only(&["gas_exchange", "co2_injection"])
        .parameter("eta_CO2", 1.0)
        .dissolved(Pool::Alkalinity, -1.0)
        .gas(hours, mg_per_h)
        .run(12.0)
        .unwrap();
    let per_day = exchange_per_day(schmidt::carbon_dioxide(20.0));
    let room = solubility::co2_saturation_mg_per_l(20.0, 1.0, usual("co2_room"));
    let form = DayAndNight {
        on: days(hours.on.0),
        off: days(hours.off.0),
        per_day: [per_day, per_day],
        rest: [room + 24.0 * mg_per_h / LITRES / per_day, room],
    };
    let repeated: Vec<_> = test.samples().iter().filter(|s| s.days >= 11.0).collect();
    for sample in &repeated {
        let all_carbon = sample.reading.inorganic_carbon_mmol_per_l * CO2_G_PER_MOL;
        check.see_share(all_carbon, form.at(sample.days), sample.days);
    }
    check.holds(repeated.len());
}

// Soil

/// Fifty litres over 9.4 L of soil at 20 °C, and what the two boxes do: litres that hold the soil's
/// ammonium, and litres exchanged a day.
fn over_soil() -> (Laboratory, f64, f64) {
    let (bed_m2, soil_l) = (0.18, 9.4);
    let vessel = Laboratory::vessel(Tank {
        volume_l: 50.0,
        surface_m2: bed_m2,
        bed_m2,
        wall_m2: 0.0,
        soil_l,
        film_m2: None,
        altitude_m: 0.0,
    });
    let holds_l = soil_l * (usual("rho_soil") * usual("Kd") + usual("por"));
    let exchanged = usual("k_ex") * usual("th_ex").powi(-5) * 1000.0 * bed_m2;
    (vessel, holds_l, exchanged)
}

#[test]
fn a_soil_that_mineralises_leaches_as_a_chain_of_three_boxes() {
    // dO = −k·O, dW = q·((N + O0·(1 − e^(−k·t)) − W)/h − W/V), so with λ = q·(1/h + 1/V):
    // W = q/h·((N + O0)/λ·(1 − e^(−λ·t)) − O0/(λ − k)·(e^(−k·t) − e^(−λ·t)))
    let mut check = Check::of("Mineralising soil and water as three boxes: ammonia in the water");
    let (vessel, holds_l, exchanged) = over_soil();
    let (ammonium, organic, per_day) = (700.0, 1600.0, 0.02);
    let test = vessel
        .only(&["soil_exchange", "soil_mineralisation"])
        .parameter("k_min", per_day)
        .amount(Pool::SoilAmmonium, ammonium)
        .amount(Pool::SoilOrganicN, organic)
        .run(56.0)
        .unwrap();
    let evens = exchanged * (1.0 / holds_l + 1.0 / 50.0);
    for sample in &test.samples()[1..] {
        let left = |per_day: f64| (-per_day * sample.days).exp();
        let expected = exchanged / holds_l
            * ((ammonium + organic) / evens * (1.0 - left(evens))
                - organic / (evens - per_day) * (left(per_day) - left(evens)));
        check.see_share(sample.state[Pool::Tan], expected, sample.days);
    }
    check.holds(test.samples().len() - 1);
}

#[test]
fn changes_wash_a_soil_out_as_two_boxes_have_it() {
    // between changes W → W∞ + (W − W∞)·e^(−λ·t) with the total kept; a change takes a share of W
    let mut check = Check::of("Soil washed out by daily changes: ammonia just before each");
    let (vessel, holds_l, exchanged) = over_soil();
    let (ammonium, share, changes) = (700.0, 0.4, 40);
    let changed = (1..=changes).fold(vessel, |vessel, day| {
        vessel.at(f64::from(day), EventKind::Change { share })
    });
    let test = changed
        .only(&["soil_exchange"])
        .amount(Pool::SoilAmmonium, ammonium)
        .run(f64::from(changes) + 1.0)
        .unwrap();
    let left_of_a_day = (-exchanged * (1.0 / holds_l + 1.0 / 50.0)).exp();
    let (mut total, mut water) = (ammonium, 0.0);
    for (done, sample) in test.before_events().enumerate() {
        let even = total * 50.0 / (50.0 + holds_l);
        water = even + (water - even) * left_of_a_day;
        check.see_share(sample.state[Pool::Tan], water, done);
        total -= share * water;
        water *= 1.0 - share;
    }
    assert!(total < 0.5 * ammonium, "{total} mg N left");
    check.holds(changes as usize);
}

// Changes

#[test]
fn what_fades_between_changes_ends_in_a_saw_tooth() {
    // after each change f·tap·(1 − q^n)/(1 − q) with q = (1 − f)·e^(−k·T)
    let mut check = Check::of("Chlorine that fades between changes: after each");
    let (share, tap, per_day, changes) = (0.3, 0.5, 1.0, 12);
    let changed = (1..=changes).fold(Laboratory::bottle(20.0), |bottle, day| {
        bottle.at(f64::from(day), EventKind::Change { share })
    });
    let test = changed
        .only(&["residual_decay"])
        .parameter("k_Cl", per_day)
        .refilled_with(Pool::Chlorine, tap)
        .run(f64::from(changes) + 1.0)
        .unwrap();
    let kept: f64 = (1.0 - share) * (-per_day).exp();
    for done in 1..=changes {
        let expected = share * tap * (1.0 - kept.powi(done)) / (1.0 - kept);
        let after = test.at(f64::from(done)).unwrap();
        check.see_share(after.reading.chlorine_mg_cl2_per_l, expected, done);
    }
    check.holds(changes as usize);
}
