//! `manifest.json` of a comparison: enough to repeat it. No clock and no machine is in it.

use serde_json::{Value, json};

use super::Story;
use crate::analysis::compare::strategy::Strategy;
use crate::output::manifest::notices;

/// The manifest as text, ending with a line feed.
pub fn text(story: &Story<'_>) -> String {
    let options = story.options.iter();
    let options = options.map(|(name, value)| json!({ "name": name, "value": value }));
    let plans = story.comparison.strategies.iter().zip(story.files);
    let whole = json!({
        "program": env!("CARGO_PKG_NAME"),
        "version": env!("CARGO_PKG_VERSION"),
        "options": options.collect::<Vec<_>>(),
        "scenarios": plans.map(|(plan, files)| of_plan(plan, files)).collect::<Vec<_>>(),
    });
    format!("{whole:#}\n")
}

fn of_plan(plan: &Strategy<'_>, files: &[(String, String)]) -> Value {
    let case = plan.case;
    let files = files
        .iter()
        .map(|(path, text)| json!({ "path": path, "text": text }));
    let resolved = case.resolved.iter();
    let resolved = resolved.map(|one| json!({ "path": one.path, "value": one.value }));
    json!({
        "key": plan.key,
        "name": case.name,
        "filled_on": case.filled_on.map(|date| date.to_string()),
        "last_day": case.input.last_day,
        "failed": plan.members.len() - plan.curve.members,
        "worst_ledger_error": plan.outcome.run.ledger.worst(),
        "files": files.collect::<Vec<_>>(),
        "resolved": resolved.collect::<Vec<_>>(),
        "notices": notices(&plan.outcome.run, case),
    })
}
