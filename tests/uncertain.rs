//! What is uncertain: rows that keep their promises, members that hang on nothing else, values that go
//! where they belong.

use std::sync::LazyLock;

use firstfill::analysis::case::Case;
use firstfill::analysis::uncertain::shape::Form;
use firstfill::analysis::uncertain::{LEAST_KD_L_PER_KG, Uncertain, Varied};
use firstfill::base::units::MEQ_PER_DKH;
use firstfill::engine::alike::alike;
use firstfill::engine::event::EventKind;
use firstfill::engine::input::{GasPlan, ModelInput};
use firstfill::scenario;

const SEED: u64 = 1;
const MEMBERS: usize = 4096;

const TANK: &str = "[tank]\ninside = \"60 x 30 x 36 cm\"\nwater_line = \"33 cm\"\n";

fn case(more: &str) -> Case {
    match scenario::read_text("tank.toml", &format!("{TANK}{more}")) {
        Ok(loaded) => loaded.case,
        Err(problems) => panic!("{}", problems.render(false)),
    }
}

fn shipped() -> Vec<Case> {
    let files = std::fs::read_dir("scenarios").unwrap();
    let mut paths: Vec<_> = files.map(|file| file.unwrap().path()).collect();
    paths.retain(|path| path.extension().is_some_and(|end| end == "toml"));
    paths.sort();
    let load = |path: &std::path::PathBuf| scenario::load(path).unwrap().case;
    paths.iter().map(load).collect()
}

/// A tank with everything in it, and a range wherever one is understood.
static FULL: LazyLock<Case> = LazyLock::new(|| {
    case(
        "temperature = \"24..26 °C\"\nlid = true\n\
         [room]\ntemperature = \"18..22 °C\"\nhumidity = \"40..60 %\"\nco2 = \"500..900 ppm\"\n\
         [soil]\nkind = \"rich\"\namount = \"8..10 L\"\n\
         [water.tap]\nalkalinity = \"3..4 dKH\"\nhardness = \"6..9 dGH\"\nnitrate = \"0..10 mg NO3/L\"\n\
         ammonia = \"0.1..0.2 mg N/L\"\nco2 = \"3..8 mg/L\"\noxygen = \"7..9 mg/L\"\ntemperature = \"12..18 °C\"\n\
         [water.ro]\nalkalinity = \"0.1..0.2 dKH\"\n\
         [refill]\nblend = { tap = \"70 %\", ro = \"30 %\" }\n\
         [surface]\ntransfer = \"0.5..0.9 m/day\"\nfilm = \"60..90 %\"\n\
         [light]\non = \"10:00..18:00\"\nat_soil = \"50..80 µmol/m²/s\"\n\
         [light.steps]\nlater = { day = 20, at_soil = \"high\" }\n\
         [gas]\non = \"9:00..17:00\"\nrate = \"2..3 g/day\"\nstop_at = \"28..32 mg/L\"\ndissolved = \"50..80 %\"\n\
         [air]\non = \"22:00..06:00\"\nflow = \"0.5..1 L/min\"\n\
         [plants]\nstems = { cover = \"30..50 %\", density = \"20..40 g/m²\", grown = \"out of water\" }\n\
         carpet = { cover = \"20..40 %\", grown = \"tissue culture\" }\n\
         [seed]\nsponge = { day = 3, amount = \"0.1 L\" }\n\
         [stock]\nfish = { day = 40, count = 10, each = \"0.5 g\" }\n\
         [parameters]\nmu_AOB = { value = \"0.6..1.0 /day\", why = \"a test\" }\n\
         K_NH = { value = \"0.5 mg N/L\", why = \"a test\" }\n",
    )
});

fn row<'a>(uncertain: &'a Uncertain, name: &str) -> &'a Varied {
    let found = uncertain.rows().iter().find(|row| row.name == name);
    found.unwrap_or_else(|| panic!("no row {name}"))
}

/// The tank of a case in which one row alone takes a value.
fn with(case: &Case, name: &str, value: f64) -> ModelInput {
    let uncertain = Uncertain::of(case).only(|row| row.name == name);
    assert_eq!(uncertain.rows().len(), 1, "{name}");
    uncertain.input(case, &[value])
}

fn written(input: &ModelInput) -> String {
    format!("{input:?}")
}

#[test]
fn members_reproduce_the_stated_quantiles_of_every_row() {
    for case in shipped().iter().chain([&*FULL]) {
        let uncertain = Uncertain::of(case);
        let members: Vec<Vec<f64>> = (0..MEMBERS).map(|n| uncertain.draw(SEED, n)).collect();
        for (at, row) in uncertain.rows().iter().enumerate() {
            let below = |point: f64| {
                let count = members.iter().filter(|drawn| drawn[at] < point).count();
                count as f64 / MEMBERS as f64
            };
            // Sobol' points: each stratum of 1/4096 holds one. Streams of chance: four standard
            // deviations of a share of one half, √(¼/4096) each
            let tolerance = if row.name.contains('.') && row.name != "seed.level" {
                4.0 * (0.25 / MEMBERS as f64).sqrt()
            } else {
                1.5 / MEMBERS as f64
            };
            let (low, high) = row.shape.points();
            for (point, share) in [(low, 0.05), (row.shape.at(0.5), 0.5), (high, 0.95)] {
                let off = (below(point) - share).abs();
                assert!(off <= tolerance, "{}: {off} at {share}", row.name);
            }
        }
    }
}

#[test]
fn free_ends_have_the_ends_of_their_range_as_points_and_triangles_never_leave_it() {
    let uncertain = Uncertain::of(&FULL);
    for row in uncertain.rows() {
        let (shape, (low, high)) = (row.shape, row.shape.points());
        let near = |a: f64, b: f64| (a - b).abs() <= 1e-12 * b.abs();
        if shape.form == Form::Triangular {
            assert!(shape.low <= low && high <= shape.high, "{}", row.name);
            assert_eq!((shape.at(0.0), shape.at(1.0)), (shape.low, shape.high));
        } else {
            assert!(
                near(low, shape.low) && near(high, shape.high),
                "{}",
                row.name
            );
            assert!(near(shape.at(0.5), shape.middle), "{}", row.name);
        }
    }
    // of shares, and from nothing, no end is cut off: not one case in a million stands at a bound
    for name in [
        "room.humidity",
        "plants.stems.cover",
        "surface.film",
        "water.tap.nitrate",
    ] {
        let shape = row(&uncertain, name).shape;
        let (least, most) = shape.bounds;
        let far = [1e-6, 1.0 - 1e-6].map(|place| shape.at(place));
        assert!(
            far.iter().all(|value| least < *value && *value < most),
            "{name}: {far:?}"
        );
    }
    assert_eq!(
        row(&uncertain, "water.tap.nitrate").shape.form,
        Form::Triangular
    );
    assert_eq!(
        row(&uncertain, "room.humidity").shape.form,
        Form::SplitLogitNormal
    );
    assert_eq!(row(&uncertain, "psi_back").shape.form, Form::Triangular);
    assert_eq!(row(&uncertain, "pK1_N").shape.form, Form::SplitNormal);
    assert_eq!(row(&uncertain, "k_ex").shape.form, Form::SplitLogNormal);
}

#[test]
fn a_member_is_the_same_alone_and_a_new_input_changes_none() {
    let uncertain = Uncertain::of(&FULL);
    let alone = uncertain.draw(SEED, 17);
    let among: Vec<Vec<f64>> = (0..32).rev().map(|n| uncertain.draw(SEED, n)).collect();
    assert_eq!(among[31 - 17], alone);
    assert_ne!(uncertain.draw(SEED + 1, 17), alone);
    let bare = case("");
    let fewer = Uncertain::of(&bare);
    let drawn = fewer.draw(SEED, 17);
    let mut shared = 0;
    for (row, value) in fewer.rows().iter().zip(&drawn) {
        let same = uncertain
            .rows()
            .iter()
            .position(|other| (&other.name, other.shape) == (&row.name, row.shape));
        if let Some(at) = same {
            assert_eq!(alone[at].to_bits(), value.to_bits(), "{}", row.name);
            shared += 1;
        }
    }
    assert!(shared > 40, "{shared}");
}

/// Nobody said that two inputs go together. Random ranks of 4096 members would be correlated by 0.06 at
/// most, four standard deviations; Sobol' points of high dimensions may be a little worse in pairs.
#[test]
fn rows_are_drawn_independently() {
    let uncertain = Uncertain::of(&FULL);
    let count = uncertain.rows().len();
    let mut ranks = vec![vec![0.0; MEMBERS]; count];
    let members: Vec<Vec<f64>> = (0..MEMBERS).map(|n| uncertain.draw(SEED, n)).collect();
    for (at, ranks) in ranks.iter_mut().enumerate() {
        let mut order: Vec<usize> = (0..MEMBERS).collect();
        order.sort_by(|a, b| members[*a][at].total_cmp(&members[*b][at]));
        for (rank, member) in order.into_iter().enumerate() {
            ranks[member] = (rank as f64 + 0.5) / MEMBERS as f64 - 0.5;
        }
    }
    let mut worst: (f64, usize, usize) = (0.0, 0, 0);
    for a in 0..count {
        for b in 0..a {
            let products = ranks[a].iter().zip(&ranks[b]).map(|(x, y)| x * y);
            let correlation = 12.0 * products.sum::<f64>() / MEMBERS as f64;
            if correlation.abs() > worst.0 {
                worst = (correlation.abs(), a, b);
            }
        }
    }
    let name = |at: usize| &uncertain.rows()[at].name;
    println!("{:.3}: {} and {}", worst.0, name(worst.1), name(worst.2));
    assert!(worst.0 < 0.1, "{} {}", name(worst.1), name(worst.2));
}

#[test]
fn without_rows_a_member_is_the_central_run_to_the_bit() {
    for case in shipped().iter().chain([&*FULL]) {
        let nothing = Uncertain::nothing();
        assert_eq!(nothing.draw(SEED, 3), Vec::<f64>::new());
        assert_eq!(written(&nothing.input(case, &[])), written(&case.input));
    }
}

#[test]
fn central_values_drawn_give_the_central_run() {
    for case in shipped().iter().chain([&*FULL]) {
        let uncertain = Uncertain::of(case);
        let central: Vec<f64> = uncertain.rows().iter().map(|r| r.shape.middle).collect();
        let (drawn, input) = (uncertain.input(case, &central), &case.input);
        // to rounding: Kd comes back from a ratio, waters are blended anew
        let near = |a: f64, b: f64| assert!((a - b).abs() <= 1e-12 * b.abs(), "{a} {b}");
        for ((spec, a, _), (_, b, _)) in drawn.parameters.iter().zip(input.parameters.iter()) {
            assert!((a - b).abs() <= 1e-12 * b.abs(), "{}: {a} {b}", spec.id);
        }
        for (a, b) in drawn
            .refill
            .dissolved()
            .iter()
            .zip(input.refill.dissolved())
        {
            near(a.1, b.1);
        }
        for (a, b) in drawn.stands.iter().zip(&input.stands) {
            near(a.melt_frac, b.melt_frac);
            near(a.cover_frac, b.cover_frac);
            near(a.density_g_per_m2, b.density_g_per_m2);
        }
        for (a, b) in drawn.light.iter().zip(&input.light) {
            near(a.value, b.value);
        }
        near(drawn.tank.volume_l, input.tank.volume_l);
        near(drawn.seed_level, input.seed_level);
    }
}

#[test]
fn members_share_their_times_and_switches() {
    for case in shipped().iter().chain([&*FULL]) {
        let uncertain = Uncertain::of(case);
        let members: Vec<ModelInput> = (0..64)
            .map(|n| uncertain.input(case, &uncertain.draw(SEED, n)))
            .collect();
        let all: Vec<&ModelInput> = [&case.input].into_iter().chain(&members).collect();
        alike(&all).unwrap();
    }
}

#[test]
fn members_stay_possible() {
    for case in shipped().iter().chain([&*FULL]) {
        let uncertain = Uncertain::of(case);
        for member in 0..256 {
            let input = uncertain.input(case, &uncertain.draw(SEED, member));
            for (spec, value, _) in input.parameters.iter() {
                assert!(spec.allows(value), "{}: {value}", spec.id);
            }
            assert!(input.parameters.get("Kd") >= LEAST_KD_L_PER_KG);
            let covers: f64 = input.stands.iter().map(|stand| stand.cover_frac).sum();
            assert!(covers <= 1.0 + 1e-12 && input.tank.volume_l > 0.0);
            let set = |id: &str| input.parameters.get(id);
            assert!(set("Q_min") < set("Q_crit") && set("Q_crit") < set("Q_max"));
        }
    }
}

#[test]
fn pore_water_and_store_set_how_strongly_the_soil_holds() {
    let soil = case("[soil]\namount = \"9 L\"\n");
    let uncertain = Uncertain::of(&soil).only(|row| ["C_p0", "q0"].contains(&row.name.as_str()));
    let kd = |c_p0, q0| uncertain.input(&soil, &[c_p0, q0]).parameters.get("Kd");
    // by hand: 100/10 − 0.6/0.85, and 10/20 − 0.7 is below the least
    assert!((kd(10.0, 100.0) - (10.0 - 0.6 / 0.85)).abs() < 1e-12);
    assert_eq!(kd(20.0, 10.0), LEAST_KD_L_PER_KG);
}

#[test]
fn a_class_of_soil_scales_its_stores_and_its_pore_water() {
    let of = |kind: &str| {
        Uncertain::of(&case(&format!(
            "[soil]\nkind = \"{kind}\"\namount = \"9 L\"\n"
        )))
    };
    let (medium, rich) = (of("medium"), of("rich"));
    for id in ["q0", "N_o0", "P0", "E_H0", "C_p0"] {
        let (a, b) = (row(&medium, id).shape, row(&rich, id).shape);
        let twice = a.times(2.0);
        for (found, expected) in [
            (b.low, twice.low),
            (b.middle, twice.middle),
            (b.high, twice.high),
        ] {
            // the share of pore water in the ratio is the same, so rounding only
            assert!((found / expected - 1.0).abs() < 1e-12, "{id}");
        }
    }
    assert_eq!(row(&medium, "C_p0").shape.low, 4.0);
    let sand = of("inert");
    assert!(
        sand.rows()
            .iter()
            .all(|row| row.name != "q0" && row.name != "C_p0")
    );
}

#[test]
fn the_word_for_the_surface_moves_its_transfer_alone() {
    let gentle = case("[surface]\nkind = \"gentle ripple\"\n");
    let uncertain = Uncertain::of(&gentle);
    let (low, high) = row(&uncertain, "k_600_gentle").shape.points();
    assert!((low - 0.35).abs() < 1e-12 && (high - 0.75).abs() < 1e-12);
    assert_eq!(
        with(&gentle, "k_600_gentle", 0.6).parameters.get("k_600"),
        0.6
    );
    let others = ["k_600", "k_600_ripple", "k_600_still"];
    assert!(
        uncertain
            .rows()
            .iter()
            .all(|row| !others.contains(&row.name.as_str()))
    );
    let measured = Uncertain::of(&case("[surface]\ntransfer = \"0.6 m/day\"\n"));
    assert!(
        measured
            .rows()
            .iter()
            .all(|row| !row.name.starts_with("k_600"))
    );
    assert!(measured.kept().iter().any(|kept| kept.name == "k_600"));
}

#[test]
fn a_word_for_the_light_is_off_by_a_third_and_moves_the_lines_it_stands_in() {
    let lit = case(
        "[light]\non = \"10:00..18:00\"\nat_soil = \"medium\"\n[light.steps]\n\
         a = { day = 9, at_soil = \"70 µmol/m²/s\" }\nb = { day = 20, at_soil = \"medium\" }\n",
    );
    let shape = row(&Uncertain::of(&lit), "I_medium").shape;
    assert!((shape.points().0 - 39.0).abs() < 1e-9 && (shape.points().1 - 81.0).abs() < 1e-9);
    let values = with(&lit, "I_medium", 50.0)
        .light
        .iter()
        .map(|line| line.value)
        .collect::<Vec<_>>();
    assert_eq!(values, [50.0, 70.0, 50.0]);
}

#[test]
fn a_bubble_half_as_wide_again_holds_three_times_the_gas() {
    let counted = |bubble: &str| {
        case(&format!(
            "[gas]\non = \"9:00..17:00\"\nrate = \"1 bubbles/s\"\n{bubble}"
        ))
    };
    let assumed = counted("");
    let rate = |input: &ModelInput| match &input.gas {
        GasPlan::Rate { lines, .. } => lines[0].value,
        _ => panic!("a rate"),
    };
    let (central, wide) = (rate(&assumed.input), rate(&with(&assumed, "d_bub", 6.75)));
    assert!((wide / central - 1.5f64.powi(3)).abs() < 1e-12);
    let measured = Uncertain::of(&counted("bubble = \"4 mm\"\n"));
    assert!(measured.rows().iter().all(|row| row.name != "d_bub"));
}

#[test]
fn first_films_share_one_factor_and_have_one_each() {
    let seeded = case("[seed]\nlevel = \"a little\"\n");
    let uncertain = Uncertain::of(&seeded);
    let (low, high) = row(&uncertain, "seed.level").shape.points();
    assert!((low - 3.0).abs() < 1e-12 && (high - 30.0).abs() < 1e-11);
    let new = row(&Uncertain::of(&case("")), "seed.level").shape.points();
    assert!((new.0 - 0.1).abs() < 1e-13 && (new.1 - 10.0).abs() < 1e-11);
    let (low, high) = row(&uncertain, "XN0").shape.points();
    assert!((low / 2e-5 - 0.3).abs() < 1e-12 && (high / 2e-5 - 3.0).abs() < 1e-12);
    assert_eq!(with(&seeded, "seed.level", 7.0).seed_level, 7.0);
}

#[test]
fn a_plain_value_is_known_and_a_range_is_not() {
    let uncertain = Uncertain::of(&FULL);
    let kept = |name: &str| uncertain.kept().iter().find(|kept| kept.name == name);
    assert_eq!(kept("K_NH").unwrap().why, "set by you, so taken as known");
    let (low, high) = row(&uncertain, "mu_AOB").shape.points();
    assert!((low - 0.6).abs() < 1e-12 && (high - 1.0).abs() < 1e-12);
    assert_eq!(with(&FULL, "mu_AOB", 0.7).parameters.get("mu_AOB"), 0.7);
    assert_eq!(kept("k_dry").unwrap().why, "no dry start");
    let dry = case("");
    let no_animals = Uncertain::of(&dry);
    let e_n = no_animals
        .kept()
        .iter()
        .find(|kept| kept.name == "e_N")
        .unwrap();
    assert_eq!(e_n.why, "no animals planned");
    for row in uncertain.rows() {
        assert!(kept(&row.name).is_none(), "{} is both", row.name);
        assert!(
            !row.source.is_empty() && !row.words.is_empty(),
            "{}",
            row.name
        );
    }
}

#[test]
fn ranges_of_the_scenario_go_where_they_belong() {
    let at = |name: &str, value: f64| with(&FULL, name, value);
    assert_eq!(at("room.temperature", 19.0).room.temperature_c, 19.0);
    assert_eq!(at("room.humidity", 0.45).room.humidity_frac, 0.45);
    assert_eq!(at("room.co2", 800.0).parameters.get("co2_room"), 800.0);
    let warm = at("tank.temperature", 25.5).heating;
    assert_eq!((warm.set_c, warm.start_c), (Some(25.5), 25.5));
    assert_eq!(at("surface.transfer", 0.6).parameters.get("k_600"), 0.6);
    assert_eq!(at("surface.film", 0.8).parameters.get("film"), 0.8);
    assert_eq!(at("gas.dissolved", 0.6).parameters.get("eta_CO2"), 0.6);
    assert_eq!(at("light.at_soil", 77.0).light[0].value, 77.0);
    assert_eq!(at("air.flow", 0.8).air[0].value, 0.8);
    assert_eq!(at("plants.stems.cover", 0.33).stands[0].cover_frac, 0.33);
    assert_eq!(
        at("plants.stems.density", 22.0).stands[0].density_g_per_m2,
        22.0
    );
    assert_eq!(at("w_normal_carpet", 12.0).stands[1].density_g_per_m2, 12.0);
    assert_eq!(at("melt_stems", 0.5).stands[0].melt_frac, 0.5);
    assert_eq!(at("melt_tissue", 0.1).stands[1].melt_frac, 0.1);
    assert_eq!(at("lid_closed", 0.15).parameters.get("lid"), 0.15);
    // 2,400 mg over eight hours
    let GasPlan::Rate {
        lines,
        cut_off_mg_per_l,
    } = at("gas.rate", 2400.0).gas
    else {
        panic!("a rate")
    };
    assert_eq!(
        (lines[0].value, cut_off_mg_per_l),
        (300.0, Some((28.0f64 * 32.0).sqrt()))
    );
    let soil = at("soil.amount", 8.5);
    let water_l = FULL.input.tank.volume_l + FULL.input.tank.soil_l - 8.5;
    assert_eq!(soil.tank.soil_l, 8.5);
    assert!((soil.tank.volume_l - water_l).abs() < 1e-12);
    let films = |input: &ModelInput| {
        let seeds = input.events.iter().find_map(|event| match event.kind {
            EventKind::Seed { mg_cod } => Some(mg_cod),
            _ => None,
        });
        seeds.unwrap()
    };
    // twice the default of 2 mg COD per litre in 0.1 L
    assert!((films(&at("seed_XN", 4.0))[1] - 0.4).abs() < 1e-12);
    assert_eq!(films(&at("seed_XN", 4.0))[0], films(&FULL.input)[0]);
}

#[test]
fn a_range_of_a_water_reaches_the_blend_with_the_carbon_that_goes_with_it() {
    let (low, high) = (3.0 * MEQ_PER_DKH, 4.0 * MEQ_PER_DKH);
    let shape = row(&Uncertain::of(&FULL), "water.tap.alkalinity").shape;
    assert!((shape.points().0 / low - 1.0).abs() < 1e-12);
    assert!((shape.points().1 / high - 1.0).abs() < 1e-12);
    let harder = with(&FULL, "water.tap.alkalinity", high);
    let (before, after) = (&FULL.input.refill, &harder.refill);
    // 70 % of the blend is tap
    let expected = before.alkalinity_meq_per_l + 0.7 * (high - shape.middle);
    assert!((after.alkalinity_meq_per_l - expected).abs() < 1e-12);
    let carbon = after.inorganic_carbon_mmol_per_l - before.inorganic_carbon_mmol_per_l;
    // at the same CO2 nearly all alkalinity that comes is bicarbonate; the rest is carbonate, and activity
    assert!((carbon / (expected - before.alkalinity_meq_per_l) - 1.0).abs() < 0.03);
    assert_eq!(after.nitrate_mg_n_per_l, before.nitrate_mg_n_per_l);
}

#[test]
fn the_central_run_of_a_range_uses_its_middle_and_the_echo_keeps_it() {
    let geometric = case("[surface]\ntransfer = \"0.4..0.9 m/day\"\n");
    assert!((geometric.input.parameters.get("k_600") - 0.6).abs() < 1e-15);
    let arithmetic = case("[room]\ntemperature = \"18..22 °C\"\n");
    assert_eq!(arithmetic.input.room.temperature_c, 20.0);
    let echoed = arithmetic
        .resolved
        .iter()
        .find(|value| value.path == "room.temperature");
    assert_eq!(echoed.unwrap().value, "18..22 °C");
}
