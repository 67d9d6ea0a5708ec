//! Which dimension of the Sobol' points each varied parameter draws from, for ever.

/// Ids by dimension: those that move the ready day most come first, where the points lie most evenly;
/// the others in no order that means anything.
///
/// Few points cannot fill every side of a cube of so many dimensions: among 256 of them 36 of the 13,861
/// pairs of a tank with everything in it go along by more than 0.4 (correlation of ranks, 0.94 at worst),
/// whatever the shift; among 4096 none by more than 0.06 (`tests/uncertain.rs`). So what one input does to a
/// figure is to be read off a few hundred members with care, off thousands safely.
///
/// Append at the end, and never move or take out a line: whatever stands before a new id then draws
/// what it always drew.
#[rustfmt::skip]
const IDS: [&str; 232] = [
    "C_p0", "seed.level", "mu_NOB", "mu_AOB", "q0", "K_NO2", "XA0", "XN0", "pK1_N", "pK1_A",
    "K_C", "K_NH", "b_NOB", "b_AOB", "k_ex", "k_ac", "k_600_ripple", "mu_G", "G0", "N_o0",
    "k_min", "XK0", "eta_CO2", "I_medium", "P_max_stems", "film", "Alk_eq", "E_H0", "k_600_still",
    "k_600_gentle", "k_600_strong", "k_600_splash", "K_OD", "T_ref_bio", "T_ref_plant",
    "T_ref_fish", "T_hold", "dt_stiff", "f_C", "q_P", "q_K", "q_Fe", "q_NG", "Q0", "i_N", "mu_K",
    "Y_AOB", "Y_NOB", "Y_K", "th_AOB", "th_NOB", "th_K", "q_area", "a_bio", "phi_filt", "phi_l",
    "seed_little", "seed_live", "seed_XA", "seed_XN", "seed_XK", "k_dry", "y_dry", "surv_dry",
    "f_rated", "Kd", "th_ex", "rho_soil", "por", "soil_mild", "soil_rich", "P0", "KdP", "th_soil",
    "r_CN", "x_aer", "psi_back", "k_den", "K_den", "K_O_AOB", "pK2", "K_I_FNA_A", "K_O_NOB",
    "K_I_FA", "K_I_FNA_N", "K_NHK", "K_O_K", "pK1_K", "b_K", "th_b", "k_kill", "k_cut", "k_Cl",
    "Gamma", "Q_min", "Q_crit", "K_rP", "K_P", "K_K", "K_Fe", "v_b", "K_b", "acc0", "t_acc",
    "th_R", "Q_max", "K_NHp", "K_NOp", "K_inhNO3", "K_rN", "t_lag", "t_melt", "k_Dfast", "k_Ds",
    "th_D", "th_G", "K_I_G", "K_N_G", "K_P_G", "K_K_G", "K_Fe_G", "pref", "G_max", "s_lit",
    "nh4_boost", "K_boost", "r_Gr", "r_Gd", "e_N", "e_P", "feces", "fec_N", "N_feed", "P_feed",
    "feed", "protein", "m_O2", "th_fish", "RQ", "k_600", "film_seen", "n_Sc", "co2_room", "a_air",
    "r_air", "sigma_eb", "k_eb", "cut_band", "d_bub", "rho_gas", "k_Fe", "E_act", "E_coef", "L_v",
    "lid", "lid_closed", "U", "band", "heater", "lamp", "pump", "c_w", "tau_ind", "melt_tissue",
    "th_P", "I_low", "I_high", "phi_max", "K_I_stems", "k_B_stems", "R_d_stems", "K_CO2_stems",
    "V_NH_stems", "V_NO_stems", "f_root_stems", "melt_stems", "m_loss_stems", "w_sparse_stems",
    "w_normal_stems", "w_dense_stems", "P_max_carpet", "K_I_carpet", "k_B_carpet", "R_d_carpet",
    "K_CO2_carpet", "V_NH_carpet", "V_NO_carpet", "f_root_carpet", "melt_carpet", "m_loss_carpet",
    "w_sparse_carpet", "w_normal_carpet", "w_dense_carpet", "P_max_rosette", "K_I_rosette",
    "k_B_rosette", "R_d_rosette", "K_CO2_rosette", "V_NH_rosette", "V_NO_rosette",
    "f_root_rosette", "melt_rosette", "m_loss_rosette", "w_sparse_rosette", "w_normal_rosette",
    "w_dense_rosette", "P_max_tied_rhizome", "K_I_tied_rhizome", "k_B_tied_rhizome",
    "R_d_tied_rhizome", "K_CO2_tied_rhizome", "V_NH_tied_rhizome", "V_NO_tied_rhizome",
    "f_root_tied_rhizome", "melt_tied_rhizome", "m_loss_tied_rhizome", "w_sparse_tied_rhizome",
    "w_normal_tied_rhizome", "w_dense_tied_rhizome", "P_max_moss", "K_I_moss", "k_B_moss",
    "R_d_moss", "K_CO2_moss", "V_NH_moss", "V_NO_moss", "f_root_moss", "melt_moss", "m_loss_moss",
    "w_sparse_moss", "w_normal_moss", "w_dense_moss",
];

/// The dimension of an id.
pub fn of(id: &str) -> Option<usize> {
    IDS.iter().position(|known| *known == id)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::sobol::DIMENSIONS;
    use crate::base::streams::fnv1a64;
    use crate::model::parameters;

    /// Sampled inputs that are no parameters.
    const OWN: [&str; 2] = ["C_p0", "seed.level"];

    #[test]
    fn every_parameter_has_a_dimension_of_its_own() {
        for spec in parameters::all() {
            let count = IDS.iter().filter(|id| **id == spec.id).count();
            assert_eq!(count, 1, "{}: append it at the end of IDS, once", spec.id);
        }
        for id in IDS {
            let is_known = parameters::spec(id).is_some() || OWN.contains(&id);
            assert!(is_known, "{id} is gone: leave its place, name it in OWN");
        }
        assert!(IDS.len() <= DIMENSIONS);
    }

    #[test]
    fn dimensions_given_away_once_stay() {
        let first = IDS[..232].concat();
        assert_eq!(
            fnv1a64(&first),
            6_766_492_509_272_068_028,
            "the first 232 ids stand as they were published: append at the end"
        );
    }
}
