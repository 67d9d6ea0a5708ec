//! Least squares: Gauss–Newton for a handful of parameters, and the straight line.

/// A step below this share of a parameter (or of one) is the last.
const LAST_STEP: f64 = 1e-9;
/// Steps of the derivative, as a share of a parameter (or of one): half the digits of a double.
const NUDGE: f64 = 1e-6;
/// Most steps; the fits here need some twenty.
const STEPS: usize = 100;

/// Parameters that bring `model` closest to what was observed, starting from some.
pub fn fit<const N: usize>(
    model: impl Fn([f64; N]) -> Vec<f64>,
    observed: &[f64],
    start: [f64; N],
) -> [f64; N] {
    let mut p = start;
    for _ in 0..STEPS {
        let now = model(p);
        let slopes: Vec<Vec<f64>> = (0..N)
            .map(|at| {
                let (mut nudged, by) = (p, NUDGE * p[at].abs().max(1.0));
                nudged[at] += by;
                let there = model(nudged);
                there.iter().zip(&now).map(|(a, b)| (a - b) / by).collect()
            })
            .collect();
        let dot = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(x, y)| x * y).sum::<f64>();
        let missing: Vec<f64> = observed.iter().zip(&now).map(|(o, m)| o - m).collect();
        let right: [f64; N] = std::array::from_fn(|i| dot(&slopes[i], &missing));
        let normal: [[f64; N]; N] =
            std::array::from_fn(|i| std::array::from_fn(|j| dot(&slopes[i], &slopes[j])));
        let step = solve(normal, right);
        p = std::array::from_fn(|at| p[at] + step[at]);
        if (0..N).all(|at| step[at].abs() < LAST_STEP * p[at].abs().max(1.0)) {
            return p;
        }
    }
    panic!("no rest after {STEPS} steps: {p:?}");
}

/// Solves a small positive definite system by elimination.
fn solve<const N: usize>(mut a: [[f64; N]; N], mut b: [f64; N]) -> [f64; N] {
    for pivot in 0..N {
        for row in (0..N).filter(|row| *row != pivot) {
            let times = a[row][pivot] / a[pivot][pivot];
            let above = a[pivot];
            a[row] = std::array::from_fn(|column| a[row][column] - times * above[column]);
            b[row] -= times * b[pivot];
        }
    }
    std::array::from_fn(|at| b[at] / a[at][at])
}

/// A straight line through points.
pub struct Line {
    pub slope: f64,
    pub at_zero: f64,
    /// Share of the variance that the line leaves unexplained, 1 − R².
    pub unexplained: f64,
}

/// The line of least squares.
pub fn line(points: &[(f64, f64)]) -> Line {
    let n = points.len() as f64;
    let mean = |part: fn(&(f64, f64)) -> f64| points.iter().map(part).sum::<f64>() / n;
    let (x0, y0) = (mean(|p| p.0), mean(|p| p.1));
    let sum = |part: &dyn Fn(f64, f64) -> f64| -> f64 {
        points.iter().map(|(x, y)| part(x - x0, y - y0)).sum()
    };
    let (xx, xy, yy) = (sum(&|x, _| x * x), sum(&|x, y| x * y), sum(&|_, y| y * y));
    Line {
        slope: xy / xx,
        at_zero: y0 - xy / xx * x0,
        unexplained: 1.0 - xy * xy / (xx * yy),
    }
}
