//! What measurements of a tank cannot tell an uncertain input apart from. Judgement: it follows from the
//! rate laws, in which these stand together.

use super::Varied;

/// Inputs that look alike, each other's partners among them, and why.
struct Line {
    ids: &'static [&'static str],
    /// Others that look like each of them.
    others: &'static [&'static str],
    why: &'static str,
}

const fn line(
    ids: &'static [&'static str],
    others: &'static [&'static str],
    why: &'static str,
) -> Line {
    Line { ids, others, why }
}

const SURFACES: &[&str] = &[
    "k_600",
    "surface.transfer",
    "k_600_still",
    "k_600_gentle",
    "k_600_ripple",
    "k_600_strong",
    "k_600_splash",
];
const FASTEST: &[&str] = &[
    "P_max_stems",
    "P_max_carpet",
    "P_max_rosette",
    "P_max_tied_rhizome",
    "P_max_moss",
];

#[rustfmt::skip]
const LINES: &[Line] = &[
    line(&["C_p0", "k_ex"], &[], "the first readings show their product alone"),
    line(&["q0"], &["N_o0", "k_min"], "all feed the late weeks"),
    line(&["N_o0", "k_min"], &["th_soil"], "only their product shows within eight weeks"),
    line(&["th_soil"], &["k_min"], "one temperature shows one speed"),
    line(&["E_H0", "k_ac"], &[], "until the soil's store runs low"),
    line(&["Alk_eq", "psi_back"], &["water.tap.alkalinity"], "one alkalinity shows"),
    line(&["P0", "KdP"], &[], "only pore water shows"),
    line(&["rho_soil", "por"], &["C_p0", "q0"], "one store shows"),
    line(&["r_CN", "x_aer"], &[], "one product takes the oxygen"),
    line(&["k_den", "K_den"], &[], "one small loss of nitrate shows"),
    line(&["seed.level"], &["XA0", "XN0", "XK0", "mu_AOB", "mu_NOB"], "a late start looks like slow growth"),
    line(&["XA0", "seed_XA"], &["seed.level", "mu_AOB"], "a late start looks like slow growth"),
    line(&["XN0", "seed_XN"], &["seed.level", "mu_NOB"], "a late start looks like slow growth"),
    line(&["XK0", "seed_XK"], &["seed.level", "mu_K"], "a late start looks like slow growth"),
    line(&["mu_AOB", "b_AOB", "Y_AOB", "K_NH", "pK1_A"], &["XA0"], "ammonia shows their joint speed"),
    line(&["mu_NOB", "b_NOB", "Y_NOB", "K_NO2", "pK1_N"], &["XN0"], "nitrite shows their joint speed"),
    line(&["mu_K", "b_K", "Y_K", "K_NHK", "K_O_K", "pK1_K"], &["XK0"], "they share the work of the others"),
    line(&["K_C"], &["pK1_A", "pK1_N"], "soft water is sour water"),
    line(&["th_AOB"], &["mu_AOB"], "one temperature shows one speed"),
    line(&["th_NOB"], &["mu_NOB"], "one temperature shows one speed"),
    line(&["th_K"], &["mu_K"], "one temperature shows one speed"),
    line(&["th_b"], &["b_AOB", "b_NOB"], "one temperature shows one speed"),
    line(&["K_I_FA", "K_I_FNA_N"], &["mu_NOB"], "one speed shows"),
    line(&["K_I_FNA_A"], &["mu_AOB"], "one speed shows"),
    line(&["q_area", "a_bio"], &[], "only the ceiling shows"),
    line(SURFACES, &["film", "film_seen", "eta_CO2"], "one loss of gas shows"),
    line(&["film", "film_seen", "n_Sc", "eta_CO2", "gas.rate"], SURFACES, "one loss of gas shows"),
    line(&["a_air", "r_air", "air.flow"], &[], "only the product shows"),
    line(&["E_act", "lid", "lid_closed", "room.humidity"], &[], "only the evaporated litres show"),
    line(&["U", "lamp", "pump", "heater"], &[], "only the temperature shows"),
    line(&["I_low", "I_medium", "I_high", "light.at_soil"], FASTEST, "one growth shows"),
    line(&["mu_G", "r_Gr", "r_Gd", "G0"], &[], "one net growth shows"),
    line(&["K_I_G", "s_lit", "G_max"], &["mu_G"], "until the film is thick"),
    line(&["K_N_G", "K_P_G", "pref"], &[], "one growth shows where something is scarce"),
    line(&["phi_l", "k_Dfast", "k_Ds", "th_D"], &["melt_tissue"], "one stream of ammonia shows"),
    line(&["t_lag", "t_melt", "acc0", "t_acc"], &["melt_tissue"], "plants that stand still look alike"),
    line(&["melt_tissue"], &["t_melt", "acc0"], "plants that stand still look alike"),
    line(&["sigma_eb", "k_eb"], &[], "only the highest oxygen shows"),
    line(&["e_N", "feces", "fec_N", "N_feed"], &[], "only the ammonia of the feed shows"),
    line(&["K_NHp", "K_NOp", "K_inhNO3", "K_rN"], &[], "plants take what they grow with"),
];

/// Numbers of each plant group that look alike, by the stems of their ids, and why.
const OF_GROUPS: [(&[&str], &str); 4] = [
    (&["P_max_", "K_I_", "K_CO2_", "k_B_"], "one growth shows"),
    (&["R_d_", "m_loss_"], "one loss shows"),
    (&["V_NH_", "V_NO_"], "plants take what they grow with"),
    (
        &["w_sparse_", "w_normal_", "w_dense_", "melt_"],
        "what is left after the melt shows",
    ),
];

/// Fills in what each row cannot be told apart from: partners that vary in this case too.
pub fn fill(rows: &mut [Varied]) {
    let names: Vec<String> = rows.iter().map(|row| row.name.clone()).collect();
    for row in rows {
        row.told_apart = words(&row.name, &names);
    }
}

/// The partners of an input among those that vary, and why; empty where there is none.
fn words(id: &str, varied: &[String]) -> String {
    let Some((partners, why)) = partners(id) else {
        return String::new();
    };
    let here: Vec<String> = partners
        .into_iter()
        .filter(|partner| partner != id && varied.contains(partner))
        .collect();
    if here.is_empty() {
        return String::new();
    }
    format!("{} ({why})", here.join(", "))
}

fn partners(id: &str) -> Option<(Vec<String>, &'static str)> {
    if let Some(line) = LINES.iter().find(|line| line.ids.contains(&id)) {
        let all = line.ids.iter().chain(line.others);
        return Some((all.map(ToString::to_string).collect(), line.why));
    }
    OF_GROUPS.iter().find_map(|(stems, why)| {
        let group = stems.iter().find_map(|stem| id.strip_prefix(stem))?;
        let ids = stems.iter().map(|stem| format!("{stem}{group}"));
        Some((ids.collect(), *why))
    })
}

#[cfg(test)]
mod tests {
    use super::super::dimensions;
    use super::*;

    #[test]
    fn every_id_is_known_and_has_one_line() {
        let ids: Vec<&str> = LINES.iter().flat_map(|line| line.ids).copied().collect();
        for (at, id) in ids.iter().enumerate() {
            assert!(!ids[..at].contains(id), "{id} stands twice");
        }
        let others = LINES.iter().flat_map(|line| line.others).copied();
        for id in ids.iter().copied().chain(others) {
            assert!(id.contains('.') || dimensions::of(id).is_some(), "{id}");
        }
    }

    #[test]
    fn partners_are_named_where_they_vary_too() {
        let varied = ["mu_AOB", "b_AOB", "XA0", "P_max_moss", "K_I_moss"].map(String::from);
        let of = |id| words(id, &varied);
        assert_eq!(of("mu_AOB"), "b_AOB, XA0 (ammonia shows their joint speed)");
        assert_eq!(of("P_max_moss"), "K_I_moss (one growth shows)");
        assert_eq!(of("tau_ind"), "");
        assert_eq!(of("C_p0"), "");
    }
}
