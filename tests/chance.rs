//! Quantiles, points of designs and streams of chance against libraries and published values.

mod support;

use firstfill::base::{normal, quantiles, sobol};
use support::check::Check;
use support::table::Table;

#[test]
fn normal_quantiles_are_those_of_a_standard_library() {
    // Python 3 statistics.NormalDist().inv_cdf, printed with all digits
    let known = [
        (0.05, -1.6448536269514726),
        (0.95, 1.6448536269514715),
        (0.975, 1.9599639845400536),
        (0.001, -3.090232306167813),
        (1e-12, -7.034483825301132),
        (0.999999, 4.753424308817089),
        (0.6, 0.2533471031357998),
    ];
    let mut check = Check::of("Quantiles of the standard normal distribution");
    for (p, expected) in known {
        check.see_share(normal::quantile(p), expected, p);
    }
    check.holds(known.len());
    assert_eq!(normal::quantile(0.5), 0.0);
    assert_eq!(normal::quantile(0.0), f64::NEG_INFINITY);
    assert_eq!(normal::quantile(1.0), f64::INFINITY);
    assert!(normal::quantile(1.5).is_nan());
}

#[test]
fn sobol_points_are_exactly_those_of_a_reference_library() {
    const POINTS_PER_UNIT: f64 = 1024.0;
    let columns: [String; 16] = std::array::from_fn(|d| format!("d{}", d + 1));
    let table = Table::read("sobol_base_1024x16_times1024");
    let expected = table.numbers(std::array::from_fn::<&str, 16, _>(|d| columns[d].as_str()));
    let mut check = Check::of("Sobol' points, 1024 of 16 dimensions");
    for (point, row) in expected.iter().enumerate() {
        for (dimension, expected) in row.iter().enumerate() {
            let digits = sobol::digits(point as u32, dimension);
            let found = POINTS_PER_UNIT * f64::from(digits) / 4_294_967_296.0;
            check.see(found - expected, (point, dimension));
        }
    }
    check.holds(16 * 1024);
}

#[test]
fn sample_quantiles_are_those_of_the_documentation() {
    // numpy.percentile, documentation: [[10, 7, 4], [3, 2, 1]] at 50; and by hand with h = (n − 1)·p
    let known: [(&[f64], f64, f64); 5] = [
        (&[10.0, 7.0, 4.0, 3.0, 2.0, 1.0], 0.5, 3.5),
        (&[10.0, 3.0], 0.5, 6.5),
        (&[1.0, 2.0, 3.0, 4.0], 0.25, 1.75),
        (&[4.0, 1.0, 3.0, 2.0], 0.95, 3.85),
        (&[5.0, 1.0, 2.0], 1.0, 5.0),
    ];
    let mut check = Check::of("Quantiles of a sample");
    for (sample, p, expected) in known {
        let found = quantiles::quantiles(&mut sample.to_vec(), &[p])[0];
        check.see_share(found, expected, (sample, p));
    }
    check.holds(known.len());
}
