//! The name of the folder of a sweep: the scenario, and what is varied.

use std::path::Path;

use crate::analysis::sweep::axis::Axis;

/// Longest part of a name made of paths, bytes; longer ones give way to their last names.
const LONGEST: usize = 100;

/// `sweep-sixty-changes.early.share`.
pub fn folder_name(file: &Path, axes: &[Axis]) -> String {
    let stem = file.file_stem().unwrap_or_default().to_string_lossy();
    let paths: Vec<&str> = axes.iter().map(|axis| axis.path.as_str()).collect();
    let mut varied = paths.join("-");
    if varied.len() > LONGEST {
        let lasts: Vec<&str> = axes.iter().map(Axis::last_name).collect();
        varied = lasts.join("-");
        varied.truncate(LONGEST);
    }
    format!("sweep-{stem}-{varied}")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn axis(path: &str) -> Axis {
        Axis {
            path: path.into(),
            name: None,
            unit: String::new(),
            settings: Vec::new(),
        }
    }

    #[test]
    fn a_folder_is_named_after_what_is_varied_and_never_too_long_for_a_disk() {
        let file = Path::new("scenarios/sixty.toml");
        let axes = [axis("air.flow"), axis("air.on.for")];
        assert_eq!(folder_name(file, &axes), "sweep-sixty-air.flow-air.on.for");
        let long = format!("doses.{}.iron", "x".repeat(300));
        assert_eq!(folder_name(file, &[axis(&long)]), "sweep-sixty-iron");
    }
}
