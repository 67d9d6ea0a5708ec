//! The house keeps standing: storeys, sizes, and the list of parameters.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use firstfill::base::sources::{ALL_WORKS, Evidence};
use firstfill::base::units;
use firstfill::model::group::GROUPS;
use firstfill::model::parameters;

/// Storeys from the ground up; `scenario` and `output` share one and do not know each other.
const STOREYS: [&[&str]; 7] = [
    &["base"],
    &["chemistry"],
    &["model"],
    &["engine"],
    &["analysis"],
    &["scenario", "output"],
    &["cli"],
];
/// Most lines of a file.
const MOST_LINES: usize = 400;
/// Most lines of the middle one of all files.
const MEDIAN_LINES: usize = 200;
/// Functions longer than fifty lines, with their lengths: one literal that names every field.
/// None may grow.
const LONG_FUNCTIONS: [(&str, usize); 2] =
    [("src/engine/gauge.rs", 62), ("src/engine/reading.rs", 52)];

/// A file of the sources with its text.
struct Source {
    path: String,
    text: String,
}

fn sources() -> Vec<Source> {
    fn gather(folder: &Path, found: &mut Vec<PathBuf>) {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                gather(&path, found);
            } else if path.extension().is_some_and(|end| end == "rs") {
                found.push(path);
            }
        }
    }
    let mut found = Vec::new();
    gather(Path::new("src"), &mut found);
    found.sort();
    assert!(found.len() > 100, "only {} files found", found.len());
    let read = |path: PathBuf| Source {
        text: std::fs::read_to_string(&path).unwrap(),
        path: path.to_str().unwrap().replace('\\', "/"),
    };
    found.into_iter().map(read).collect()
}

/// The floor on which a folder of the sources stands.
fn floor(folder: &str) -> Option<usize> {
    STOREYS.iter().position(|rooms| rooms.contains(&folder))
}

/// The rooms of other folders that a text names by `crate::<room>`.
fn names_rooms(text: &str) -> BTreeSet<&str> {
    let code = text
        .lines()
        .filter(|line| !line.trim_start().starts_with("//"));
    code.flat_map(|line| line.split("crate::").skip(1))
        .map(|rest| {
            let end = rest.find(|c: char| !(c.is_alphanumeric() || c == '_'));
            &rest[..end.unwrap_or(rest.len())]
        })
        .filter(|room| floor(room).is_some())
        .collect()
}

/// What is wrong with a file's view of the house, if anything.
fn looks_up(folder: &str, text: &str) -> Option<String> {
    let own = floor(folder)?;
    names_rooms(text).into_iter().find_map(|room| {
        let other = floor(room)?;
        let wrong = other > own || (other == own && room != folder);
        wrong.then(|| format!("uses {room} (storey {other}, from {own})"))
    })
}

#[test]
fn no_file_uses_a_storey_above_its_own() {
    let mut checked = 0;
    for source in sources() {
        let rest = source.path.strip_prefix("src/").unwrap();
        let Some((folder, _)) = rest.split_once('/') else {
            continue;
        };
        assert!(floor(folder).is_some(), "{folder} stands on no storey");
        if let Some(wrong) = looks_up(folder, &source.text) {
            panic!("{} {wrong}", source.path);
        }
        checked += 1;
    }
    assert!(checked > 100);
}

#[test]
fn a_look_upstairs_or_next_door_would_be_seen() {
    assert!(looks_up("model", "use crate::output::csv;").is_some());
    assert!(looks_up("scenario", "use crate::output::csv;").is_some());
    assert!(looks_up("output", "let x = crate::scenario::load();").is_some());
    assert!(looks_up("output", "use crate::analysis::case::Case;").is_none());
    assert!(looks_up("base", "// as crate::model does").is_none());
}

#[test]
fn files_are_short() {
    let mut sizes: Vec<(usize, String)> = sources()
        .into_iter()
        .map(|source| (source.text.lines().count(), source.path))
        .collect();
    sizes.sort();
    let (median, _) = sizes[sizes.len() / 2];
    println!("{} files, the middle one {median} lines", sizes.len());
    assert!(median <= MEDIAN_LINES, "{median} lines");
    let long: Vec<String> = sizes
        .iter()
        .filter(|(lines, _)| *lines > MOST_LINES)
        .map(|(lines, path)| format!("{path} has {lines} lines"))
        .collect();
    assert!(long.is_empty(), "{}", long.join("; "));
}

/// Functions of a text with their lengths: from `fn` to the brace that closes at its indentation.
fn functions(text: &str) -> Vec<(&str, usize)> {
    let lines: Vec<&str> = text.lines().collect();
    let mut found = Vec::new();
    for (from, line) in lines.iter().enumerate() {
        let code = line.trim_start();
        let indent = line.len() - code.len();
        let words = [
            "fn ",
            "pub fn ",
            "pub(super) fn ",
            "pub(crate) fn ",
            "const fn ",
            "pub const fn ",
        ];
        if !words.iter().any(|word| code.starts_with(word)) || line.ends_with(';') {
            continue;
        }
        let closes = |line: &&str| line.trim_start() == "}" && line.len() == indent + 1;
        if let Some(length) = lines[from..].iter().position(closes) {
            found.push((code, length + 1));
        }
    }
    found
}

#[test]
fn functions_are_short() {
    const MOST: usize = 50;
    let mut lengths = Vec::new();
    let mut long = Vec::new();
    for source in sources() {
        for (function, length) in functions(&source.text) {
            lengths.push(length);
            let known = LONG_FUNCTIONS
                .iter()
                .any(|(path, most)| *path == source.path && length <= *most);
            if length > MOST && !known {
                long.push(format!("{}: {length} lines: {function}", source.path));
            }
        }
    }
    lengths.sort_unstable();
    let usual = lengths[lengths.len() * 8 / 10];
    println!(
        "{} functions, eight tenths of at most {usual} lines",
        lengths.len()
    );
    assert!(lengths.len() > 500 && usual <= 25, "{usual} lines");
    assert!(long.is_empty(), "\n{}", long.join("\n"));
}

#[test]
fn a_long_function_would_be_seen() {
    let text = format!("    fn long() {{\n{}    }}\n", "        x();\n".repeat(60));
    assert_eq!(functions(&text), [("fn long() {", 62)]);
}

#[test]
fn printing_stays_in_the_hands_of_the_command_line() {
    for source in sources() {
        let code = source.text.split("#[cfg(test)]").next().unwrap();
        let prints = ["println!(", "print!(", "eprintln!(", "eprint!(", "dbg!("]
            .iter()
            .any(|word| {
                code.lines()
                    .any(|line| !line.trim_start().starts_with("//") && line.contains(word))
            });
        assert!(
            !prints || source.path.starts_with("src/cli/"),
            "{} prints",
            source.path
        );
    }
}

#[test]
fn hashes_nowhere_decide_an_order_and_only_maths_calls_the_machine() {
    // the last digit of these differs from machine to machine
    let machine = [".powf(", ".exp()", ".ln()", ".log10()", ".powi("];
    for source in sources() {
        let code = source.text.split("#[cfg(test)]").next().unwrap();
        for line in code
            .lines()
            .filter(|line| !line.trim_start().starts_with("//"))
        {
            let word = ["HashMap", "HashSet"]
                .iter()
                .find(|word| line.contains(**word));
            assert!(word.is_none(), "{}: {line}", source.path);
            if line.contains("f64::") {
                let call = ["f64::exp", "f64::ln", "f64::powf", "f64::log10"]
                    .iter()
                    .find(|word| line.contains(**word));
                assert!(call.is_none(), "{}: {line}", source.path);
            }
        }
        // methods of the number type of the model are allowed, those of plain numbers are not
        if source.path.starts_with("src/analysis/") || source.path.starts_with("src/output/") {
            let call = machine.iter().find(|word| code.contains(**word));
            assert!(call.is_none(), "{} calls {call:?}", source.path);
        }
    }
}

// Parameters

#[test]
fn every_parameter_has_its_own_id_and_a_default_inside_its_range() {
    let mut ids = BTreeSet::new();
    for spec in parameters::all() {
        assert!(ids.insert(spec.id), "{} is declared twice", spec.id);
        assert!(
            spec.low <= spec.default && spec.default <= spec.high,
            "{}: {} not in {} to {}",
            spec.id,
            spec.default,
            spec.low,
            spec.high
        );
        assert!(spec.allows(spec.default) && spec.allows(spec.low) && spec.allows(spec.high));
        assert!(!spec.meaning.is_empty(), "{} says nothing", spec.id);
        assert_eq!(parameters::spec(spec.id).unwrap().id, spec.id);
    }
    assert!(ids.len() > 150, "{} parameters", ids.len());
}

/// Tables, charts and messages show one parameter without its neighbours.
#[test]
fn what_a_parameter_is_can_be_read_without_the_one_before_it() {
    let looks_back = |meaning: &str| {
        let words = format!(" {meaning} ");
        let after = [" of ", " for ", " at ", " in ", " "];
        let nouns = [
            "velocity", "boost", "carbon", "nitrogen", "share", "value", "rate", "speed",
        ];
        let that = |noun: &&str| words.contains(&format!(" that {noun} "));
        let begins = ["that ", "the same", "its ", "the rest"];
        let the_same = after
            .iter()
            .any(|after| words.contains(&format!("{after}the same ")));
        begins.iter().any(|begin| meaning.starts_with(begin))
            || nouns.iter().any(that)
            || words.contains(" the rest ")
            || the_same
    };
    assert!(looks_back("that velocity for a ripple") && looks_back("share of that carbon burnt"));
    let mut meanings = BTreeSet::new();
    for spec in parameters::all() {
        let (id, meaning) = (spec.id, spec.meaning);
        assert!(!looks_back(meaning), "{id}: {meaning}");
        assert!(
            meanings.insert(meaning),
            "{id} is told in the words of another one: {meaning}"
        );
    }
}

#[test]
fn every_unit_of_a_parameter_can_be_read() {
    for spec in parameters::all() {
        if spec.unit == "1" {
            continue;
        }
        let known = units::of_label(spec.unit);
        assert!(known.is_some(), "{}: {:?} is no unit", spec.id, spec.unit);
        let (kind, unit) = known.unwrap();
        let text = format!("{} {}", units::digits(spec.default), unit.symbol);
        let read = units::quantity::read(&text, kind).unwrap_or_else(|_| panic!("{text}"));
        let there = unit.to_base(spec.default);
        // printed with six significant digits
        assert!(
            (read - there).abs() <= 1e-5 * there.abs(),
            "{}: {text} reads {read}",
            spec.id
        );
    }
}

#[test]
fn every_published_value_says_where_and_every_work_is_used() {
    /// Works that stand for formulas rather than parameters: each is named where it is used.
    const FORMULAS: [&str; 6] = [
        "Benson & Krause 1984",
        "Davies 1962",
        "EPA 2013",
        "Emerson 1975",
        "Plummer & Busenberg 1982",
        "Wanninkhof 2014",
    ];
    let mut used = BTreeSet::new();
    for spec in parameters::all() {
        used.extend(spec.source.works.iter().map(|work| work.key));
        if spec.source.evidence == Evidence::Published {
            let says = !spec.source.works.is_empty() || !spec.source.note.is_empty();
            assert!(says, "{} is published, but where?", spec.id);
        }
    }
    let idle: Vec<&str> = ALL_WORKS
        .iter()
        .map(|work| work.key)
        .filter(|key| !used.contains(key) && !FORMULAS.contains(key))
        .collect();
    assert!(idle.is_empty(), "named but never used: {}", idle.join(", "));
    for key in FORMULAS {
        assert!(ALL_WORKS.iter().any(|work| work.key == key), "{key}");
        assert!(
            !used.contains(key),
            "{key} is used by a parameter after all"
        );
    }
}

/// Every symbol of the specification's master table; the numbers of plant groups follow below.
const MASTER_TABLE: &str = "
    q0 Kd k_ex th_ex N_o0 k_min th_soil rho_soil por r_CN x_aer E_H0 k_ac Alk_eq psi_back k_den K_den
    P0 KdP mu_AOB mu_NOB b_AOB b_NOB Y_AOB Y_NOB i_N K_NH K_NO2 K_O_AOB K_O_NOB pK1_A pK1_N pK2 K_C
    K_I_FA K_I_FNA_A K_I_FNA_N th_AOB th_NOB th_K th_b mu_K b_K Y_K K_NHK K_O_K pK1_K XA0 XN0 XK0
    q_area a_bio phi_filt k_cut k_kill k_Cl k_dry y_dry surv_dry k_Dfast phi_l k_Ds th_D K_OD
    f_C q_P q_K q_Fe t_lag t_melt acc0 t_acc Gamma Q0 K_NHp K_NOp K_inhNO3 K_rN K_rP K_P K_K K_Fe k_Fe
    th_P th_R I_low I_medium I_high sigma_eb k_eb k_600 k_600_still k_600_ripple k_600_strong
    k_600_splash film n_Sc co2_room a_air r_air eta_CO2 d_bub tau_ind mu_G th_G K_I_G K_N_G K_P_G pref
    r_Gr r_Gd q_NG G_max G0 s_lit nh4_boost e_N e_P feces fec_N feed m_O2 th_fish RQ E_act lid
    U band heater lamp pump Q_min Q_crit Q_max v_b K_b";

/// Numbers that each plant group has its own of.
const OF_A_GROUP: &str =
    "P_max K_I k_B R_d K_CO2 V_NH V_NO f_root melt m_loss w_sparse w_normal w_dense";

#[test]
fn every_symbol_of_the_master_table_is_a_parameter() {
    let mut wanted: Vec<String> = MASTER_TABLE.split_whitespace().map(String::from).collect();
    for group in GROUPS {
        wanted.extend(OF_A_GROUP.split_whitespace().map(|stem| group.id(stem)));
    }
    let missing: Vec<String> = wanted
        .into_iter()
        .filter(|id| parameters::spec(id).is_none())
        .collect();
    assert!(missing.is_empty(), "missing: {}", missing.join(", "));
}
