//! `manifest.json`: enough to repeat a run to the byte. No clock and no machine is in it, so that
//! equal runs give equal folders.
//!
//! ```text
//! shape    what stands in it
//! parts    how each part is read off a run
//! ```

mod parts;
mod shape;

use crate::analysis::case::Case;
use crate::analysis::forecast::Forecast;
use crate::analysis::outcome::Outcome;
use crate::engine::result::RunResult;

/// Name and text of scenario files.
pub type Texts = Vec<(String, String)>;

/// Everything the manifest is made from.
#[derive(Debug, Clone, Copy)]
pub struct Story<'a> {
    /// The scenario.
    pub case: &'a Case,
    /// Its run and what it means.
    pub outcome: &'a Outcome,
    /// Many plausible tanks; none where only the central run was asked for.
    pub forecast: Option<&'a Forecast>,
    /// Name and text of every scenario file, the one asked for first.
    pub files: &'a [(String, String)],
    /// What was asked for on the command line: name and value.
    pub options: &'a [(String, String)],
}

/// The manifest as text, ending with a line feed.
///
/// # Errors
/// None in practice: every part is text or a number.
pub fn text(story: &Story) -> serde_json::Result<String> {
    let mut text = serde_json::to_string_pretty(&parts::manifest(story))?;
    text.push('\n');
    Ok(text)
}

/// Every notice of a scenario and its run, in words.
pub fn notices(run: &RunResult, case: &Case) -> Vec<String> {
    let said = case.notices.iter().cloned();
    said.chain(run.notices.iter().map(ToString::to_string))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::example::Example;

    fn written() -> String {
        let example = Example::default();
        let case = example.case();
        text(&Story {
            case: &case,
            outcome: &Outcome::judged(&case, example.run(), None),
            forecast: None,
            files: &[("made-up.toml".into(), "name = \"made up\"\n".into())],
            options: &[("every".into(), "60min".into())],
        })
        .unwrap()
    }

    #[test]
    fn the_manifest_carries_the_text_of_the_scenario_and_where_each_value_came_from() {
        let read: serde_json::Value = serde_json::from_str(&written()).unwrap();
        assert_eq!(read["scenario"]["files"][0]["text"], "name = \"made up\"\n");
        assert_eq!(read["ready"], "day 6");
        assert_eq!(read["resolved"][1]["set_by"], "default");
        assert_eq!(read["limits"][0]["key"], "total_ammonia");
    }

    #[test]
    fn equal_runs_give_equal_manifests_without_nulls_in_place_of_numbers() {
        assert_eq!(written(), written());
        assert!(!written().contains("null"));
    }
}
