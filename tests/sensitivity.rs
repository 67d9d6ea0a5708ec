//! Shares of variance, elementary effects and distances against tables of a reference library and exact values.

mod support;

use std::f64::consts::PI;

use firstfill::analysis::sensitivity::effects::EffectSums;
use firstfill::analysis::sensitivity::saltelli::Design;
use firstfill::analysis::sensitivity::trajectories::Trajectories;
use firstfill::analysis::sensitivity::variance::VarianceSums;
use firstfill::analysis::sensitivity::{bootstrap, latin, pawn, rank};
use firstfill::base::sobol;
use support::check::Check;
use support::table::Table;

/// Ishigami & Homma 1990, with a = 7 and b = 0.1; inputs from −π to π.
fn ishigami(x: &[f64]) -> f64 {
    let [a, b, c] = [0, 1, 2].map(|at| PI * (2.0 * x[at] - 1.0));
    a.sin() + 7.0 * b.sin().powi(2) + 0.1 * c.powi(4) * a.sin()
}

/// Sobol's function g of eight inputs (Saltelli & Sobol' 1995).
fn g8(x: &[f64]) -> f64 {
    const A: [f64; 8] = [0.0, 1.0, 4.5, 9.0, 99.0, 99.0, 99.0, 99.0];
    let factor = |(x, a): (&f64, f64)| ((4.0 * x - 2.0).abs() + a) / (1.0 + a);
    x.iter().zip(A).map(factor).product()
}

/// A function by its name in the tables, and how many inputs it has.
fn function(name: &str) -> (fn(&[f64]) -> f64, usize) {
    match name {
        "ishigami" => (ishigami, 3),
        "g8" => (g8, 8),
        other => panic!("no function {other}"),
    }
}

/// Unshifted Sobol' points, as the library takes them.
fn unshifted(point: u32, dimension: usize) -> f64 {
    f64::from(sobol::digits(point, dimension)) / 4_294_967_296.0
}

fn sums(of: impl Fn(&[f64]) -> f64, design: Design, points: u32) -> VarianceSums {
    let mut sums = VarianceSums::new(design);
    for point in 0..points {
        let row = |place: usize| -> Vec<f64> {
            let row = design.row(place);
            let inputs = 0..design.inputs;
            let coordinate = |input| design.coordinate(row, input, |at| unshifted(point, at));
            inputs.map(coordinate).collect()
        };
        let outputs: Vec<f64> = (0..design.rows()).map(|place| of(&row(place))).collect();
        sums.take(&outputs, 1.0);
    }
    sums
}

#[test]
fn shares_of_variance_are_those_of_a_reference_library() {
    let table = Table::read("sobol_indices");
    let (names, orders) = (table.words("function"), table.words("second_order"));
    let numbers = table.numbers(["n", "var", "s1_salib", "st_salib"]);
    assert_eq!(names.len(), numbers.len());
    let mut check =
        Check::of("First and total shares of variance, two functions, 64 to 16,384 points");
    for (at, [points, input, first, total]) in numbers.into_iter().enumerate() {
        let (of, inputs) = function(names[at]);
        let design = Design {
            inputs,
            second_order: orders[at] == "yes",
        };
        let found = sums(of, design, points as u32).shares()[input as usize - 1];
        check.see(found.first - first, (names[at], points, input, "first"));
        check.see(found.total - total, (names[at], points, input, "total"));
    }
    check.holds(2 * table.len());
}

#[test]
fn shares_of_variance_come_to_the_exact_ones() {
    let table = Table::read("sobol_indices");
    let names = table.words("function");
    let exact = table.numbers(["n", "var", "s1_analytic", "st_analytic"]);
    let mut check = Check::of("Shares of variance of 16,384 points, exact values");
    for (at, [points, input, first, total]) in exact.into_iter().enumerate() {
        if points != 16384.0 {
            continue;
        }
        let (of, inputs) = function(names[at]);
        let design = Design {
            inputs,
            second_order: false,
        };
        let found = sums(of, design, points as u32).shares()[input as usize - 1];
        check.see(found.first - first, (names[at], input, "first"));
        check.see(found.total - total, (names[at], input, "total"));
    }
    // y = x1·x2 + x3 on the cube: 3/19, 3/19, 12/19 alone, and 1/19 by the first two together
    let design = Design {
        inputs: 3,
        second_order: true,
    };
    let sums = sums(|x| x[0] * x[1] + x[2], design, 16384);
    let exact = [(3.0, 4.0), (3.0, 4.0), (12.0, 12.0)];
    for (found, (first, total)) in sums.shares().into_iter().zip(exact) {
        check.see(found.first - first / 19.0, "product and sum");
        check.see(found.total - total / 19.0, "product and sum");
    }
    for ((j, k, found), exact) in sums.second_order().into_iter().zip([1.0, 0.0, 0.0]) {
        check.see(found - exact / 19.0, (j, k));
    }
    check.holds(2 * 11 + 6 + 3);
}

#[test]
fn elementary_effects_are_those_of_a_reference_library() {
    let design = Table::read("morris_design_ishigami_levels");
    let rows = design.numbers(["l1", "l2", "l3", "y"]);
    let mut effects = [EffectSums::default(); 3];
    let mut points = Check::of("The function of the table of trajectories");
    for trajectory in rows.as_chunks::<4>().0 {
        for [before, after] in trajectory.array_windows() {
            let input = (0..3).find(|&at| before[at] != after[at]).unwrap();
            let up_by = (after[input] - before[input]) / 3.0;
            let at = |row: &[f64; 4]| ishigami(&[row[0] / 3.0, row[1] / 3.0, row[2] / 3.0]);
            points.see(at(after) - after[3], after);
            effects[input].take(at(before), at(after), up_by);
        }
    }
    points.holds(3 * 50);
    let table = Table::read("morris_measures");
    let expected = table.numbers(["mu_salib", "mu_star_salib", "sigma_salib"]);
    let mut check = Check::of("Measures of elementary effects");
    for (effects, [mu, mu_star, sigma]) in effects.iter().zip(expected) {
        let found = effects.measures();
        check.see(found.mu - mu, "mu");
        check.see(found.mu_star - mu_star, "mu*");
        check.see(found.sigma.unwrap() - sigma, "sigma");
    }
    check.holds(9);
}

#[test]
fn trajectories_of_our_own_come_to_the_exact_effects() {
    const DRAWN: u64 = 20_000;
    let table = Table::read("morris_measures");
    let names = table.words("function");
    let exact = table.numbers(["var", "mu_exact", "mu_star_exact", "sigma_exact"]);
    let mut check = Check::of("Elementary effects of 20,000 trajectories, exact values");
    for name in ["ishigami", "g8"] {
        let (of, inputs) = function(name);
        let design = Trajectories {
            inputs,
            levels: 4,
            seed: 1,
        };
        let mut effects = vec![EffectSums::default(); inputs];
        for number in 0..DRAWN {
            let drawn = design.draw(number);
            let at = |point: &[usize]| -> Vec<f64> {
                point
                    .iter()
                    .map(|&level| design.coordinate(level))
                    .collect()
            };
            for (two, &input) in drawn.points.windows(2).zip(&drawn.stepped) {
                let [before, after] = [at(&two[0]), at(&two[1])];
                effects[input].take(of(&before), of(&after), after[input] - before[input]);
            }
        }
        for (place, [input, mu, mu_star, sigma]) in exact.iter().copied().enumerate() {
            if names[place] == name {
                let found = effects[input as usize - 1].measures();
                let scale = sigma.max(mu_star);
                check.see((found.mu - mu) / scale, (name, input, "mu"));
                check.see((found.mu_star - mu_star) / scale, (name, input, "mu*"));
                check.see(
                    (found.sigma.unwrap() - sigma) / scale,
                    (name, input, "sigma"),
                );
            }
        }
    }
    check.holds(3 * table.len());
}

/// Intervals of replicates hold the exact share about as often as they say.
#[test]
fn bootstrap_intervals_hold_the_exact_share() {
    const REPLICATES: usize = 200;
    let design = Design {
        inputs: 3,
        second_order: false,
    };
    let [first, others] = [0.557_588_86, 0.442_411_14]; // total shares of the first two inputs, analytic
    let mut held = 0;
    for seed in 0..40 {
        let clouds: Vec<_> = (0..design.coordinates())
            .map(|dimension| sobol::Shifted::of(seed, dimension))
            .collect();
        let mut replicates = vec![VarianceSums::new(design); REPLICATES];
        for point in 0..256 {
            let row = |place: usize| -> Vec<f64> {
                let row = design.row(place);
                let coordinate = |input| design.coordinate(row, input, |at| clouds[at].at(point));
                (0..3).map(coordinate).collect()
            };
            let outputs: Vec<f64> = (0..design.rows()).map(|at| ishigami(&row(at))).collect();
            let times = bootstrap::times(seed, u64::from(point), REPLICATES);
            for (sums, times) in replicates.iter_mut().zip(times) {
                sums.take(&outputs, f64::from(times));
            }
        }
        for (input, exact) in [first, others].into_iter().enumerate() {
            let totals = replicates.iter().map(|sums| sums.shares()[input].total);
            let [low, high] = bootstrap::interval(totals.collect()).unwrap();
            held += u32::from((low..=high).contains(&exact));
        }
    }
    // 95 of 100 of 80 is 76; evenly lying points err less than the replicates believe
    assert!(held >= 72, "{held} of 80 intervals hold the exact share");
}

#[test]
fn an_input_that_does_nothing_lies_no_further_apart_than_by_chance() {
    const RUNS: usize = 4000;
    const SLOTS: usize = 10;
    let inputs: Vec<Vec<f64>> = (0..4).map(|input| latin::column(1, input, RUNS)).collect();
    let outputs: Vec<f64> = (0..RUNS)
        .map(|run| ishigami(&[inputs[0][run], inputs[1][run], inputs[2][run]]))
        .collect();
    let apart = |input: usize| pawn::apart(&inputs[input], &outputs, SLOTS).unwrap();
    let chance = pawn::by_chance(&outputs, SLOTS).unwrap().middle;
    let nothing = apart(3).median;
    assert!(
        (0.5 * chance..1.5 * chance).contains(&nothing),
        "{nothing} {chance}"
    );
    assert!(apart(0).median > 5.0 * chance && apart(1).median > 3.0 * chance);
    assert!(apart(0).most > apart(0).median);
    // the second input moves the output up and down: no rank correlation sees it
    let found = rank::partial(&inputs, &outputs).unwrap();
    assert!(found[0] > 0.3, "{found:?}");
    assert!(found[1].abs() < 0.06 && found[3].abs() < 0.06, "{found:?}");
}
