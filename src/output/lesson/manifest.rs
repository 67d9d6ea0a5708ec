//! `manifest.json` of a lesson: enough to do it again. No clock and no machine is in it.

use serde_json::json;

use crate::analysis::lesson::taught::Taught;
use crate::output::manifest::notices;

/// The manifest as text, ending with a line feed.
pub fn text(taught: &Taught<'_>, files: &[(String, String)], with_scenarios: bool) -> String {
    let files = files.iter();
    let files = files.map(|(path, text)| json!({ "path": path, "text": text }));
    let steps = taught.lesson.steps.iter().zip(&taught.steps);
    let steps = steps.map(|(step, run)| {
        json!({
            "key": step.key,
            "step": step.label,
            "failed": run.members.len() - run.curve.members,
            "worst_ledger_error": run.outcome.run.ledger.worst(),
            "notices": notices(&run.outcome.run, run.case),
        })
    });
    let mut options = vec![
        json!({ "name": "command", "value": "lesson" }),
        json!({ "name": "lesson", "value": taught.lesson.key }),
        json!({ "name": "members", "value": taught.common.members.to_string() }),
        json!({ "name": "seed", "value": taught.common.seed.to_string() }),
    ];
    if with_scenarios {
        options.push(json!({ "name": "scenarios", "value": "true" }));
    }
    let whole = json!({
        "program": env!("CARGO_PKG_NAME"),
        "version": env!("CARGO_PKG_VERSION"),
        "options": options,
        "files": files.collect::<Vec<_>>(),
        "steps": steps.collect::<Vec<_>>(),
    });
    format!("{whole:#}\n")
}
