//! Activity coefficients of fresh water (Davies equation).

use crate::base::maths;
use crate::base::real::Real;
use crate::base::units::KELVIN_AT_0_C;

/// Ionic strength from hardness and alkalinity, mol/L, both in meq/L.
///
/// ```text
/// I = (GH + 0.5·max(GH, Alk) + 0.5·max(0, Alk − GH)) / 1000
/// ```
/// Ca and Mg carry twice their charge; the anions (bicarbonate and others) balance whichever of
/// the two is larger; alkalinity beyond the hardness is matched by sodium. Derived here.
/// Check value: 4 dKH, 8 dGH gives 0.00428.
pub fn ionic_strength_mol_per_l(hardness_meq_per_l: f64, alkalinity_meq_per_l: f64) -> f64 {
    let (gh, alk) = (hardness_meq_per_l, alkalinity_meq_per_l);
    (gh + 0.5 * gh.max(alk) + 0.5 * (alk - gh).max(0.0)) / 1000.0
}

/// Activity coefficient of a singly charged ion.
///
/// ```text
/// log γ1 = −A·(√I/(1+√I) − 0.3·I)      A = 1.82483e6·(ε·T)^−1.5
/// ε = 87.740 − 0.40008 t + 9.398e-4 t² − 1.410e-6 t³
/// ```
/// Source: Davies 1962, coefficients from memory. Valid to I 0.1 mol/L, 0 to 100 °C; γ2 = γ1⁴.
/// Check value: 25 °C, I 0.004: 0.93365.
pub fn monovalent<R: Real>(t_c: f64, ionic_strength_mol_per_l: R) -> R {
    let permittivity = 87.740 - 0.40008 * t_c + 9.398e-4 * t_c * t_c - 1.410e-6 * t_c * t_c * t_c;
    let a = 1.82483e6 * maths::pow(permittivity * (t_c + KELVIN_AT_0_C), -1.5);
    let root = ionic_strength_mol_per_l.floor_zero().sqrt();
    (-R::of(a) * (root / (R::one() + root) - R::of(0.3) * ionic_strength_mol_per_l)).exp10()
}
